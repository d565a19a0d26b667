package steadyturn.analysis.swing.find;

import java.util.Optional;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

/**
 * The club shaft level with the ground on the way down. A shaft unit sees it. A hand unit can only
 * carry the shaft's direction at address along, and that direction is an assumption: across the
 * target line, {@value #LIE_DEG} deg below the horizontal.
 */
final class ShaftLevel {

  // clubs lie at 55-64 deg when their sole is flat, players hold them with the toe up: common
  // practice, no source
  private static final double LIE_DEG = 57;
  // our assumptions, in deg, no source: clubs from 55 to 64 (2.6), how high they are held (4), how
  // far they lean along the target line (3), the grip (1.5), the hand's skin (1), levelling (1.2)
  private static final double ASSUMED_SD_RAD =
      Math.toRadians(Math.sqrt(2.6 * 2.6 + 4 * 4 + 3 * 3 + 1.5 * 1.5 + 1 * 1 + 1.2 * 1.2));
  private static final double SEEN_SD_RAD = Math.toRadians(3.5);

  private ShaftLevel() {}

  /** From a shaft unit with +x towards the club head. */
  static Optional<Instant> seen(
      UnitStream shaft, Vector3 bias, double takeawayS, ArmMotion.Span down) {
    UnitStream stretch = shaft.between(takeawayS - 0.75, down.toS() + 0.1);
    if (stretch.size() < 10 || stretch.timeS(0) > takeawayS - 0.2) {
      return Optional.empty();
    }
    GyroTrack raw = GyroTrack.of(stretch, bias);
    GyroTrack level = raw.levelled(0, Math.max(1, raw.indexAt(takeawayS - 0.12)));
    return lastFall(level, Vector3.X, down, SEEN_SD_RAD)
        .map(i -> GapDoubt.of(stretch, raw).moment(i, 0, 0).at());
  }

  /** From the hand unit and the plane of the swing. */
  static Optional<Instant> carried(ArmMotion hand, int handedSign, ArmMotion.Span down) {
    Vector3 across = new Vector3(hand.planeNormal().x(), hand.planeNormal().y(), 0);
    if (across.norm() < 0.2) {
      return Optional.empty();
    }
    double lie = Math.toRadians(LIE_DEG);
    // the horizontal part of the downswing's axis points to the ball for a right-handed player
    Vector3 shaftLevel =
        across.unit().times(handedSign * Math.cos(lie)).plus(Vector3.Z.times(-Math.sin(lie)));
    Vector3 shaftUnit =
        hand.track().qTrackUnit(hand.shape().takeaway()).conjugate().rotate(shaftLevel);
    double turnedSd = hand.gaps().turnSdRad(hand.takeawayS(), down.toS());
    return hand.gaps().isBeyond(hand.takeawayS(), down.toS())
        ? Optional.empty()
        : lastFall(hand.track(), shaftUnit, down, Math.hypot(ASSUMED_SD_RAD, turnedSd));
  }

  /** The last time before impact that the direction falls through the horizontal. */
  private static Optional<Instant> lastFall(
      GyroTrack track, Vector3 directionUnit, ArmMotion.Span down, double sdRad) {
    int to = Math.min(track.size() - 1, track.indexAt(down.toS()));
    int from = track.indexAt(down.fromS());
    double after = height(track, directionUnit, to);
    for (int i = to - 1; i >= from; i--) {
      double now = height(track, directionUnit, i);
      if (now >= 0 && after < 0) {
        double slope = (after - now) / (track.timeS(i + 1) - track.timeS(i));
        double time = track.timeS(i) - now / slope;
        return Optional.of(new Instant(time, Math.min(0.1, -sdRad / slope)));
      }
      after = now;
    }
    return Optional.empty();
  }

  private static double height(GyroTrack track, Vector3 directionUnit, int i) {
    return track.qTrackUnit(i).rotate(directionUnit).z();
  }
}
