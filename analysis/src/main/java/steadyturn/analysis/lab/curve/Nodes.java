package steadyturn.analysis.lab.curve;

/** Courses given by value, first and second derivative at even steps of time. */
public final class Nodes {

  private Nodes() {}

  /** Quintics from node to node; before the first and after the last it keeps their values. */
  public static TimeFunction through(double fromS, double stepS, double[][] vra) {
    double[][] pieces = new double[vra.length - 1][];
    for (int i = 0; i < pieces.length; i++) {
      pieces[i] = Hermite.coefficients(stepS, vra[i], vra[i + 1]);
      double power = 1;
      for (int k = 0; k < 6; k++) {
        pieces[i][k] /= power;
        power *= stepS;
      }
    }
    double first = vra[0][0];
    double last = vra[vra.length - 1][0];
    return (timeS, out) -> {
      double x = (timeS - fromS) / stepS;
      if (x < 0 || x >= pieces.length) {
        out[0] += x < 0 ? first : last;
        return;
      }
      int i = (int) x;
      PiecewisePolynomial.addPolynomial(pieces[i], timeS - fromS - i * stepS, out);
    };
  }

  /** The uniform quintic B-spline of control points: one node a point, at rest beyond both ends. */
  public static double[][] ofSpline(double[] control, double stepS) {
    double[][] out = new double[control.length][];
    for (int i = 0; i < out.length; i++) {
      double outer = at(control, i - 2) + at(control, i + 2);
      double inner = at(control, i - 1) + at(control, i + 1);
      out[i] =
          new double[] {
            (outer + 26 * inner + 66 * control[i]) / 120,
            (at(control, i + 2)
                    - at(control, i - 2)
                    + 10 * (at(control, i + 1) - at(control, i - 1)))
                / (24 * stepS),
            (outer + 2 * inner - 6 * control[i]) / (6 * stepS * stepS)
          };
    }
    return out;
  }

  private static double at(double[] control, int i) {
    return control[Math.max(0, Math.min(control.length - 1, i))];
  }
}
