package steadyturn.fusion.filter.kalman;

import steadyturn.fusion.filter.RestDetectorSettings;
import steadyturn.fusion.filter.Setting;
import steadyturn.fusion.filter.SigmaFloor;

/**
 * What the error-state Kalman filter assumes of a unit and of whoever moves it. Nothing depends on
 * the sample rate. The answer changes little when any of these is halved or doubled.
 *
 * @param blockS the vertical is corrected once in such a time, s; between, the rates are followed
 * @param startTiltRad one sigma of the first levelling, rad
 * @param startBiasRadPerS one sigma of the gyroscope bias before the first rest, rad/s
 * @param biasWalkRadPerSSqrtS how the bias wanders, rad/s per square root of s
 * @param rateMatrixSigma one sigma of each gyroscope scale error and cross-talk, 1
 * @param rateNoiseRadPerSqrtS angle that gyroscope noise gathers in one second, rad
 * @param turnNoiseSqrtS angle noise that turning adds: times the rate it is rad per square root of
 *     s; what scale, cross-talk and force do to a gyroscope beyond a constant matrix
 * @param velocityNoiseMpsPerSqrtS velocity that accelerometer noise gathers in one second, m/s
 * @param speedSigmaMps usual size of each velocity component: a unit on a body stays slow
 * @param placeSigmaM usual distance from the middle of its movements: it stays near
 * @param movementCorrelationS how long velocity and place stay the same, s
 * @param rest when the unit rests
 * @param floor errors beyond the model, added to every sigma shown
 */
public record KalmanSettings(
    double blockS,
    double startTiltRad,
    double startBiasRadPerS,
    double biasWalkRadPerSSqrtS,
    double rateMatrixSigma,
    double rateNoiseRadPerSqrtS,
    double turnNoiseSqrtS,
    double velocityNoiseMpsPerSqrtS,
    double speedSigmaMps,
    double placeSigmaM,
    double movementCorrelationS,
    RestDetectorSettings rest,
    SigmaFloor floor) {

  public KalmanSettings {
    Setting.sizes(
        "block, start tilt and bias, rate noise, speed, place and correlation",
        blockS,
        startTiltRad,
        startBiasRadPerS,
        rateNoiseRadPerSqrtS,
        speedSigmaMps,
        placeSigmaM,
        movementCorrelationS);
    Setting.atLeast0(
        "bias walk, rate matrix, turn and velocity noise",
        biasWalkRadPerSSqrtS,
        rateMatrixSigma,
        turnNoiseSqrtS,
        velocityNoiseMpsPerSqrtS);
  }

  /**
   * Small units of the 2020s, moved by hand or worn. Our choice, round values inside a broad
   * optimum over five open recordings; docs/accuracy-orientation.md shows how flat it is.
   */
  public static KalmanSettings standard() {
    return with(RestDetectorSettings.laidDown());
  }

  /** The standard ones with other settings of the rest detector. */
  public static KalmanSettings with(RestDetectorSettings rest) {
    return new KalmanSettings(
        0.1,
        0.1,
        Math.toRadians(2),
        Math.toRadians(0.003),
        0.0025,
        Math.toRadians(0.02),
        0.0002,
        0.02,
        0.5,
        0.5,
        0.3,
        rest,
        SigmaFloor.standard());
  }

  /** The same for a unit of this sample rate: a sample speaks for an instant within its step. */
  public KalmanSettings forRate(double rateHz) {
    return new KalmanSettings(
        blockS,
        startTiltRad,
        startBiasRadPerS,
        biasWalkRadPerSSqrtS,
        rateMatrixSigma,
        rateNoiseRadPerSqrtS,
        turnNoiseSqrtS,
        velocityNoiseMpsPerSqrtS,
        speedSigmaMps,
        placeSigmaM,
        movementCorrelationS,
        rest,
        floor.forStep(1 / rateHz));
  }
}
