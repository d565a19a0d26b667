package steadyturn.fusion.attitude;

/**
 * Smoothing by a parabola fitted around each instant (Savitzky and Golay 1964, from memory): no
 * delay, and a bend in the course is kept, so that crossings do not move. Half power at about 0.47
 * / half width.
 */
public final class CentredParabola {

  private CentredParabola() {}

  /** Value at each instant of the parabola through the samples within halfWidthS of it. */
  public static double[] of(double[] timeS, double[] values, double halfWidthS) {
    int n = values.length;
    double[] out = new double[n];
    int from = 0;
    int to = 0;
    for (int i = 0; i < n; i++) {
      while (timeS[from] < timeS[i] - halfWidthS) {
        from++;
      }
      while (to < n && timeS[to] <= timeS[i] + halfWidthS) {
        to++;
      }
      out[i] = to - from < 5 ? values[i] : atCentre(timeS, values, from, to, i, halfWidthS);
    }
    return out;
  }

  /** Least squares for a + b u + c u^2 with u = (t - t_i) / halfWidth; the answer is a. */
  private static double atCentre(
      double[] timeS, double[] values, int from, int to, int centre, double halfWidthS) {
    double[] s = new double[5];
    double[] r = new double[3];
    for (int k = from; k < to; k++) {
      double u = (timeS[k] - timeS[centre]) / halfWidthS;
      double power = 1;
      for (int m = 0; m < 5; m++) {
        s[m] += power;
        if (m < 3) {
          r[m] += power * values[k];
        }
        power *= u;
      }
    }
    double c0 = s[2] * s[4] - s[3] * s[3];
    double c1 = s[2] * s[3] - s[1] * s[4];
    double c2 = s[1] * s[3] - s[2] * s[2];
    return (c0 * r[0] + c1 * r[1] + c2 * r[2]) / (c0 * s[0] + c1 * s[1] + c2 * s[2]);
  }
}
