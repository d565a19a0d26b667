package steadyturn.fusion.wear.wrist;

import org.jspecify.annotations.Nullable;
import steadyturn.fusion.attitude.AttitudeTrack;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.SkinSlip;

/**
 * Attitude of the hand in the forearm as a function of everything unknown, with its derivative.
 * Parameters, in this order: those of the forearm track, those of the hand track, the heading
 * between their level frames (rad), the small mounting turns of forearm and hand (in their
 * spreads), the shift of the hand's clock (in its spread), how both slip on the skin until top,
 * impact and finish, how the arm hung in the neutral pose, which both long axes share, and how the
 * wrist's axes are out of square (in its spreads, see {@link #playRad}).
 */
final class RelativeAttitude {

  // places after the heading's
  private static final int FOREARM = 1;
  private static final int HAND = 4;
  private static final int CLOCK = 7;
  private static final int FOREARM_SLIP = 8;
  private static final int HAND_SLIP = 11;
  private static final int NEXT_SLIP = 6;
  private static final int HANG = 26;
  private static final int PLAY = 28;
  private static final int ALL = 31;

  /** How far the wrist's axes are out of square when it is straight (our assumption), 1 SD. */
  private static final double SKEW_SD_RAD = Math.toRadians(4);

  /** Of a bend of the wrist either way, so much goes along with a turn about its length. */
  private static final double COUPLED_SD = 0.12;

  private final AttitudeTrack forearmTrack;
  private final AttitudeTrack handTrack;
  private final WornSegment forearm;
  private final WornSegment hand;
  private final WristAlignment alignment;
  private final double syncSdS;
  private final int headingAt;
  private final int[] handBefore;
  private final double[] handPart;

  /** Turn of the hand's unit from that sample to the next, found when first asked for. */
  private final @Nullable Vector3[] handOn;

  RelativeAttitude(
      AttitudeTrack forearm,
      AttitudeTrack hand,
      WristAlignment alignment,
      SkinSlip slip,
      double syncSdS) {
    this.forearmTrack = forearm;
    this.handTrack = hand;
    this.alignment = alignment;
    this.syncSdS = syncSdS;
    int at = forearm.parameters() + hand.parameters();
    this.headingAt = at;
    this.forearm =
        new WornSegment(
            forearm,
            alignment.forearm(),
            alignment.hangSdRad(),
            slip,
            new WornSegment.Places(0, at + FOREARM, at + FOREARM_SLIP, NEXT_SLIP, at + HANG));
    this.hand =
        new WornSegment(
            hand,
            alignment.hand(),
            alignment.hangSdRad(),
            slip,
            new WornSegment.Places(
                forearm.parameters(), at + HAND, at + HAND_SLIP, NEXT_SLIP, at + HANG));
    this.handBefore = new int[forearm.size()];
    this.handPart = new double[forearm.size()];
    this.handOn = new Vector3[forearm.size()];
    int j = 0;
    for (int k = 0; k < forearm.size(); k++) {
      while (j < hand.size() - 2 && hand.timeS(j + 1) <= forearm.timeS(k)) {
        j++;
      }
      handBefore[k] = j;
      double part = (forearm.timeS(k) - hand.timeS(j)) / (hand.timeS(j + 1) - hand.timeS(j));
      handPart[k] = Math.max(0, Math.min(1, part));
    }
  }

  int size() {
    return forearmTrack.size();
  }

  double timeS(int k) {
    return forearmTrack.timeS(k);
  }

  /** Whether both units showed what they did at sample k. */
  boolean isSeen(int k) {
    return forearmTrack.isSeen(timeS(k)) && handTrack.isSeen(timeS(k));
  }

  int parameters() {
    return headingAt + ALL;
  }

  int headingAt() {
    return headingAt;
  }

  double clockShiftS(double[] z) {
    return syncSdS * z[headingAt + CLOCK];
  }

  /**
   * Both segments at sample k, each in its own level frame.
   *
   * @param headingRad from the hand's level frame to the forearm's
   */
  record Both(int k, Quaternion qLevelForearm, Quaternion qLevelHand, double headingRad) {

    Quaternion qForearmHand() {
      return qLevelForearm.conjugate().times(Quaternion.aboutZ(headingRad)).times(qLevelHand);
    }
  }

