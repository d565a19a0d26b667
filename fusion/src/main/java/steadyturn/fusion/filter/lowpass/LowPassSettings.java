package steadyturn.fusion.filter.lowpass;

import steadyturn.fusion.filter.RestDetectorSettings;
import steadyturn.fusion.filter.Setting;
import steadyturn.fusion.filter.SigmaFloor;
import steadyturn.fusion.filter.kalman.KalmanSettings;

/**
 * Settings of the low-pass filter.
 *
 * @param forceTimeS time constant of the low-pass of the specific force, s
 * @param startBiasRadPerS one sigma of the gyroscope bias before the first rest, rad/s
 * @param biasWalkRadPerSSqrtS how the bias wanders, rad/s per square root of s
 * @param movingRateRadPerSqrtS one sigma of the tilt rate seen in movement over one second, rad/s
 * @param largestTiltRateRadPerS what is seen beyond this is movement, not bias, rad/s
 * @param rest when the unit rests
 * @param floor errors beyond the model, added to every sigma shown
 */
public record LowPassSettings(
    double forceTimeS,
    double startBiasRadPerS,
    double biasWalkRadPerSSqrtS,
    double movingRateRadPerSqrtS,
    double largestTiltRateRadPerS,
    RestDetectorSettings rest,
    SigmaFloor floor) {

  public LowPassSettings {
    Setting.sizes(
        "force time s, start bias, moving rate and largest tilt rate rad/s",
        forceTimeS,
        startBiasRadPerS,
        movingRateRadPerSqrtS,
        largestTiltRateRadPerS);
    Setting.atLeast0("bias walk", biasWalkRadPerSSqrtS);
  }

  /** Our choice, for the same units as {@link KalmanSettings#standard()}. */
  public static LowPassSettings standard() {
    return new LowPassSettings(
        3,
        Math.toRadians(2),
        Math.toRadians(0.002),
        Math.toRadians(1),
        Math.toRadians(2),
        RestDetectorSettings.laidDown(),
        SigmaFloor.standard());
  }
}
