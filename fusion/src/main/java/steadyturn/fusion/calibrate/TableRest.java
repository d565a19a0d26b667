package steadyturn.fusion.calibrate;

import java.util.Arrays;
import java.util.Comparator;
import org.apache.commons.math3.stat.StatUtils;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.UnitStream;

/**
 * What a unit shows while it lies on a table.
 *
 * @param lengthS how long it lay, s
 * @param gyroBiasRadPerS mean rate, unit axes, rad/s
 * @param gyroBiasSigmaRadPerS one sigma of that mean, per axis, rad/s: noise and slow wander
 * @param gyroNoiseRadPerS standard deviation of one rate sample, mean of the axes, rad/s
 * @param accelMeanMps2 mean specific force, unit axes, m/s^2
 * @param accelNoiseMps2 standard deviation of one acceleration sample, mean of the axes, m/s^2
 */
public record TableRest(
    double lengthS,
    Vector3 gyroBiasRadPerS,
    double gyroBiasSigmaRadPerS,
    double gyroNoiseRadPerS,
    Vector3 accelMeanMps2,
    double accelNoiseMps2) {

  /** Shortest rest that gives a bias, s. */
  private static final double SHORTEST_S = 1.5;

  /** A unit on a table turns less than this between its halves, rad/s: 0.3 deg/s, our choice. */
  private static final double LARGEST_CHANGE_RAD_PER_S = Math.toRadians(0.3);

  /** Noise of a unit on a table, at most: above it somebody moves it. Our choice. */
  private static final double LARGEST_GYRO_NOISE_RAD_PER_S = Math.toRadians(1.5);

  private static final double LARGEST_ACCEL_NOISE_MPS2 = 0.35;

  /** Turn-on and warm-up wander that a short mean cannot see, rad/s (our choice: 0.01 deg/s). */
  private static final double WANDER_RAD_PER_S = Math.toRadians(0.01);

  /** The longest stretch of a recording during which the unit lay still. */
  public static UnitStream longestIn(UnitStream stream) {
    return StillStretches.of(stream, 0.5).stream()
        .max(Comparator.comparingDouble(UnitStream::lengthS))
        .orElseThrow(
            () ->
                new CalibrationException(
                    "the unit never lay still; lay it on a firm table for 5 s and leave it alone"));
  }

  /** Reads a stretch during which the unit lay still; refuses one during which it did not. */
  public static TableRest of(UnitStream still) {
    Channel[] gyro = new Channel[3];
    Channel[] accel = new Channel[3];
    for (int axis = 0; axis < 3; axis++) {
      gyro[axis] = Channel.of(still.gyroColumnRadPerS(axis));
      accel[axis] = Channel.of(still.accelColumnMps2(axis));
    }
    double lengthS = still.lengthS();
    int fewest = 0;
    double noise = 0;
    double change = 0;
    for (Channel c : gyro) {
      fewest = fewest == 0 ? c.count() : Math.min(fewest, c.count());
      noise += c.deviation() / 3;
      change = Math.max(change, Math.abs(c.halfChange()));
    }
    double accelNoise = (accel[0].deviation() + accel[1].deviation() + accel[2].deviation()) / 3;
    requireStill(lengthS, noise, change, accelNoise);
    return new TableRest(
        lengthS,
        new Vector3(gyro[0].mean(), gyro[1].mean(), gyro[2].mean()),
        Math.hypot(noise / Math.sqrt(fewest), WANDER_RAD_PER_S),
        noise,
        new Vector3(accel[0].mean(), accel[1].mean(), accel[2].mean()),
        accelNoise);
  }

  private static void requireStill(
      double lengthS, double gyroNoise, double change, double accelNoise) {
    if (lengthS < SHORTEST_S) {
      throw CalibrationException.of(
          "the unit must lie still for %.1f s, the stretch has %.1f s", SHORTEST_S, lengthS);
    }
    if (gyroNoise > LARGEST_GYRO_NOISE_RAD_PER_S
        || change > LARGEST_CHANGE_RAD_PER_S
        || accelNoise > LARGEST_ACCEL_NOISE_MPS2) {
      throw CalibrationException.of(
          "the unit did not lie still: rate spread %.2f deg/s, drift %.2f deg/s, acceleration"
              + " spread %.2f m/s^2; lay it on a firm table and leave it alone",
          Math.toDegrees(gyroNoise), Math.toDegrees(change), accelNoise);
    }
  }

  /** Mean and spread of one column; lost values are left out. */
  private record Channel(int count, double mean, double deviation, double halfChange) {

    static Channel of(double[] column) {
      double[] seen = Arrays.stream(column).filter(v -> !Double.isNaN(v)).toArray();
      int half = column.length / 2;
      double change = Averages.mean(column, half, column.length) - Averages.mean(column, 0, half);
      double deviation = seen.length == 0 ? 0 : Math.sqrt(StatUtils.variance(seen));
      return new Channel(seen.length, Averages.mean(seen, 0, seen.length), deviation, change);
    }
  }
}
