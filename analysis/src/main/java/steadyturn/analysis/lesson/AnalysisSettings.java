package steadyturn.analysis.lesson;

import steadyturn.analysis.pelvis.SkinShift;

/**
 * What the analysis takes for granted.
 *
 * @param gravityMps2 local gravity, m/s^2
 * @param aimSdRad spread of the target line about "square to the hips at address", rad
 * @param skin how far the pelvis unit wanders on the skin
 */
public record AnalysisSettings(double gravityMps2, double aimSdRad, SkinShift skin) {

  /** Standard gravity, hips square within 3 deg (our assumption). */
  public static AnalysisSettings defaults() {
    return new AnalysisSettings(9.80665, Math.toRadians(3), SkinShift.assumed());
  }
}
