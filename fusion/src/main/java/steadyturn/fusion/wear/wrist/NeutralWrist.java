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
    StillStep forearmStill = StillStep.stance(forearm, fromS, toS, STEP);
    StillStep handStill = StillStep.stance(hand, fromS, toS, STEP);
    if (!forearmStill.result().used()) {
      return new NeutralWrist(before, forearmStill.result());
    }
    if (!handStill.result().used()) {
      return new NeutralWrist(before, handStill.result());
    }
    Vector3 forearmLong = forearmStill.meanForceMps2().times(-1).unit();
    Vector3 handLong = handStill.meanForceMps2().times(-1).unit();
    double off = Math.max(offDeg(forearmLong), offDeg(handLong));
    if (off > FARTHEST_DEG) {
      return new NeutralWrist(before, tooFar(off));
    }
    return new NeutralWrist(
        new WristAlignment(
            before.forearm().posed(turned(forearmLong), hangingSdRad(forearm)),
            before.hand().posed(turned(handLong), Math.hypot(STRAIGHT_SD_RAD, hangingSdRad(hand))),
            HANG_SD_RAD,
            WristAlignment.Source.POSE),
        StepResult.good(STEP, off, FARTHEST_DEG, "deg"));
  }

  /**
   * Reads the pose from the forearm alone, beside a shaft unit that stays as drawn: a club that is
   * held in the pose does not hang straight.
   */
  static NeutralWrist ofForearm(
      WristAlignment before, UnitStream forearm, double fromS, double toS) {
    StillStep still = StillStep.stance(forearm, fromS, toS, STEP);
    if (!still.result().used()) {
      return new NeutralWrist(before, still.result());
    }
    Vector3 along = still.meanForceMps2().times(-1).unit();
    double off = offDeg(along);
    if (off > FARTHEST_DEG) {
      return new NeutralWrist(before, tooFar(off));
    }
    return new NeutralWrist(
        new WristAlignment(
            before.forearm().posed(turned(along), hangingSdRad(forearm)),
            before.hand(),
            0,
            WristAlignment.Source.POSE),
        StepResult.good(STEP, off, FARTHEST_DEG, "deg"));
  }

  /** How the arm hangs, and what the unit's own accelerometer adds. */
  private static double hangingSdRad(UnitStream unit) {
    return Math.hypot(HANG_SD_RAD, LevelTrack.Spreads.of(unit).tiltRad());
  }

  private static StepResult tooFar(double offDeg) {
    return StepResult.again(
        STEP, offDeg, FARTHEST_DEG, "deg", Reason.of(StepReason.NEUTRAL_WRIST_FAR, offDeg));
  }

  private static double offDeg(Vector3 longAxisUnit) {
    return Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, longAxisUnit.x()))));
  }

  /** Segment x along the long axis; z as near to the unit's z as that allows. */
  private static Quaternion turned(Vector3 longAxisUnit) {
    Vector3 z = Vector3.Z.minus(longAxisUnit.times(longAxisUnit.z())).unit();
    return Quaternion.fromAxes(longAxisUnit, z.cross(longAxisUnit), z);
  }
}
