package steadyturn.fusion.calibrate;

/**
 * The overlapping Allan deviation of a series of values at even steps, here a rate (deg/s, rad/s)
 * or an acceleration at rest. After Riley 2008, "Handbook of Frequency Stability Analysis", NIST
 * Special Publication 1065, whose "frequency" is our series and whose "phase" is its running sum.
 */
public final class AllanDeviation {

  private AllanDeviation() {}

  /**
   * Deviation at tau = {@code m} steps, in the unit of the series; every start is used. NaN where
   * the series is too short.
   */
  public static double overlapping(double[] values, int m) {
    if (m < 1) {
      throw new IllegalArgumentException("the averaging factor is 1 or more, was " + m);
    }
    double[] x = runningSum(values);
    double sum = 0;
    int terms = x.length - 2 * m;
    for (int i = 0; i < terms; i++) {
      double second = x[i + 2 * m] - 2 * x[i + m] + x[i];
      sum += second * second;
    }
    return terms > 0 ? Math.sqrt(sum / (2.0 * m * m * terms)) : Double.NaN;
  }

  /** Sums from 0 on, one longer than the series, about the mean so that rounding stays small. */
  private static double[] runningSum(double[] values) {
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
}
