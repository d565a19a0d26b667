package steadyturn.fusion.wear.wrist;

import steadyturn.fusion.attitude.AttitudeTrack;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.SkinSlip;

/**
 * Attitude of the hand in the forearm as a function of everything unknown, with its derivative.
 * Parameters, in this order: those of the forearm track, those of the hand track, the heading
 * between their level frames (rad), the small mounting turns of forearm and hand (in their
 * spreads), the shift of the hand's clock (in its spread), how both slip on the skin until top,
 * impact and finish, and how the arm hung in the neutral pose, which both long axes share.
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
  private static final int ALL = 28;
  private static final double ADDRESS_S = 0.3;

  private final AttitudeTrack forearm;
  private final AttitudeTrack hand;
  private final WristAlignment alignment;
  private final SkinSlip slip;
  private final double syncSdS;
  private final PosedAxis forearmAxis;
  private final PosedAxis handAxis;
  private final int[] handBefore;
  private final double[] handPart;

  RelativeAttitude(
      AttitudeTrack forearm,
      AttitudeTrack hand,
      WristAlignment alignment,
      SkinSlip slip,
      double syncSdS) {
    this.forearm = forearm;
    this.hand = hand;
    this.alignment = alignment;
    this.slip = slip;
    this.syncSdS = syncSdS;
    double sharedSd = alignment.hangSdRad();
    double addressS = slip.takeawayS() - ADDRESS_S;
    this.forearmAxis = PosedAxis.of(alignment.forearm(), sharedSd, forearm, addressS);
    this.handAxis = PosedAxis.of(alignment.hand(), sharedSd, hand, addressS);
    this.handBefore = new int[forearm.size()];
    this.handPart = new double[forearm.size()];
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
    return forearm.size();
  }

  double timeS(int k) {
    return forearm.timeS(k);
  }

  int parameters() {
    return headingAt() + ALL;
  }

  int headingAt() {
    return forearm.parameters() + hand.parameters();
  }

  double clockShiftS(double[] z) {
    return syncSdS * z[headingAt() + CLOCK];
  }

  Quaternion qForearmHand(int k, double[] z) {
    return both(k, z).qForearmHand(z[headingAt()]);
  }

  /** Hand and forearm at sample k, each in its own level frame, before a heading joins the two. */
  record Both(Quaternion qLevelForearm, Quaternion qLevelHand) {

    /** With the heading from the hand's level frame to the forearm's, rad. */
    Quaternion qForearmHand(double headingRad) {
      return qLevelForearm.conjugate().times(Quaternion.aboutZ(headingRad)).times(qLevelHand);
    }
  }

  Both both(int k, double[] z) {
    return new Both(forearmAttitude(k, z), handAttitude(k, z));
  }

  private Quaternion forearmAttitude(int k, double[] z) {
    return Quaternion.fromRotationVector(product(forearm.sensitivity(k), z, 0))
        .times(forearm.qLevelUnit(k))
        .times(alignment.qForearmUnitForearm())
        .times(Quaternion.fromRotationVector(mounting(k, z, FOREARM)));
  }

  private Quaternion handAttitude(int k, double[] z) {
    int j = handBefore[k];
    Quaternion before = hand.qLevelUnit(j);
    Vector3 on = before.conjugate().times(hand.qLevelUnit(j + 1)).rotationVector();
    Vector3 late = hand.rateUnitRadPerS(j).times(clockShiftS(z));
    return Quaternion.fromRotationVector(product(hand.sensitivity(j), z, forearm.parameters()))
        .times(before)
        .times(Quaternion.fromRotationVector(on.times(handPart[k]).plus(late)))
        .times(alignment.qHandUnitHand())
        .times(Quaternion.fromRotationVector(mounting(k, z, HAND)));
  }

  private static Vector3 product(double[][] rows, double[] z, int offset) {
    double x = 0;
    double y = 0;
    double up = 0;
    for (int i = 0; i < rows[0].length; i++) {
      x += rows[0][i] * z[offset + i];
      y += rows[1][i] * z[offset + i];
      up += rows[2][i] * z[offset + i];
    }
    return new Vector3(x, y, up);
  }

  private Vector3 mounting(int k, double[] z, int after) {
    int at = headingAt() + after;
    int hang = headingAt() + HANG;
    UnitMount mount = after == FOREARM ? alignment.forearm() : alignment.hand();
    PosedAxis axis = after == FOREARM ? forearmAxis : handAxis;
    Vector3 worn =
        new Vector3(
                mount.axialSdRad() * z[at],
                axis.ownSdRad() * z[at + 1] + alignment.hangSdRad() * z[hang],
                axis.ownSdRad() * z[at + 2] + alignment.hangSdRad() * z[hang + 1])
            .plus(axis.turn(z, after == FOREARM ? 0 : forearm.parameters()));
    double[] parts = slip.parts(timeS(k));
    int skin = headingAt() + (after == FOREARM ? FOREARM_SLIP : HAND_SLIP);
    double x = worn.x();
    double y = worn.y();
    double along = worn.z();
    for (int part = 0; part < parts.length; part++) {
      int j = skin + NEXT_SLIP * part;
      double slipped = mount.slipSdRad() * parts[part];
      x += z[j] * slipped;
      y += z[j + 1] * slipped;
      along += z[j + 2] * slipped;
    }
    return new Vector3(x, y, along);
  }

  /**
   * Derivative, by every parameter, of the small turn of the hand against the forearm along a
   * direction in hand axes.
   *
   * @param both the attitudes there with these parameters
   */
  double[] turnAlong(int k, double[] z, Both both, Vector3 directionHand) {
    double[] row = new double[parameters()];
    Vector3 inHandLevel = both.qLevelHand.rotate(directionHand);
    Vector3 inForearmLevel = Quaternion.aboutZ(z[headingAt()]).rotate(inHandLevel);
    put(row, 0, forearm.sensitivity(k), inForearmLevel.times(-1));
    put(row, forearm.parameters(), hand.sensitivity(handBefore[k]), inHandLevel);
    int at = headingAt();
    row[at] = inHandLevel.z();
    Vector3 inForearm = both.qLevelForearm.conjugate().rotate(inForearmLevel);
    mount(row, at + FOREARM, inForearm.times(-1), alignment.forearm(), forearmAxis);
    mount(row, at + HAND, directionHand, alignment.hand(), handAxis);
    forearmAxis.addTo(row, 0, inForearm.times(-1));
    handAxis.addTo(row, forearm.parameters(), directionHand);
    slips(row, at + FOREARM_SLIP, timeS(k), inForearm.times(-1), alignment.forearm());
    slips(row, at + HAND_SLIP, timeS(k), directionHand, alignment.hand());
    Vector3 hang = directionHand.minus(inForearm).times(alignment.hangSdRad());
    row[at + HANG] = hang.y();
    row[at + HANG + 1] = hang.z();
    Vector3 inHandUnit = alignment.qHandUnitHand().rotate(directionHand);
    row[at + CLOCK] = syncSdS * hand.rateUnitRadPerS(handBefore[k]).dot(inHandUnit);
    return row;
  }

  /** Angle of a segment's x axis above level, rad. */
  double elevationRad(int k, double[] z, boolean ofHand) {
    Vector3 x = (ofHand ? handAttitude(k, z) : forearmAttitude(k, z)).rotate(Vector3.X);
    return Math.asin(Math.max(-1, Math.min(1, x.z())));
  }

  /** Its derivative by every parameter. */
  double[] elevationRow(int k, double[] z, boolean ofHand) {
    double[] row = new double[parameters()];
    Quaternion qLevelSegment = ofHand ? handAttitude(k, z) : forearmAttitude(k, z);
    Vector3 x = qLevelSegment.rotate(Vector3.X);
    double level = Math.max(1e-6, Math.hypot(x.x(), x.y()));
    Vector3 along = x.cross(Vector3.Z).times(1 / level);
    Vector3 inSegment = qLevelSegment.conjugate().rotate(along);
    int at = headingAt();
    if (ofHand) {
      put(row, forearm.parameters(), hand.sensitivity(handBefore[k]), along);
      mount(row, at + HAND, inSegment, alignment.hand(), handAxis);
      handAxis.addTo(row, forearm.parameters(), inSegment);
      slips(row, at + HAND_SLIP, timeS(k), inSegment, alignment.hand());
    } else {
      put(row, 0, forearm.sensitivity(k), along);
      mount(row, at + FOREARM, inSegment, alignment.forearm(), forearmAxis);
      forearmAxis.addTo(row, 0, inSegment);
      slips(row, at + FOREARM_SLIP, timeS(k), inSegment, alignment.forearm());
    }
    row[at + HANG] = inSegment.y() * alignment.hangSdRad();
    row[at + HANG + 1] = inSegment.z() * alignment.hangSdRad();
    return row;
  }

  /** Rate of the hand against the forearm, hand axes, rad/s. */
  Vector3 rateHandRadPerS(int k, double[] z) {
    int j = handBefore[k];
    Vector3 handUnit =
        hand.rateUnitRadPerS(j)
            .times(1 - handPart[k])
            .plus(hand.rateUnitRadPerS(j + 1).times(handPart[k]));
    Quaternion qUnitHand =
        alignment.qHandUnitHand().times(Quaternion.fromRotationVector(mounting(k, z, HAND)));
    Quaternion qUnitForearm =
        alignment
            .qForearmUnitForearm()
            .times(Quaternion.fromRotationVector(mounting(k, z, FOREARM)));
    Vector3 forearmRate = qUnitForearm.conjugate().rotate(forearm.rateUnitRadPerS(k));
    Vector3 carried = qForearmHand(k, z).conjugate().rotate(forearmRate);
    return qUnitHand.conjugate().rotate(handUnit).minus(carried);
  }

  private static void mount(
      double[] row, int at, Vector3 direction, UnitMount mount, PosedAxis axis) {
    double across = axis.ownSdRad();
    add(
        row,
        at,
        new Vector3(
            mount.axialSdRad() * direction.x(), across * direction.y(), across * direction.z()));
  }

  private void slips(double[] row, int at, double timeS, Vector3 direction, UnitMount mount) {
    double[] parts = slip.parts(timeS);
    for (int part = 0; part < parts.length; part++) {
      add(row, at + NEXT_SLIP * part, direction.times(mount.slipSdRad() * parts[part]));
    }
  }

  private static void add(double[] row, int at, Vector3 values) {
    row[at] = values.x();
    row[at + 1] = values.y();
    row[at + 2] = values.z();
  }

  private static void put(double[] row, int offset, double[][] sensitivity, Vector3 along) {
    for (int i = 0; i < sensitivity[0].length; i++) {
      row[offset + i] =
          along.x() * sensitivity[0][i]
              + along.y() * sensitivity[1][i]
              + along.z() * sensitivity[2][i];
    }
  }
}