  Both at(int k, double[] z) {
    Quaternion qLevelForearm = forearm.qLevelSegment(k, Vector3.ZERO, timeS(k), z);
    int j = handBefore[k];
    if (handOn[k] == null) {
      handOn[k] =
          handTrack.qLevelUnit(j).conjugate().times(handTrack.qLevelUnit(j + 1)).rotationVector();
    }
    Vector3 late = handTrack.rateUnitRadPerS(j).times(clockShiftS(z));
    Vector3 onUnitRad = handOn[k].times(handPart[k]).plus(late);
    Quaternion qLevelHand = hand.qLevelSegment(j, onUnitRad, timeS(k), z);
    return new Both(k, qLevelForearm, qLevelHand, z[headingAt]);
  }

  /**
   * How far the hand is turned about its length against the forearm by the shape of the joint: by a
   * skew, and along with deviation and flexion. A rule without it would take every wrist for a
   * machine's and lay the difference on the heading, and so on cock and flexion.
   */
  double playRad(Quaternion qForearmHand, double[] z) {
    double[] by = playRow(qForearmHand);
    double sum = 0;
    for (int i = 0; i < by.length; i++) {
      sum += by[i] * z[headingAt + PLAY + i];
    }
    return sum;
  }

  /** Takes the derivatives of {@link #playRad} off a row. */
  void takePlay(Quaternion qForearmHand, double[] row) {
    double[] by = playRow(qForearmHand);
    for (int i = 0; i < by.length; i++) {
      row[headingAt + PLAY + i] -= by[i];
    }
  }

  private static double[] playRow(Quaternion qForearmHand) {
    Vector3 handX = qForearmHand.rotate(Vector3.X);
    Vector3 handZ = qForearmHand.rotate(Vector3.Z);
    double deviation = Math.asin(Math.max(-1, Math.min(1, handX.y())));
    double flexion = Math.atan2(handZ.x(), handZ.z());
    return new double[] {SKEW_SD_RAD, COUPLED_SD * deviation, COUPLED_SD * flexion};
  }

  /**
   * Derivative, by every parameter, of the small turn of the hand against the forearm along a
   * direction in hand axes.
   */
  double[] turnAlong(Both both, Vector3 directionHand) {
    double[] row = new double[parameters()];
    int k = both.k();
    int j = handBefore[k];
    Vector3 inHandLevel = both.qLevelHand().rotate(directionHand);
    Vector3 inForearmLevel = Quaternion.aboutZ(both.headingRad()).rotate(inHandLevel);
    Vector3 inForearm = both.qLevelForearm().conjugate().rotate(inForearmLevel);
    forearm.putTurn(k, timeS(k), inForearmLevel.times(-1), inForearm.times(-1), row);
    hand.putTurn(j, timeS(k), inHandLevel, directionHand, row);
    row[headingAt] = inHandLevel.z();
    Vector3 inHandUnit = alignment.qHandUnitHand().rotate(directionHand);
    row[headingAt + CLOCK] = syncSdS * handTrack.rateUnitRadPerS(j).dot(inHandUnit);
    return row;
  }

  /** Angle of a segment's x axis above level, rad. */
  static double elevationRad(Both both, boolean ofHand) {
    Vector3 x = (ofHand ? both.qLevelHand() : both.qLevelForearm()).rotate(Vector3.X);
    return Math.asin(Math.max(-1, Math.min(1, x.z())));
  }

  /** Its derivative by every parameter. */
  double[] elevationRow(Both both, boolean ofHand) {
    double[] row = new double[parameters()];
    Quaternion qLevelSegment = ofHand ? both.qLevelHand() : both.qLevelForearm();
    Vector3 x = qLevelSegment.rotate(Vector3.X);
    double level = Math.max(1e-6, Math.hypot(x.x(), x.y()));
    Vector3 along = x.cross(Vector3.Z).times(1 / level);
    Vector3 inSegment = qLevelSegment.conjugate().rotate(along);
    int k = both.k();
    if (ofHand) {
      hand.putTurn(handBefore[k], timeS(k), along, inSegment, row);
    } else {
      forearm.putTurn(k, timeS(k), along, inSegment, row);
    }
    return row;
  }

  /** Rate of the hand against the forearm, hand axes, rad/s. */
  Vector3 rateHandRadPerS(Both both, double[] z) {
    int k = both.k();
    int j = handBefore[k];
    Vector3 handUnit =
        handTrack
            .rateUnitRadPerS(j)
            .times(1 - handPart[k])
            .plus(handTrack.rateUnitRadPerS(j + 1).times(handPart[k]));
    Vector3 forearmRate =
        forearm.qUnitSegment(timeS(k), z).conjugate().rotate(forearmTrack.rateUnitRadPerS(k));
    Vector3 carried = both.qForearmHand().conjugate().rotate(forearmRate);
    return hand.qUnitSegment(timeS(k), z).conjugate().rotate(handUnit).minus(carried);
  }
}
