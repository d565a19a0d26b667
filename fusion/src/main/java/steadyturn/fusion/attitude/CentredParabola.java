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
    double centreS = timeS[centre];
    double perHalfWidth = 1 / halfWidthS;
    double s0 = to - from;
    double s1 = 0;
    double s2 = 0;
    double s3 = 0;
    double s4 = 0;
    double r0 = 0;
    double r1 = 0;
    double r2 = 0;
    for (int k = from; k < to; k++) {
      double u = (timeS[k] - centreS) * perHalfWidth;
      double u2 = u * u;
      double u3 = u2 * u;
      s1 += u;
      s2 += u2;
      s3 += u3;
      s4 += u3 * u;
      r0 += values[k];
      r1 += u * values[k];
      r2 += u2 * values[k];
    }
    double c0 = s2 * s4 - s3 * s3;
    double c1 = s2 * s3 - s1 * s4;
    double c2 = s1 * s3 - s2 * s2;
    return (c0 * r0 + c1 * r1 + c2 * r2) / (c0 * s0 + c1 * s1 + c2 * s2);
  }
}
