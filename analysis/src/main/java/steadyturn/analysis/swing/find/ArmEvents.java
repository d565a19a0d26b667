package steadyturn.analysis.swing.find;

import java.util.Optional;
import steadyturn.fusion.displace.UnitPriors;
import steadyturn.ingest.sample.StandardGravity;

/**
 * Moments of a stroke that an arm unit sees: the arm level with the ground, the way back to the
 * address direction.
 */
final class ArmEvents {

  // our choice: levelling while a person sways, and an arm that hung off the vertical in its pose
  private static final double LEVEL_SD_RAD = Math.toRadians(1.2);

  // how far the arm turns between a rest and a level position, both ways together
  private static final double ARM_WAY_RAD = 1.5;

  // the middle of the stretch that shows the level, before the takeaway
  private static final double LEVEL_S = 0.45;

  private ArmEvents() {}

  /** First crossing of the horizontal upward among samples from..to-1. */
  static Optional<Instant> levelUp(ArmMotion arm, int from, int to, double alignmentSdRad) {
    return crossing(arm, from, to, 1, alignmentSdRad);
  }

  /** First crossing of the horizontal downward among samples from..to-1. */
  static Optional<Instant> levelDown(ArmMotion arm, int from, int to, double alignmentSdRad) {
    return crossing(arm, from, to, -1, alignmentSdRad);
  }

  private static Optional<Instant> crossing(
      ArmMotion arm, int from, int to, int sign, double alignmentSdRad) {
    double before = sign * arm.elevationRad(from);
    for (int i = from + 1; i < to; i++) {
      double now = sign * arm.elevationRad(i);
      if (before < 0 && now >= 0) {
        double dt = arm.timeS(i) - arm.timeS(i - 1);
        double slope = (now - before) / dt;
        double time = arm.timeS(i) - now / slope;
        double levelS = arm.timeS(arm.shape().takeaway()) - LEVEL_S;
        if (arm.gaps().isBeyond(levelS, time) || !arm.gaps().isWithin(time)) {
          return Optional.empty();
        }
        double known = Math.hypot(LEVEL_SD_RAD, alignmentSdRad);
        double carried = Math.hypot(unitSdRad(arm), arm.gaps().turnSdRad(levelS, time));
        return Optional.of(new Instant(time, Math.min(Math.hypot(known, carried) / slope, 0.1)));
      }
      before = now;
    }
    return Optional.empty();
  }

  /** What the unit's own errors turn the arm by: levelled by its accelerometer, then carried. */
  private static double unitSdRad(ArmMotion arm) {
    UnitPriors unit =
        arm.stretch().facts().calibrated() ? UnitPriors.calibrated() : UnitPriors.raw();
    return Math.hypot(unit.accelBiasMps2() / StandardGravity.MPS2, unit.gyroMatrix() * ARM_WAY_RAD);
  }

  /**
   * The nearest return of the bone to its direction before the takeaway, among samples from..to-1:
   * where a ball would have been struck.
   */
  static Instant nearestReturn(ArmMotion arm, int from, int to, double sdS) {
    int reference = arm.shape().takeaway();
    int best = from;
    double closest = -2;
    for (int i = from; i < to; i++) {
      double cosine = arm.boneLevel(i).dot(arm.boneLevel(reference));
      if (cosine > closest) {
        closest = cosine;
        best = i;
      }
    }
    return new Instant(arm.timeS(best), sdS);
  }
}
