package steadyturn.fusion.attitude;

/**
 * Smoothing by a parabola fitted around each instant (Savitzky and Golay 1964, from memory): no
 * delay, and a bend in the course is kept, so that crossings do not move. Half power at about 0.47
 * / half width.
 */
public final class CentredParabola {

  /** The sums are carried along so many samples before they are summed up anew. */
  private static final int CARRIED = 32;

  private CentredParabola() {}

  /** Value at each instant of the parabola through the samples within halfWidthS of it. */
  public static double[] of(double[] timeS, double[] values, double halfWidthS) {
    return upTo(values.length, timeS, values, halfWidthS);
  }

  /** The same of the first samples alone. */
  public static double[] upTo(int end, double[] timeS, double[] values, double halfWidthS) {
    int n = values.length;
    double perHalfWidth = 1 / halfWidthS;
    double[] out = new double[end];
    Sums sums = new Sums();
    int from = 0;
    int to = 0;
    for (int i = 0; i < end; i++) {
      boolean isCarried = i % CARRIED != 0 && !Double.isNaN(sums.r0);
      if (isCarried) {
        sums.shift((timeS[i] - timeS[i - 1]) * perHalfWidth);
      }
      int known = to;
      for (; timeS[from] < timeS[i] - halfWidthS; from++) {
        if (isCarried && from < known) {
          sums.add((timeS[from] - timeS[i]) * perHalfWidth, values[from], -1);
        }
      }
      while (to < n && timeS[to] <= timeS[i] + halfWidthS) {
        to++;
      }
      if (!isCarried) {
        sums.clear();
      }
      for (int k = isCarried ? Math.max(from, known) : from; k < to; k++) {
        sums.add((timeS[k] - timeS[i]) * perHalfWidth, values[k], 1);
      }
      out[i] = to - from < 5 ? values[i] : sums.atCentre();
    }
    return out;
  }

  /** Least squares for a + b u + c u^2 with u = (t - t_i) / halfWidth; the answer is a. */
  private static final class Sums {
    private double s0;
    private double s1;
    private double s2;
    private double s3;
    private double s4;
    private double r0 = Double.NaN;
    private double r1;
    private double r2;

    void clear() {
      s0 = s1 = s2 = s3 = s4 = r0 = r1 = r2 = 0;
    }

    void add(double u, double value, int sign) {
      double su = sign * u;
      double su2 = su * u;
      double su3 = su2 * u;
      s0 += sign;
      s1 += su;
      s2 += su2;
      s3 += su3;
      s4 += su3 * u;
      r0 += sign * value;
      r1 += su * value;
      r2 += su2 * value;
    }

    /** Moves the centre on by d: every u gets less by it. */
    void shift(double d) {
      s4 -= d * (4 * s3 - d * (6 * s2 - d * (4 * s1 - d * s0)));
      s3 -= d * (3 * s2 - d * (3 * s1 - d * s0));
      s2 -= d * (2 * s1 - d * s0);
      s1 -= d * s0;
      r2 -= d * (2 * r1 - d * r0);
      r1 -= d * r0;
    }

    double atCentre() {
      double c0 = s2 * s4 - s3 * s3;
      double c1 = s2 * s3 - s1 * s4;
      double c2 = s1 * s3 - s2 * s2;
      return (c0 * r0 + c1 * r1 + c2 * r2) / (c0 * s0 + c1 * s1 + c2 * s2);
    }
  }
}
