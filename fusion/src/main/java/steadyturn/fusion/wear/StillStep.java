package steadyturn.fusion.wear;

import steadyturn.fusion.rest.RestGate;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Gaps;
import steadyturn.ingest.sample.UnitStream;

/**
 * A step in which a unit is to be still: on the table, or on a person standing quietly.
 *
 * @param meanRateRadPerS mean rate, unit axes: the bias, but for sway
 * @param meanForceMps2 mean specific force, unit axes: up
 */
public record StillStep(Vector3 meanRateRadPerS, Vector3 meanForceMps2, StepResult result) {

  private static final double TABLE_LIMIT_DEG_PER_S = 0.3;
  private static final double STANCE_LIMIT_DEG_PER_S = 3;

  /** A mean over half of a step is as good as one over all of it (our choice). */
  private static final double LOST_PART = 0.5;

  /** Rest on the table: the rate about its mean keeps under 0.3 deg/s RMS. */
  public static StillStep table(UnitStream unit, double fromS, double toS) {
    return of(unit, fromS, toS, "table-rest", TABLE_LIMIT_DEG_PER_S, StepReason.TABLE_TURNED);
  }

  /** Standing quietly: the rate about its mean keeps under 3 deg/s RMS. */
  public static StillStep stance(UnitStream unit, double fromS, double toS, String step) {
    return of(unit, fromS, toS, step, STANCE_LIMIT_DEG_PER_S, StepReason.STANCE_TURNED);
  }

  /** Less says nothing (our choice), s. */
  private static final double SHORTEST_S = 0.4;

  private static StillStep of(
      UnitStream unit, double fromS, double toS, String step, double limit, StepReason why) {
    Vector3 rate = RestGate.meanRateRadPerS(unit, fromS, toS);
    Vector3 force = RestGate.meanAccelMps2(unit, fromS, toS);
    double rms = Math.toDegrees(RestGate.rateRmsRadPerS(unit, rate, fromS, toS));
    double lost = Gaps.of(unit.between(fromS, toS), Gaps.Need.BOTH).lostPart(fromS, toS);
    if (!(toS - fromS >= SHORTEST_S)) {
      Reason tooShort = Reason.of(StepReason.SHORT, toS - fromS);
      return new StillStep(
          rate, force, StepResult.again(step, toS - fromS, SHORTEST_S, "s", tooShort));
    }
    if (!(lost <= LOST_PART)) {
      return new StillStep(
          rate,
          force,
          StepResult.again(step, lost, LOST_PART, "1", Reason.of(StepReason.LOST, 100 * lost)));
    }
    StepResult result =
        rms < limit
            ? StepResult.good(step, rms, limit, "deg/s")
            : StepResult.again(step, rms, limit, "deg/s", Reason.of(why, rms));
    return new StillStep(rate, force, result);
  }
}
