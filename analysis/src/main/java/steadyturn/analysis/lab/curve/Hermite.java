package steadyturn.analysis.lab.curve;

/** The quintic that has given value, first and second derivative at both ends of a stretch. */
public final class Hermite {

  private Hermite() {}

  /**
   * Coefficients in powers of u = 0..1 over the stretch.
   *
   * @param lengthS length of the stretch, s
   * @param from value, rate and acceleration at its start
   * @param to the same at its end
   */
  public static double[] coefficients(double lengthS, double[] from, double[] to) {
    double v0 = from[1] * lengthS;
    double v1 = to[1] * lengthS;
    double a0 = from[2] * lengthS * lengthS;
    double a1 = to[2] * lengthS * lengthS;
    double d = to[0] - from[0];
    return new double[] {
      from[0],
      v0,
      a0 / 2,
      10 * d - 6 * v0 - 4 * v1 - 1.5 * a0 + 0.5 * a1,
      -15 * d + 8 * v0 + 7 * v1 + 1.5 * a0 - a1,
      6 * d - 3 * v0 - 3 * v1 - 0.5 * a0 + 0.5 * a1
    };
  }

  /** Value, rate and acceleration at u = 0..1 of the stretch. */
  public static double[] at(double u, double lengthS, double[] from, double[] to) {
    double[] vra = new double[3];
    PiecewisePolynomial.addPolynomial(coefficients(lengthS, from, to), u, vra);
    vra[1] /= lengthS;
    vra[2] /= lengthS * lengthS;
    return vra;
  }
}
