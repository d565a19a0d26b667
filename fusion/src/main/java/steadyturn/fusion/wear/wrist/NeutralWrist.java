package steadyturn.fusion.wear.wrist;

import steadyturn.fusion.attitude.LevelTrack;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.StepReason;
import steadyturn.fusion.wear.StepResult;
import steadyturn.fusion.wear.StillStep;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.UnitStream;

/**
 * The still pose with hanging arm and straight wrist: gravity shows the long axis of forearm and
 * hand in each unit. The turn about that axis stays as drawn.
 *
 * @param alignment from the pose; the one before where the pose cannot be used
 */
public record NeutralWrist(WristAlignment alignment, StepResult result) {

  private static final String STEP = "neutral-wrist";
  // our choice: a strapped unit is off by 5-10 deg; 30 deg is a unit on a bent wrist or upside down
  private static final double FARTHEST_DEG = 30;
  // our assumptions: a hanging arm is off the vertical, which both units see alike, and a wrist
  // that
  // feels straight is off straight, which only the hand's sees
  private static final double HANG_SD_RAD = Math.toRadians(1.5);
  private static final double STRAIGHT_SD_RAD = Math.toRadians(2);

  /** Reads the pose from both units. */
  public static NeutralWrist of(
      WristAlignment before, UnitStream forearm, UnitStream hand, double fromS, double toS) {
    StillStep armHangs = StillStep.stance(forearm, fromS, toS, STEP);
    StillStep handHangs = StillStep.stance(hand, fromS, toS, STEP);
    StepResult result = judge(armHangs, handHangs);
    if (!result.used()) {
      return new NeutralWrist(before, result);
    }
    UnitMount arm = before.forearm().posed(turned(armHangs), hangingSdRad(forearm));
    UnitMount own =
        before.hand().posed(turned(handHangs), Math.hypot(STRAIGHT_SD_RAD, hangingSdRad(hand)));
    return new NeutralWrist(
        new WristAlignment(arm, own, HANG_SD_RAD, WristAlignment.Source.POSE), result);
  }

  /**
   * Reads the pose from the forearm alone, beside a shaft unit that stays as drawn: a club that is
   * held in the pose does not hang straight.
   */
  static NeutralWrist ofForearm(
      WristAlignment before, UnitStream forearm, double fromS, double toS) {
    StillStep hangs = StillStep.stance(forearm, fromS, toS, STEP);
    StepResult result = judge(hangs);
    if (!result.used()) {
      return new NeutralWrist(before, result);
    }
    UnitMount arm = before.forearm().posed(turned(hangs), hangingSdRad(forearm));
    return new NeutralWrist(
        new WristAlignment(arm, before.hand(), 0, WristAlignment.Source.POSE), result);
  }

  private static StepResult judge(StillStep... units) {
    double offDeg = 0;
    for (StillStep hangs : units) {
      if (!hangs.result().used()) {
        return hangs.result();
      }
      double cosine = Math.max(-1, Math.min(1, along(hangs).x()));
      offDeg = Math.max(offDeg, Math.toDegrees(Math.acos(cosine)));
    }
    return offDeg > FARTHEST_DEG
        ? StepResult.again(
            STEP, offDeg, FARTHEST_DEG, "deg", Reason.of(StepReason.NEUTRAL_WRIST_FAR, offDeg))
        : StepResult.good(STEP, offDeg, FARTHEST_DEG, "deg");
  }

  /** The segment's long axis in its unit. */
  private static Vector3 along(StillStep hangs) {
    return hangs.meanForceMps2().times(-1).unit();
  }

  /** How the arm hangs, and what the unit's own accelerometer adds. */
  private static double hangingSdRad(UnitStream unit) {
    return Math.hypot(HANG_SD_RAD, LevelTrack.Spreads.of(unit).tiltRad());
  }

  /** Segment x along the long axis; z as near to the unit's z as that allows. */
  private static Quaternion turned(StillStep hangs) {
    Vector3 x = along(hangs);
    Vector3 z = Vector3.Z.minus(x.times(x.z())).unit();
    return Quaternion.fromAxes(x, z.cross(x), z);
  }
}
