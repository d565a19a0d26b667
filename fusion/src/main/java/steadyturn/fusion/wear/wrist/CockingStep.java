package steadyturn.fusion.wear.wrist;

import java.util.ArrayList;
import java.util.List;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.PrincipalAxis;
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
    PrincipalAxis found =
        PrincipalAxis.of(
            rates(
                before,
                GyroTrack.of(forearmStretch, forearmBias),
                GyroTrack.of(handStretch, handBias)));
    double purity = found.purityPct();
    if (found.rmsRadPerS() < LEAST_TURN_RAD_PER_S) {
      return again(before, purity, Reason.of(StepReason.COCKING_LITTLE));
    }
    if (purity < LEAST_PURITY_PCT) {
      return again(before, purity, Reason.of(StepReason.COCKING_IMPURE, purity));
    }
    StepResult good = StepResult.good(STEP, purity, LEAST_PURITY_PCT, "%");
    return new CockingStep(corrected(before, found.axis()), purity, good);
  }

  private static CockingStep again(WristAlignment before, double purityPct, Reason why) {
    StepResult result = StepResult.again(STEP, purityPct, LEAST_PURITY_PCT, "%", why);
    return new CockingStep(before, purityPct, result);
  }

  /** The hand's rates against the forearm's, in hand axes as known so far. */
  private static List<Vector3> rates(WristAlignment before, GyroTrack forearm, GyroTrack hand) {
    List<Vector3> rates = new ArrayList<>();
    int j = 0;
    for (int k = 0; k < hand.size(); k++) {
      while (j < forearm.size() - 1 && forearm.timeS(j + 1) <= hand.timeS(k)) {
        j++;
      }
      Vector3 along = before.qForearmUnitForearm().conjugate().rotate(forearm.rateUnitRadPerS(j));
      rates.add(before.qHandUnitHand().conjugate().rotate(hand.rateUnitRadPerS(k)).minus(along));
    }
    return rates;
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
