package steadyturn.fusion.wear.wrist;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.StepReason;
import steadyturn.fusion.wear.StepResult;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.UnitStream;

/**
 * A movement of pure cocking, up and down with the wrist alone: its axis in the hand unit is the
 * hand's z. What the forearm moves along is taken off. A person slips into flexion by about a tenth
 * (our assumption), so the axis is weighed against the drawing, not put in its place.
 *
 * @param alignment with the hand's turn about its long axis corrected
 * @param purityPct share of the relative movement that was about one axis
 */
public record CockingStep(WristAlignment alignment, double purityPct, StepResult result) {

  private static final String STEP = "cocking";
  private static final double LEAST_PURITY_PCT = 85;
  private static final double AXIS_SD_RAD = Math.toRadians(5);
  private static final double LEAST_TURN_RAD_PER_S = Math.toRadians(10);

  /** Reads the movement. Biases are those of the two units at rest. */
  public static CockingStep of(
      WristAlignment before,
      UnitStream forearm,
      Vector3 forearmBias,
      UnitStream hand,
      Vector3 handBias,
      double fromS,
      double toS) {
    UnitStream forearmStretch = forearm.between(fromS, toS);
    UnitStream handStretch = hand.between(fromS, toS);
    if (forearmStretch.size() < 20 || handStretch.size() < 20) {
      return again(before, 0, Reason.of(StepReason.COCKING_DID_NOT_RUN));
    }
    GyroTrack forearmTrack = GyroTrack.of(forearmStretch, forearmBias);
    GyroTrack handTrack = GyroTrack.of(handStretch, handBias);
    double[][] moment = moment(before, forearmTrack, handTrack);
    EigenDecomposition parts = new EigenDecomposition(new Array2DRowRealMatrix(moment));
    double[] sizes = parts.getRealEigenvalues();
    double whole = sizes[0] + sizes[1] + sizes[2];
    double purity = 100 * sizes[0] / whole;
    double rms = Math.sqrt(whole / handTrack.size());
    if (rms < LEAST_TURN_RAD_PER_S) {
      return again(before, purity, Reason.of(StepReason.COCKING_LITTLE));
    }
    if (purity < LEAST_PURITY_PCT) {
      return again(before, purity, Reason.of(StepReason.COCKING_IMPURE, purity));
    }
    double[] axis = parts.getEigenvector(0).toArray();
    return new CockingStep(
        corrected(before, new Vector3(axis[0], axis[1], axis[2])),
        purity,
        StepResult.good(STEP, purity, LEAST_PURITY_PCT, "%"));
  }

  private static CockingStep again(WristAlignment before, double purityPct, Reason why) {
    StepResult result = StepResult.again(STEP, purityPct, LEAST_PURITY_PCT, "%", why);
    return new CockingStep(before, purityPct, result);
  }

  /** Second moment of the hand's rate against the forearm's, in hand axes as known so far. */
  private static double[][] moment(WristAlignment before, GyroTrack forearm, GyroTrack hand) {
    double[][] moment = new double[3][3];
    int j = 0;
    for (int k = 0; k < hand.size(); k++) {
      while (j < forearm.size() - 1 && forearm.timeS(j + 1) <= hand.timeS(k)) {
        j++;
      }
      Vector3 along = before.qForearmUnitForearm().conjugate().rotate(forearm.rateUnitRadPerS(j));
      Vector3 rate =
          before.qHandUnitHand().conjugate().rotate(hand.rateUnitRadPerS(k)).minus(along);
      for (int a = 0; a < 3; a++) {
        for (int b = 0; b < 3; b++) {
          moment[a][b] += rate.get(a) * rate.get(b);
        }
      }
    }
    return moment;
  }

  /** Turns the hand about its x so that its z comes nearer to the axis, each by its certainty. */
  private static WristAlignment corrected(WristAlignment before, Vector3 axisHand) {
    double sign = axisHand.z() < 0 ? -1 : 1;
    double off = Math.atan2(-sign * axisHand.y(), sign * axisHand.z());
    double known = before.hand().axialSdRad() * before.hand().axialSdRad();
    double seen = AXIS_SD_RAD * AXIS_SD_RAD;
    double turn = off * known / (known + seen);
    return new WristAlignment(
        before.forearm(),
        before.hand().turned(turn, Math.sqrt(known * seen / (known + seen))),
        before.hangSdRad(),
        WristAlignment.Source.COCKING);
  }
}
