package steadyturn.fusion.displace;

import steadyturn.ingest.sample.StandardGravity;

/**
 * How large a unit's own errors are taken to be before the swings say more; one standard deviation
 * each. "Constant" errors are the same in every swing of a lesson, "drift" is what a single swing
 * may differ from them.
 *
 * @param tiltRad attitude of the first sample about the horizontal axes, rad
 * @param velocityMps velocity of the first sample, m/s
 * @param gyroBiasRadPerS constant gyro bias about its first guess, rad/s
 * @param gyroBiasDriftRadPerS drift of the gyro bias, rad/s
 * @param accelBiasMps2 constant accelerometer bias, m/s^2
 * @param accelBiasDriftMps2 drift of the accelerometer bias, m/s^2
 * @param gyroMatrix each of the nine scale and misalignment terms of the gyro, 1 (rad/s per rad/s)
 * @param accelScale each of the three scale terms of the accelerometer, 1
 */
public record UnitPriors(
    double tiltRad,
    double velocityMps,
    double gyroBiasRadPerS,
    double gyroBiasDriftRadPerS,
    double accelBiasMps2,
    double accelBiasDriftMps2,
    double gyroMatrix,
    double accelScale) {

  private static final double MILLI_G_MPS2 = StandardGravity.MPS2 / 1000;

  /** A unit as it comes; sizes typical of consumer parts (our assumption, docs/accuracy.md). */
  public static UnitPriors raw() {
    return new UnitPriors(
        Math.toRadians(3),
        1,
        Math.toRadians(3),
        Math.toRadians(0.03),
        27 * MILLI_G_MPS2,
        0.5 * MILLI_G_MPS2,
        0.01,
        0.006);
  }

  /** A unit corrected by its own calibration (our assumption, docs/accuracy.md). */
  public static UnitPriors calibrated() {
    return new UnitPriors(
        Math.toRadians(1),
        1,
        Math.toRadians(3),
        Math.toRadians(0.02),
        4 * MILLI_G_MPS2,
        0.3 * MILLI_G_MPS2,
        0.003,
        0.0015);
  }

  /** The same unit after a rest on the table gave its gyro bias within {@code sdRadPerS}. */
  public UnitPriors withGyroBias(double sdRadPerS) {
    return new UnitPriors(
        tiltRad,
        velocityMps,
        sdRadPerS,
        gyroBiasDriftRadPerS,
        accelBiasMps2,
        accelBiasDriftMps2,
        gyroMatrix,
        accelScale);
  }

  /** The same unit where its bias was seen to move by so much within the lesson, one deviation. */
  public UnitPriors withBiasDrift(double sdRadPerS) {
    return new UnitPriors(
        tiltRad,
        velocityMps,
        gyroBiasRadPerS,
        Math.hypot(gyroBiasDriftRadPerS, sdRadPerS),
        accelBiasMps2,
        accelBiasDriftMps2,
        gyroMatrix,
        accelScale);
  }

  /** The same unit where the scale of its rates may be off by a part more, one deviation. */
  public UnitPriors withScale(double part) {
    return new UnitPriors(
        tiltRad,
        velocityMps,
        gyroBiasRadPerS,
        gyroBiasDriftRadPerS,
        accelBiasMps2,
        accelBiasDriftMps2,
        Math.hypot(gyroMatrix, part),
        accelScale);
  }
}
