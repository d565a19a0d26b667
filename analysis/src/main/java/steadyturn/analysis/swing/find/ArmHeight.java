package steadyturn.analysis.swing.find;

import java.util.Optional;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.attitude.PeakRepair;
import steadyturn.fusion.attitude.QuietLevel;
import steadyturn.fusion.displace.UnitPriors;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sample.UnitStream;

/** How the forearm rises and falls in a stroke, and when it is level with the ground. */
final class ArmHeight {

  // our choice: levelling while a person sways, an arm that hung off the vertical in its pose, and
  // a
  // unit that tips as skin hangs and stretches
  private static final double LEVEL_SD_RAD = Math.toRadians(1.8);

  // how far the arm turns between a rest and a level position, both ways together
  private static final double ARM_WAY_RAD = 1.5;

  // the middle of the stretch that shows the level, before the takeaway
  private static final double LEVEL_S = 0.45;

  private static final double LONGEST_SD_S = 0.1;

  private final GyroTrack track;
  private final Vector3 longAxisUnit;
  private final GapDoubt gaps;
  private final double levelS;
  private final double unitSdRad;

  private ArmHeight(
      UnitStream stretch, QuietLevel level, Vector3 longAxisUnit, GapDoubt gaps, double takeawayS) {
    this.track = level.track();
    this.longAxisUnit = longAxisUnit;
    this.gaps = gaps;
    this.levelS = takeawayS - LEVEL_S;
    // levelled by the accelerometer, then carried
    UnitPriors unit = stretch.facts().calibrated() ? UnitPriors.calibrated() : UnitPriors.raw();
    double sdRad =
        Math.hypot(unit.accelBiasMps2() / StandardGravity.MPS2, unit.gyroMatrix() * ARM_WAY_RAD);
    this.unitSdRad = Math.hypot(sdRad, level.pushRad());
  }

  /** Of the unit that shows the stroke. */
  static ArmHeight of(ArmMotion arm) {
    double takeawayS = arm.timeS(arm.shape().takeaway());
    QuietLevel level = new QuietLevel(arm.track(), arm.levelSdRad());
    return new ArmHeight(arm.stretch(), level, arm.longAxisUnit(), arm.gaps(), takeawayS);
  }

  /** Of a forearm that lost a part of a stroke which the hand shows; none without a level. */
  static Optional<ArmHeight> beside(WornUnit forearm, ArmMotion hand) {
    UnitStream stretch =
        forearm.stream().between(hand.timeS(0), hand.timeS(hand.track().size() - 1));
    double takeawayS = hand.timeS(hand.shape().takeaway());
    if (stretch.size() < 2 || stretch.timeS(0) > takeawayS - LEVEL_S) {
      return Optional.empty();
    }
    GyroTrack raw = GyroTrack.of(PeakRepair.repair(stretch).stream(), forearm.biasRadPerS());
    return QuietLevel.before(raw, takeawayS)
        .map(
            level ->
                new ArmHeight(
                    stretch, level, forearm.longAxisUnit(), GapDoubt.of(stretch, raw), takeawayS));
  }

  GapDoubt gaps() {
    return gaps;
  }

  /** First crossing of the horizontal upward in a span. */
  Optional<Instant> levelUp(double fromS, double toS, double alignmentSdRad) {
    return crossing(fromS, toS, 1, alignmentSdRad);
  }

  /** First crossing of the horizontal downward in a span. */
  Optional<Instant> levelDown(double fromS, double toS, double alignmentSdRad) {
    return crossing(fromS, toS, -1, alignmentSdRad);
  }

  private Optional<Instant> crossing(double fromS, double toS, int sign, double alignmentSdRad) {
    int from = track.indexAt(fromS);
    int to = track.indexAt(toS);
    for (int i = from + 1; i < to; i++) {
      double before = sign * elevationRad(i - 1);
      double now = sign * elevationRad(i);
      if (before < 0 && now >= 0) {
        double slope = (now - before) / (track.timeS(i) - track.timeS(i - 1));
        double time = track.timeS(i) - now / slope;
        if (gaps.isBeyond(levelS, time) || !gaps.isWithin(time)) {
          return Optional.empty();
        }
        double known = Math.hypot(LEVEL_SD_RAD, alignmentSdRad);
        double carried = Math.hypot(unitSdRad, gaps.turnSdRad(levelS, time));
        double sdS = Math.hypot(known, carried) / slope;
        return Optional.of(new Instant(time, Math.min(sdS, LONGEST_SD_S)));
      }
    }
    return Optional.empty();
  }

  private double elevationRad(int i) {
    double up = track.qTrackUnit(i).rotate(longAxisUnit).z();
    return Math.asin(Math.max(-1, Math.min(1, up)));
  }
}
