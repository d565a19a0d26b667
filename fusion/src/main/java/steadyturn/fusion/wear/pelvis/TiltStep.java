package steadyturn.fusion.wear.pelvis;

import steadyturn.fusion.attitude.LevelTrack;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.StepReason;
import steadyturn.fusion.wear.StepResult;
import steadyturn.fusion.wear.StillStep;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.UnitStream;

/**
 * How far a standing pelvis is tilted, measured: another unit lies still on a ruler from a front
 * hip-bone point to the back dimple of the same side, its x axis to the front, while the pelvis
 * unit is worn. Both feel up in the same seconds, so it does not matter how the player stands.
 *
 * @param forceUnitMps2 mean specific force that the pelvis unit felt, unit axes
 * @param unitSdRad what the pelvis unit's own bias turns that by, rad (1 SD)
 * @param rulerRad how far the ruler's front end lies below its back end, rad
 * @param rulerSdRad spread of that: bias of the unit on it, and the two points found by touch
 * @param result how it went; the figure is the ruler's slope
 */
public record TiltStep(
    Vector3 forceUnitMps2,
    double unitSdRad,
    double rulerRad,
    double rulerSdRad,
    StepResult result) {

  private static final String STEP = "tilt";

  /** No standing pelvis is tilted so far: the unit was not on the ruler, or the wrong way round. */
  private static final double STEEPEST_DEG = 35;

  /** A point under the skin is found by touch within 5 mm; two of them, 155 mm apart (assumed). */
  private static final double TOUCH_SD_RAD = Math.sqrt(2) * 5 / 155;

  /** How well a case lies along a ruler, and its axes along the case (our assumption). */
  private static final double LAID_SD_RAD = Math.toRadians(1);

  /** From the middle of the back to one back point, mm (from memory). */
  private static final double BACK_POINT_ASIDE_MM = 48;

  /**
   * Reads the step.
   *
   * @param ruler the unit on the ruler
   * @param pelvis the worn unit
   */
  public static TiltStep of(UnitStream ruler, UnitStream pelvis, double fromS, double toS) {
    StillStep worn = StillStep.stance(pelvis, fromS, toS, STEP);
    StillStep laid = StillStep.stance(ruler, fromS, toS, STEP);
    Vector3 up = laid.meanForceMps2();
    double slopeRad = Math.asin(Math.max(-1, Math.min(1, -up.x() / up.norm())));
    double bias = LevelTrack.Spreads.of(ruler).tiltRad();
    return new TiltStep(
        worn.meanForceMps2(),
        LevelTrack.Spreads.of(pelvis).tiltRad(),
        slopeRad,
        Math.sqrt(bias * bias + TOUCH_SD_RAD * TOUCH_SD_RAD + LAID_SD_RAD * LAID_SD_RAD),
        judge(worn.result(), laid.result(), Math.toDegrees(slopeRad)));
  }

  private static StepResult judge(StepResult worn, StepResult laid, double slopeDeg) {
    if (!worn.used()) {
      return worn;
    }
    if (!laid.used()) {
      return laid;
    }
    return Math.abs(slopeDeg) <= STEEPEST_DEG
        ? StepResult.good(STEP, slopeDeg, STEEPEST_DEG, "deg")
        : StepResult.again(
            STEP, slopeDeg, STEEPEST_DEG, "deg", Reason.of(StepReason.TILT_STEEP, slopeDeg));
  }

  /**
   * Forward tilt of the pelvis, rad. The front points lie wider apart than the back points, so the
   * ruler runs at an angle to the front, and slopes less than the pelvis is tilted.
   */
  public double tiltRad(Player player) {
    double asideMm = LeverArm.pelvisWidthMm(player) / 2 - BACK_POINT_ASIDE_MM;
    double alongPart = Math.cos(Math.atan2(asideMm, LeverArm.pelvisDepthMm(player)));
    return Math.asin(Math.max(-1, Math.min(1, Math.sin(rulerRad) / alongPart)));
  }
}
