package steadyturn.fusion.wear.wrist;

import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.attitude.PeakRepair;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * The force a hand unit should feel by what the forearm unit feels: carried rigidly to the wrist,
 * turned into the hand, carried on to the hand unit. Unknowns, in their spreads: a small turn of
 * the hand at the start (3), the places of wrist in the forearm unit and of the hand unit in the
 * hand (6).
 *
 * @param qBefore attitude of the hand in the forearm at sample {@code from} of the hand
 * @param first sample from which the rate about the cut's axis is the chain's
 */
record WristForces(
    RateFromForce.Units units, PeakRepair.Cut cut, Quaternion qBefore, int from, int first) {

  static final int UNKNOWNS = 9;

  private static final double SPIN_S = 0.008;
  private static final double ANGLE_SD_RAD = Math.toRadians(3);
  private static final double PLACE_SD_M = 0.015;

  /** From the forearm unit to the wrist and from there to the hand unit, segment axes, m. */
  private static final Vector3 FOREARM_WRIST_M = new Vector3(0.05, 0, -0.025);

  private static final Vector3 WRIST_HAND_M = new Vector3(0.06, 0, 0.02);

  /** Force the hand unit should feel at samples from..to, unit axes, m/s^2. */
  double[][] predicted(double[] z, RateChain chain, int to) {
    double[][] out = new double[to - from + 1][3];
    Quaternion q =
        units
            .alignment()
            .qForearmUnitForearm()
            .times(qBefore)
            .times(units.alignment().qHandUnitHand().conjugate())
            .times(Quaternion.fromRotationVector(Vector3.of(z, 0).times(ANGLE_SD_RAD)));
    Vector3 toWrist =
        units
            .alignment()
            .qForearmUnitForearm()
            .rotate(FOREARM_WRIST_M.plus(Vector3.of(z, 3).times(PLACE_SD_M)));
    Vector3 toUnit =
        units
            .alignment()
            .qHandUnitHand()
            .rotate(WRIST_HAND_M.plus(Vector3.of(z, 6).times(PLACE_SD_M)));
    Vector3 before = forearmAt(units.hand().timeS(from), false);
    Vector3 beforeHand = rate(from, chain);
    for (int k = from; k <= to; k++) {
      double t = units.hand().timeS(k);
      Vector3 arm = forearmAt(t, false);
      Vector3 own = rate(k, chain);
      if (k > from) {
        double dt = t - units.hand().timeS(k - 1);
        q =
            Quaternion.fromRotationVector(before.plus(arm).times(-dt / 2))
                .times(q)
                .times(Quaternion.fromRotationVector(beforeHand.plus(own).times(dt / 2)));
      }
      Vector3 atWrist =
          forearmAt(t, true)
              .plus(forearmSpin(t).cross(toWrist))
              .plus(arm.cross(arm.cross(toWrist)));
      Vector3 felt =
          q.conjugate()
              .rotate(atWrist)
              .plus(handSpin(k, chain).cross(toUnit))
              .plus(own.cross(own.cross(toUnit)));
      for (int axis = 0; axis < 3; axis++) {
        out[k - from][axis] = felt.get(axis);
      }
      before = arm;
      beforeHand = own;
    }
    return out;
  }

  private Vector3 forearmAt(double timeS, boolean force) {
    return at(units.forearm(), timeS, force);
  }

  private static Vector3 at(GyroTrack track, double timeS, boolean force) {
    int j = Math.max(1, Math.min(track.size() - 1, track.indexAt(timeS)));
    double part = (timeS - track.timeS(j - 1)) / (track.timeS(j) - track.timeS(j - 1));
    Vector3 a = force ? track.forceUnitMps2(j - 1) : track.rateUnitRadPerS(j - 1);
    Vector3 b = force ? track.forceUnitMps2(j) : track.rateUnitRadPerS(j);
    return a.times(1 - part).plus(b.times(part));
  }

  private Vector3 forearmSpin(double timeS) {
    return forearmAt(timeS + SPIN_S / 2, false)
        .minus(forearmAt(timeS - SPIN_S / 2, false))
        .times(1 / SPIN_S);
  }

  private Vector3 rate(int k, RateChain chain) {
    Vector3 shown = units.hand().rateUnitRadPerS(k);
    return k < first ? shown : with(shown, chain.at(units.hand().timeS(k)));
  }

  private Vector3 with(Vector3 rate, double value) {
    return Vector3.each(axis -> axis == cut.axis() ? value : rate.get(axis));
  }

  /** Change of the hand's rate, over the same stretch to either side. */
  private Vector3 handSpin(int k, RateChain chain) {
    double reachS = Math.max(SPIN_S / 2, units.hand().timeS(k) - units.hand().timeS(k - 1));
    return handAt(units.hand().timeS(k) + reachS, chain)
        .minus(handAt(units.hand().timeS(k) - reachS, chain))
        .times(1 / (2 * reachS));
  }

  private Vector3 handAt(double timeS, RateChain chain) {
    Vector3 shown = at(units.hand(), timeS, false);
    return timeS <= units.hand().timeS(first - 1) ? shown : with(shown, chain.at(timeS));
  }
}
