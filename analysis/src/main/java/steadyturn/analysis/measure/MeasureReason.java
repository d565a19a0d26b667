package steadyturn.analysis.measure;

import java.util.List;
import steadyturn.ingest.reason.ReasonCode;

/** Why a measure is withheld, or only estimated. */
@SuppressWarnings("ImmutableEnumChecker") // List.of
public enum MeasureReason implements ReasonCode {
  NO_POSITION("position"),
  NO_TOP_OR_IMPACT,
  NO_TAKEAWAY_OR_IMPACT,
  NO_TAKEAWAY_TOP_OR_IMPACT,
  NO_PLATEAU,
  NEEDS_PELVIS,
  CLOCK_LOOSE,
  NEEDS_FOREARM,
  NEEDS_HAND,
  NEEDS_FOREARM_BESIDE_HAND,
  NEEDS_FOREARM_AND_HAND,
  UNIT_REFUSED("unit"),
  FEW_PELVIS_SAMPLES,
  HAND_NOT_THROUGH,
  SHAFT_NOT_THROUGH,
  OUTSIDE_THE_RESTS,
  LITTLE_TURN_FOR_RATIO("leastDeg"),
  LITTLE_TURN_FOR_CENTRE("leastDeg"),
  LITTLE_COCK("leastDeg"),
  HARDLY_MOVED,
  KEEPS_PAST_IMPACT,
  GYRO_CUT,
  AT_LEAST,
  ADDRESS_NOT_STILL,
  ADDRESS_UNEXPLAINED,
  ADDRESS_SHORT,
  FINISH_NOT_HELD,
  FINISH_NOT_SEEN,
  PELVIS_GAP,
  GAP_AT_ADDRESS,
  GAP_AT,
  GAP_BEFORE,
  SWING_FAILED,
  TOO_UNSURE,
  WRIST_GAP,
  NO_WRIST_BENDS_SO,
  PEAK_GAP,
  WRIST_FROM_SHAFT;

  private final List<String> args;

  MeasureReason(String... args) {
    this.args = List.of(args);
  }

  @Override
  public List<String> args() {
    return args;
  }
}
