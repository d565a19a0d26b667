package steadyturn.analysis.wrist;

import steadyturn.analysis.swing.EventTime;
import steadyturn.fusion.wear.wrist.TwoAxisJoint;

/**
 * How well the cock is known at a moment at which a bone or the shaft is level. What puts that
 * moment wrong, a tilted or slipped unit, puts the angle of the wrist wrong, too: while the wrist
 * moves, the two errors add or take each other away.
 */
final class CockAtLevel {

  // errors that seem to cancel wholly are not believed: our choice
  private static final double LEAST_PART = 0.1;

  private CockAtLevel() {}

  /**
   * Spread of the cock at an event, deg.
   *
   * @param cockRow derivative of the cock by all parameters
   * @param sdDeg its spread at a known moment
   * @param rateDegPerS how fast it changes
   * @param ofHand whether the hand (or the shaft in its place) is level there, else the forearm
   */
  static double sdDeg(
      TwoAxisJoint joint,
      int k,
      EventTime at,
      double[] cockRow,
      double sdDeg,
      double rateDegPerS,
      boolean ofHand) {
    int before = Math.max(0, k - 1);
    int after = Math.min(joint.size() - 1, k + 1);
    double slope =
        (joint.elevationRad(after, ofHand) - joint.elevationRad(before, ofHand))
            / (joint.timeS(after) - joint.timeS(before));
    double[] elevationRow = joint.elevationRow(k, ofHand);
    // the moment is stated no worse than it is: no more of it can be shared
    double shared = Math.min(1, at.sdS() * Math.abs(slope) / joint.sdRad(elevationRow));
    double together = Math.toDegrees(joint.covarianceRad2(cockRow, elevationRow)) * shared;
    double moving = rateDegPerS * at.sdS();
    double variance = sdDeg * sdDeg + moving * moving - 2 * rateDegPerS * together / slope;
    double least = sdDeg * sdDeg + moving * moving;
    return Math.sqrt(Math.max(LEAST_PART * least, Double.isFinite(variance) ? variance : least));
  }
}
