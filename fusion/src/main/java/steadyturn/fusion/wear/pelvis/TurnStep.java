package steadyturn.fusion.wear.pelvis;

import java.util.Optional;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.rest.Rest;
import steadyturn.fusion.rest.RestGate;
import steadyturn.fusion.rest.RestSettings;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.StepReason;
import steadyturn.fusion.wear.StepResult;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Gaps;
import steadyturn.ingest.sample.UnitStream;

/**
 * The slow turn of the pelvis on the spot, judged before it is estimated: by its turn each way and
 * by the stillness on both sides, without which the unit's way cannot be told.
 *
 * @param samples the unit around the step
 * @param before rest before the turn
 * @param after rest after it
 * @param result how it went; the figure is the smaller of the largest turns to either side
 */
public record TurnStep(
    UnitStream samples, Optional<Rest> before, Optional<Rest> after, StepResult result) {

  private static final String STEP = "turn-on-spot";

  /** Rest kept on both sides, s. */
  private static final double MARGIN_S = 1.0;

  private static final double REST_S = 0.35;

  /** A slow turn may be bridged for so long, and is charged for it (our choice), s. */
  private static final double LONGEST_UNSEEN_S = 0.15;

  /** A turn to one side only says half: each way at least this (our choice). */
  private static final double LEAST_EACH_WAY_DEG = 15;

  /** Faster than this the feet and the skin come along (our assumption). */
  private static final double FASTEST_DEG_PER_S = 120;

  /** Feet that stay where they are bring the hips back to within this (our assumption). */
  private static final double BACK_WITHIN_DEG = 12;

  /**
   * Judges the step.
   *
   * @param unit the pelvis stream
   * @param biasRadPerS its gyro bias, zero where it is not known
   */
  public static TurnStep of(UnitStream unit, Vector3 biasRadPerS, double fromS, double toS) {
    UnitStream samples = unit.between(fromS - MARGIN_S, toS + MARGIN_S);
    RestGate gate = new RestGate(RestSettings.address().atLeast(REST_S));
    Optional<Rest> before = Optional.empty();
    Optional<Rest> after = Optional.empty();
    if (samples.size() > 2) {
      before = gate.before(samples, biasRadPerS, samples.timeS(0), fromS + 0.6);
      after = gate.after(samples, biasRadPerS, toS - 0.4, samples.timeS(samples.size() - 1));
    }
    return new TurnStep(samples, before, after, judge(samples, biasRadPerS, before, after));
  }

  private static StepResult judge(
      UnitStream samples, Vector3 bias, Optional<Rest> before, Optional<Rest> after) {
    if (before.isEmpty() || after.isEmpty() || before.get().endS() >= after.get().startS()) {
      return again(0, Reason.of(StepReason.TURN_NOT_STILL));
    }
    double fromS = before.get().endS();
    double toS = after.get().startS();
    double unseenS = Gaps.of(samples, Gaps.Need.BOTH).longestS(fromS, toS);
    if (unseenS > LONGEST_UNSEEN_S) {
      return again(0, Reason.of(StepReason.GAP, unseenS));
    }
    Way way = Way.of(samples, bias, fromS, toS);
    double eachWayDeg = Math.toDegrees(Math.min(way.leftRad, way.rightRad));
    double largestDeg = Math.toDegrees(Math.max(way.leftRad, way.rightRad));
    if (eachWayDeg < LEAST_EACH_WAY_DEG || Math.toRadians(largestDeg) < TurnOnSpot.LEAST_TURN_RAD) {
      return again(eachWayDeg, Reason.of(StepReason.TURN_LITTLE, largestDeg, eachWayDeg));
    }
    if (way.fastestRadPerS > Math.toRadians(FASTEST_DEG_PER_S)) {
      return again(eachWayDeg, Reason.of(StepReason.TURN_FAST, Math.toDegrees(way.fastestRadPerS)));
    }
    if (Math.abs(way.endRad) > Math.toRadians(BACK_WITHIN_DEG)) {
      return again(
          eachWayDeg, Reason.of(StepReason.TURN_NOT_BACK, Math.toDegrees(Math.abs(way.endRad))));
    }
    return StepResult.good(STEP, eachWayDeg, LEAST_EACH_WAY_DEG, "deg");
  }

  private static StepResult again(double eachWayDeg, Reason why) {
    return StepResult.again(STEP, eachWayDeg, LEAST_EACH_WAY_DEG, "deg", why);
  }

  /** The turning between the rests, about the vertical. */
  private record Way(double leftRad, double rightRad, double endRad, double fastestRadPerS) {

    static Way of(UnitStream samples, Vector3 bias, double fromS, double toS) {
      GyroTrack raw = GyroTrack.of(samples, bias);
      int from = raw.indexAt(fromS);
      GyroTrack level = raw.levelled(0, Math.max(1, from));
      double left = 0;
      double right = 0;
      double end = 0;
      double fastest = 0;
      for (int k = from; k < Math.min(raw.indexAt(toS), raw.size()); k++) {
        end = level.qTrackUnit(k).times(level.qTrackUnit(from).conjugate()).twistAboutZRad();
        left = Math.max(left, end);
        right = Math.max(right, -end);
        fastest = Math.max(fastest, level.rateUnitRadPerS(k).norm());
      }
      return new Way(left, right, end, fastest);
    }
  }
}
