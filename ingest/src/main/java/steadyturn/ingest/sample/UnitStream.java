package steadyturn.ingest.sample;

import java.util.Arrays;

/**
 * The samples of one unit, as columns of equal length: time in s on the recording's common axis
 * (strictly increasing), specific force in m/s^2 (+9.81 along the axis that points up at rest) and
 * rate in rad/s, both in the unit's own sensor axes. A lost value is NaN; a lost sample is a jump
 * in time. The columns are handed over, not copied: whoever gets one from here reads it and never
 * writes it.
 */
public final class UnitStream {

  private static final int LOOKED_AT = 1001;

  private final UnitFacts facts;
  private final double[] timeS;
  private final double[][] accelMps2;
  private final double[][] gyroRadPerS;

  /** Found when first asked for; a part of a stream has that of the whole. */
  private double usualStepS;

  /**
   * Takes ownership of the columns.
   *
   * @param timeS n instants, s, strictly increasing
   * @param accelMps2 three columns (x, y, z) of n values, m/s^2
   * @param gyroRadPerS three columns (x, y, z) of n values, rad/s
   */
  public UnitStream(UnitFacts facts, double[] timeS, double[][] accelMps2, double[][] gyroRadPerS) {
    this(facts, timeS, accelMps2, gyroRadPerS, Double.NaN);
    requireColumns("accelerometer", accelMps2, timeS.length);
    requireColumns("gyroscope", gyroRadPerS, timeS.length);
    for (int i = 1; i < timeS.length; i++) {
      if (!(timeS[i] > timeS[i - 1])) {
        throw new IllegalArgumentException(
            ("time must increase: sample " + i + " at " + timeS[i])
                + (" s follows " + timeS[i - 1] + " s"));
      }
    }
  }

  /** A part of a stream, or one with other columns as long. */
  private UnitStream(
      UnitFacts facts,
      double[] timeS,
      double[][] accelMps2,
      double[][] gyroRadPerS,
      double usualStepS) {
    this.facts = facts;
    this.timeS = timeS;
    this.accelMps2 = accelMps2;
    this.gyroRadPerS = gyroRadPerS;
    this.usualStepS = usualStepS;
  }

  private static void requireColumns(String name, double[][] columns, int length) {
    if (columns.length != 3) {
      throw new IllegalArgumentException(name + " needs 3 columns, has " + columns.length);
    }
    for (double[] column : columns) {
      if (column.length != length) {
        throw new IllegalArgumentException(
            name + " has " + column.length + " values for " + length + " instants");
      }
    }
  }

  public UnitFacts facts() {
    return facts;
  }

  public BodyPoint point() {
    return facts.point();
  }

  /** Number of samples. */
  public int size() {
    return timeS.length;
  }

  public double timeS(int i) {
    return timeS[i];
  }

  /** Specific force of sample i along axis 0, 1 or 2, m/s^2. */
  public double accelMps2(int axis, int i) {
    return accelMps2[axis][i];
  }

  /** Rate of sample i about axis 0, 1 or 2, rad/s. */
  public double gyroRadPerS(int axis, int i) {
    return gyroRadPerS[axis][i];
  }

  /** The whole time column, s; to read only. */
  public double[] timeColumnS() {
    return timeS;
  }

  /** The whole column of one accelerometer axis, m/s^2; to read only. */
  public double[] accelColumnMps2(int axis) {
    return accelMps2[axis];
  }

  /** The whole column of one gyroscope axis, rad/s; to read only. */
  public double[] gyroColumnRadPerS(int axis) {
    return gyroRadPerS[axis];
  }

  /** Whether all three axes of the accelerometer are there at sample i. */
  public boolean hasForce(int i) {
    return isWhole(accelMps2, i);
  }

  /** Whether all three axes of the gyroscope are there at sample i. */
  public boolean hasRate(int i) {
    return isWhole(gyroRadPerS, i);
  }

  /** Whether all six values are there at sample i. */
  public boolean isWhole(int i) {
    return hasForce(i) && hasRate(i);
  }

