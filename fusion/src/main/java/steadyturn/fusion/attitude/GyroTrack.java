package steadyturn.fusion.attitude;

import java.util.List;
import steadyturn.fusion.rotation.Attitudes;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.strapdown.Bridge;
import steadyturn.fusion.strapdown.StrapdownSamples;
import steadyturn.ingest.sample.TimeAxis;
import steadyturn.ingest.sample.UnitStream;

/**
 * Attitude of one unit over one stretch, integrated from its gyroscope. The track frame is the unit
 * at the first sample, or, after {@link #levelled}, a frame with z up. Lost values are bridged by
 * straight lines; {@link #bridges} tells what these may be wrong by.
 *
 * <p>Errors: bias error x time, scale error x turn; about 0.1 deg/s and 0.3 % for a unit that
 * rested on a table before. A few seconds long at most.
 */
public final class GyroTrack {

  private final UnitStream stretch;
  private final double[] timeS;
  private final double[][] rateRadPerS;
  private final double[][] accelMps2;
  private final Attitudes qTrackUnit;

  private GyroTrack(UnitStream stretch, double[][] rate, double[][] accel, Attitudes qTrackUnit) {
    this.stretch = stretch;
    this.timeS = stretch.timeColumnS();
    this.rateRadPerS = rate;
    this.accelMps2 = accel;
    this.qTrackUnit = qTrackUnit;
  }

  /**
   * Integrates a stretch of at least two samples.
   *
   * @param biasRadPerS rate shown by the unit at rest, unit axes, rad/s; is taken off
   */
  public static GyroTrack of(UnitStream stretch, Vector3 biasRadPerS) {
    if (stretch.size() < 2) {
      throw new IllegalArgumentException("a track needs 2 samples, has " + stretch.size());
    }
    double[] time = stretch.timeColumnS();
    double[][] rate = new double[3][];
    double[][] accel = new double[3][];
    for (int axis = 0; axis < 3; axis++) {
      rate[axis] = bridged(time, stretch.gyroColumnRadPerS(axis), biasRadPerS.get(axis));
      accel[axis] = bridged(time, stretch.accelColumnMps2(axis), 0);
    }
    return new GyroTrack(stretch, rate, accel, Attitudes.ofRates(Quaternion.IDENTITY, time, rate));
  }

  private static double[] bridged(double[] time, double[] column, double offset) {
    double[] out = offset == 0 ? column : new double[column.length];
    double sum = 0;
    for (int i = 0; i < column.length; i++) {
      sum += column[i];
    }
    if (Double.isNaN(sum)) { // one lost value makes it NaN
      return filled(time, column, offset);
    }
    for (int i = 0; offset != 0 && i < column.length; i++) {
      out[i] = column[i] - offset;
    }
    return out;
  }

  private static double[] filled(double[] time, double[] column, double offset) {
    double[] out = new double[column.length];
    int last = -1;
    for (int i = 0; i < column.length; i++) {
      if (Double.isNaN(column[i])) {
        continue;
      }
      out[i] = column[i] - offset;
      for (int j = last + 1; j < i; j++) {
        double part = last < 0 ? 1 : (time[j] - time[last]) / (time[i] - time[last]);
        out[j] = last < 0 ? out[i] : out[last] + part * (out[i] - out[last]);
      }
      last = i;
    }
    for (int j = last + 1; j < out.length; j++) {
      out[j] = last < 0 ? 0 : out[last];
    }
    return out;
  }

  /**
   * The same motion in a frame with z up: the specific force, turned into the track frame, is
   * averaged over samples from..to-1, so that slow movement there cancels. Heading zero: the unit's
   * x axis at the first sample (its y axis where x is within 30 deg of the vertical).
   */
  public GyroTrack levelled(int from, int to) {
    Attitudes turned = qTrackUnit.seenFrom(Quaternion.levelling(meanForceTrack(from, to)));
    return new GyroTrack(stretch, rateRadPerS, accelMps2, turned);
  }

  /**
   * Mean specific force over samples from..to-1, in the track frame, m/s^2. Lost ones are left out;
   * where all of them are lost, what bridges them stands in.
   */
  public Vector3 meanForceTrack(int from, int to) {
    if (from >= to) {
      throw new IllegalArgumentException("no samples between " + from + " and " + to);
    }
    Vector3 sum = Vector3.ZERO;
    Vector3 bridged = Vector3.ZERO;
    int seen = 0;
    for (int i = from; i < to; i++) {
      Vector3 force = qTrackUnit.at(i).rotate(Vector3.of(accelMps2, i));
      bridged = bridged.plus(force);
      sum = hasForce(i) ? sum.plus(force) : sum;
      seen += hasForce(i) ? 1 : 0;
    }
    return seen > 0 ? sum.times(1.0 / seen) : bridged.times(1.0 / (to - from));
  }

  /** Whether the unit showed a whole force at sample i. */
  public boolean hasForce(int i) {
    return stretch.hasForce(i);
  }

  /** What is stepped over, and how far the attitude behind it may be off. */
  public List<Bridge> bridges() {
    return StrapdownSamples.overLostRates(stretch);
  }

  public int size() {
    return timeS.length;
  }

  /** Where the accelerometer is cut off, m/s^2. */
  public double accelFullScaleMps2() {
    return stretch.facts().accelFullScaleMps2();
  }

  public double timeS(int i) {
    return timeS[i];
  }

  /** First sample at or after the instant; {@link #size()} when there is none. */
  public int indexAt(double instantS) {
    return TimeAxis.indexAt(timeS, instantS);
  }

  public Quaternion qTrackUnit(int i) {
    return qTrackUnit.at(i);
  }

  /** Rate of sample i without its bias, unit axes, rad/s. */
  public Vector3 rateUnitRadPerS(int i) {
    return Vector3.of(rateRadPerS, i);
  }

  /** Its part along unit axis 0, 1 or 2. */
  public double rateUnitRadPerS(int axis, int i) {
    return rateRadPerS[axis][i];
  }

  /** Rates of all samples without their bias, track frame: three columns, rad/s. */
  public double[][] ratesTrackRadPerS() {
    double[][] out = new double[3][size()];
    qTrackUnit.toLevel(rateRadPerS, out);
    return out;
  }

  /** Turns columns of unit coordinates, one entry a sample, into the track frame. */
  public void toTrack(double[][] columns) {
    qTrackUnit.toLevel(columns, columns);
  }

  /** Writes the axes of the unit at sample i in the track frame: entry 3 * row + column. */
  void matrix(int i, double[] rows) {
    qTrackUnit.matrix(i, rows);
  }

  /** Specific force of sample i, unit axes, m/s^2. */
  public Vector3 forceUnitMps2(int i) {
    return Vector3.of(accelMps2, i);
  }
}
