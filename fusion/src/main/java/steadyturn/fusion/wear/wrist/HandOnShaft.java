package steadyturn.fusion.wear.wrist;

import org.apache.commons.math3.util.MathArrays;
import steadyturn.fusion.attitude.AttitudeTrack;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.TimeAxis;

/**
 * How far hand and club shaft turn against each other in a swing, since address. Both units are
 * levelled at address and hang together by the grip, so all that is not known is the heading
 * between their level frames: what was upright at address is seen to lean the same way by both. No
 * mounting is needed. What is left is the grip's movement, a slip of the hand unit, or an error of
 * one of them.
 */
public final class HandOnShaft {

  /** What else one common heading cannot hold: our assumption. */
  private static final double HEADING_SD_RAD = Math.toRadians(0.5);

  private static final double SURELY = 3;

  private final AttitudeTrack hand;
  private final AttitudeTrack shaft;
  private final UnitMount handMount;
  private final double syncSdS;
  private final double fromS;
  private final double toS;
  private final int handAtAddress;
  private final int shaftAtAddress;
  private final double headingRad;

  /**
   * Compares both tracks.
   *
   * @param fromS address, s
   * @param toS the end of what is compared, before the blow
   * @param syncSdS standard deviation of the one clock against the other, s
   */
  public HandOnShaft(
      AttitudeTrack hand,
      AttitudeTrack shaft,
      UnitMount handMount,
      double fromS,
      double toS,
      double syncSdS) {
    this.hand = hand;
    this.shaft = shaft;
    this.handMount = handMount;
    this.syncSdS = syncSdS;
    this.fromS = fromS;
    this.toS = toS;
    this.handAtAddress = indexAt(hand, fromS);
    this.shaftAtAddress = indexAt(shaft, fromS);
    this.headingRad = heading();
  }

  private static int indexAt(AttitudeTrack track, double timeS) {
    return TimeAxis.beforeAt(track::timeS, track.size(), timeS);
  }

  private static Quaternion attitude(AttitudeTrack track, double timeS) {
    int j = indexAt(track, timeS);
    Quaternion before = track.qLevelUnit(j);
    Vector3 on = before.conjugate().times(track.qLevelUnit(j + 1)).rotationVector();
    double part = (timeS - track.timeS(j)) / (track.timeS(j + 1) - track.timeS(j));
    return before.times(Quaternion.fromRotationVector(on.times(Math.max(0, Math.min(1, part)))));
  }

  private Quaternion handSinceAddress(double timeS) {
    return attitude(hand, timeS).times(hand.qLevelUnit(handAtAddress).conjugate());
  }

  private Quaternion shaftSinceAddress(double timeS) {
    return attitude(shaft, timeS).times(shaft.qLevelUnit(shaftAtAddress).conjugate());
  }

  /** The heading that lays the leaning of the upright, as the shaft saw it, on the hand's. */
  private double heading() {
    double along = 0;
    double across = 0;
    for (int k = handAtAddress; k < hand.size() && hand.timeS(k) <= toS; k++) {
      Vector3 h = handSinceAddress(hand.timeS(k)).rotate(Vector3.Z);
      Vector3 s = shaftSinceAddress(hand.timeS(k)).rotate(Vector3.Z);
      along += s.x() * h.x() + s.y() * h.y();
      across += s.x() * h.y() - s.y() * h.x();
    }
    return Math.atan2(across, along);
  }

  /** Turn of the shaft against the hand since address, about each hand axis, rad. */
  public Vector3 turnHandRad(double timeS) {
    Quaternion qHeading = Quaternion.aboutZ(headingRad);
    Quaternion qShaft = qHeading.times(shaftSinceAddress(timeS)).times(qHeading.conjugate());
    Vector3 level = handSinceAddress(timeS).conjugate().times(qShaft).rotationVector();
    return hand.qLevelUnit(handAtAddress).times(handMount.qUnitSegment()).conjugate().rotate(level);
  }

  /** Standard deviation of that turn about hand z if hand and shaft held together, rad. */
  public double sdRad(double timeS) {
    int h = indexAt(hand, timeS);
    int s = indexAt(shaft, timeS);
    Vector3 now = hand.qLevelUnit(h).times(handMount.qUnitSegment()).rotate(Vector3.Z);
    Vector3 then = hand.qLevelUnit(handAtAddress).times(handMount.qUnitSegment()).rotate(Vector3.Z);
    Quaternion back = Quaternion.aboutZ(-headingRad);
    double units =
        variance(hand, h, now, handAtAddress, then)
            + variance(shaft, s, back.rotate(now), shaftAtAddress, back.rotate(then));
    double heading = HEADING_SD_RAD * (now.z() - then.z());
    double late = syncSdS * hand.rateUnitRadPerS(h).norm();
    double slip = Math.hypot(handMount.slipSdRad(), UnitMount.onShaft().slipSdRad());
    return Math.sqrt(units + heading * heading + late * late + slip * slip);
  }

  private static double variance(
      AttitudeTrack track, int k, Vector3 along, int before, Vector3 alongBefore) {
    double[] now = new double[track.parameters()];
    double[] then = new double[track.parameters()];
    track.putTurn(k, along, now, 0);
    track.putTurn(before, alongBefore, then, 0);
    double apart = MathArrays.distance(now, then);
    return apart * apart;
  }

  /** Whether the two turn against each other by more than all that may explain it. */
  public boolean disagree() {
    double stepS = 0.01;
    for (double t = fromS; t <= toS; t += stepS) {
      if (Math.abs(turnHandRad(t).z()) > SURELY * sdRad(t)) {
        return true;
      }
    }
    return false;
  }
}
