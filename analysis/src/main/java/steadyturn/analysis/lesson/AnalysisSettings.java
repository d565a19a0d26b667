package steadyturn.analysis.lesson;

import steadyturn.analysis.pelvis.SkinShift;
import steadyturn.ingest.sample.StandardGravity;

/**
 * What the analysis takes for granted.
 *
 * @param gravityMps2 local gravity, m/s^2
 * @param aimSdRad spread of the target line about "square to the hips at address", rad
 * @param skin how far the pelvis unit wanders on the skin
 * @param together whether the swings of a lesson are estimated together; apart only to study what
 *     that brings
 * @param curves whether the course of each measure over time is asked for, which takes a third of
 *     the work
 */
public record AnalysisSettings(
    double gravityMps2, double aimSdRad, SkinShift skin, boolean together, boolean curves) {

  /** Standard gravity, hips square within 3 deg (our assumption). */
  public static AnalysisSettings defaults() {
    return new AnalysisSettings(
        StandardGravity.MPS2, Math.toRadians(3), SkinShift.assumed(), true, true);
  }

  /** The same, but each swing on its own. */
  public AnalysisSettings apart() {
    return new AnalysisSettings(gravityMps2, aimSdRad, skin, false, curves);
  }

  /** The same, but key positions only. */
  public AnalysisSettings withoutCurves() {
    return new AnalysisSettings(gravityMps2, aimSdRad, skin, together, false);
  }
}
