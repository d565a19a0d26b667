package steadyturn.analysis.lab.curve;

/**
 * Polynomials laid end to end; before the first it keeps that one's starting value, as the first
 * segment must be a constant.
 */
final class PiecewisePolynomial implements TimeFunction {

  private final Breaks breaks;
  private final double[][] coefficients;

  /**
   * @param startS start of each segment, increasing
   * @param coefficients of each segment, constant term first, in powers of (time - start)
   */
  PiecewisePolynomial(double[] startS, double[][] coefficients) {
    this.breaks = new Breaks(startS);
    this.coefficients = coefficients;
  }

  @Override
  public void addTo(double timeS, double[] vra) {
    int segment = breaks.at(timeS);
    addPolynomial(coefficients[segment], timeS - breaks.startS(segment), vra);
  }

  /** Horner's rule for value and two derivatives. */
  static void addPolynomial(double[] c, double u, double[] vra) {
    double value = c[c.length - 1];
    double first = 0;
    double halfSecond = 0;
    for (int i = c.length - 2; i >= 0; i--) {
      halfSecond = halfSecond * u + first;
      first = first * u + value;
      value = value * u + c[i];
    }
    vra[0] += value;
    vra[1] += first;
    vra[2] += 2 * halfSecond;
  }
}
