package steadyturn.fusion.calibrate;

/**
 * The Allan family of deviations of a series of values at even steps, here a rate (deg/s, rad/s) or
 * an acceleration at rest. After Riley 2008, "Handbook of Frequency Stability Analysis", NIST
 * Special Publication 1065, whose "frequency" is our series and whose "phase" is its running sum. m
 * is the averaging factor: tau = m times the step. The result has the unit of the series, except
 * {@link #timeS} (that unit times seconds). NaN where the series is too short.
 */
public final class AllanDeviation {

  private AllanDeviation() {}

  /** Plain: from neighbouring means of m values, none used twice. */
  public static double plain(double[] values, int m) {
    double[] mean = means(values, m);
    double sum = 0;
    for (int k = 0; k + 1 < mean.length; k++) {
      double step = mean[k + 1] - mean[k];
      sum += step * step;
    }
    return rootOf(sum, 2.0 * (mean.length - 1));
  }

  /** Overlapping: every start is used; the one to plot. */
  public static double overlapping(double[] values, int m) {
    double[] x = runningSum(values, m);
    double sum = 0;
    int terms = x.length - 2 * m;
    for (int i = 0; i < terms; i++) {
      double second = x[i + 2 * m] - 2 * x[i + m] + x[i];
      sum += second * second;
    }
    return rootOf(sum, 2.0 * m * m * terms);
  }

  /** Modified: tells white from flicker phase noise. */
  public static double modified(double[] values, int m) {
    double[] x = runningSum(values, m);
    int terms = x.length - 3 * m + 1;
    if (terms < 1) {
      return Double.NaN;
    }
    double window = 0;
    for (int i = 0; i < m; i++) {
      window += x[i + 2 * m] - 2 * x[i + m] + x[i];
    }
    double sum = window * window;
    for (int j = 1; j < terms; j++) {
      window += x[j + 3 * m - 1] - 3 * x[j + 2 * m - 1] + 3 * x[j + m - 1] - x[j - 1];
      sum += window * window;
    }
    return rootOf(sum, 2.0 * m * m * (double) m * m * terms);
  }

  /** Hadamard: blind to a steady drift. */
  public static double hadamard(double[] values, int m) {
    double[] mean = means(values, m);
    double sum = 0;
    for (int k = 0; k + 2 < mean.length; k++) {
      double second = mean[k + 2] - 2 * mean[k + 1] + mean[k];
      sum += second * second;
    }
    return rootOf(sum, 6.0 * (mean.length - 2));
  }

  /** Time deviation: modified deviation times tau / sqrt 3. */
  public static double timeS(double[] values, int m, double stepS) {
    return modified(values, m) * m * stepS / Math.sqrt(3);
  }

  private static double rootOf(double sum, double divisor) {
    return divisor > 0 ? Math.sqrt(sum / divisor) : Double.NaN;
  }

  private static double[] means(double[] values, int m) {
    requireFactor(m);
    double[] mean = new double[values.length / m];
    for (int k = 0; k < mean.length; k++) {
      double sum = 0;
      for (int i = k * m; i < (k + 1) * m; i++) {
        sum += values[i];
      }
      mean[k] = sum / m;
    }
    return mean;
  }

  /** Sums from 0 on, one longer than the series, about the mean so that rounding stays small. */
  private static double[] runningSum(double[] values, int m) {
    requireFactor(m);
    double mean = 0;
    for (double value : values) {
      mean += value / values.length;
    }
    double[] x = new double[values.length + 1];
    for (int i = 0; i < values.length; i++) {
      x[i + 1] = x[i] + values[i] - mean;
    }
    return x;
  }

  private static void requireFactor(int m) {
    if (m < 1) {
      throw new IllegalArgumentException("the averaging factor is 1 or more, was " + m);
    }
  }
}