  private static boolean isWhole(double[][] columns, int i) {
    double sum = columns[0][i] + columns[1][i] + columns[2][i];
    return !Double.isNaN(sum); // one lost value makes the sum NaN
  }

  /** Size of the acceleration of sample i, m/s^2. */
  public double accelNormMps2(int i) {
    return norm(accelMps2, i);
  }

  /** Size of the rate of sample i, rad/s. */
  public double gyroNormRadPerS(int i) {
    return norm(gyroRadPerS, i);
  }

  private static double norm(double[][] columns, int i) {
    double x = columns[0][i];
    double y = columns[1][i];
    double z = columns[2][i];
    return Math.sqrt(x * x + y * y + z * z);
  }

  /** Median step of time of at most a thousand places, s; the nominal one where there are none. */
  public double usualStepS() {
    if (Double.isNaN(usualStepS)) {
      int steps = timeS.length - 1;
      double[] some = new double[Math.max(0, Math.min(steps, LOOKED_AT))];
      for (int i = 0; i < some.length; i++) {
        int k = (int) ((long) i * steps / some.length);
        some[i] = timeS[k + 1] - timeS[k];
      }
      usualStepS = some.length == 0 ? 1 / facts.nominalRateHz() : Averages.median(some);
    }
    return usualStepS;
  }

  /** First sample at or after the instant; {@link #size()} when there is none. */
  public int indexAt(double instantS) {
    return TimeAxis.indexAt(timeS, instantS);
  }

  /** The samples with fromS &lt;= time &lt; toS, as a stream of its own on the same time axis. */
  public UnitStream between(double fromS, double toS) {
    int from = indexAt(fromS);
    int to = Math.max(from, indexAt(toS));
    return new UnitStream(
        facts,
        Arrays.copyOfRange(timeS, from, to),
        cut(accelMps2, from, to),
        cut(gyroRadPerS, from, to),
        usualStepS());
  }

  private static double[][] cut(double[][] columns, int from, int to) {
    double[][] out = new double[3][];
    for (int axis = 0; axis < 3; axis++) {
      out[axis] = Arrays.copyOfRange(columns[axis], from, to);
    }
    return out;
  }

  /** These samples, and those of a later stretch of the same unit behind them. */
  public UnitStream followedBy(UnitStream later) {
    double[][] columns = new double[6][];
    for (int k = 0; k < 6; k++) {
      columns[k] = joined(column(k), later.column(k));
    }
    return new UnitStream(
        facts,
        joined(timeS, later.timeS),
        Arrays.copyOfRange(columns, 0, 3),
        Arrays.copyOfRange(columns, 3, 6));
  }

  private static double[] joined(double[] before, double[] after) {
    double[] out = Arrays.copyOf(before, before.length + after.length);
    System.arraycopy(after, 0, out, before.length, after.length);
    return out;
  }

  /** The same samples with other rates, one column an axis, rad/s. */
  public UnitStream withRates(double[][] otherRadPerS) {
    return new UnitStream(facts, timeS, accelMps2, otherRadPerS);
  }

  /** From the first to the last sample, s; 0 for fewer than two. */
  public double lengthS() {
    return timeS.length < 2 ? 0 : timeS[timeS.length - 1] - timeS[0];
  }

  /** One of the six columns by its number: accelerometer x y z, gyroscope x y z; to read only. */
  public double[] column(int channel) {
    return channel < 3 ? accelMps2[channel] : gyroRadPerS[channel - 3];
  }

  /** The same samples of a unit of which more, or something else, is known. */
  public UnitStream withFacts(UnitFacts other) {
    return new UnitStream(other, timeS, accelMps2, gyroRadPerS);
  }

  /** The same samples at other instants, s. */
  public UnitStream withTimes(double[] otherS) {
    return new UnitStream(facts, otherS, accelMps2, gyroRadPerS);
  }

  /** The same samples on a time axis moved by {@code byS}, s. */
  public UnitStream shifted(double byS) {
    return withTimes(Arrays.stream(timeS).map(t -> t + byS).toArray());
  }
}
