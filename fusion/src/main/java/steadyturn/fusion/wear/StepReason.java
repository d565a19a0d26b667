package steadyturn.fusion.wear;

import java.util.List;
import steadyturn.ingest.reason.ReasonCode;

/** Why a wear step is to be done again. */
@SuppressWarnings("ImmutableEnumChecker") // List.of
public enum StepReason implements ReasonCode {
  LOST("lostPct"),
  GAP("longestS"),
  SHORT("lengthS"),
  TABLE_TURNED("rateDegPerS"),
  STANCE_TURNED("rateDegPerS"),
  TILT_STEEP("slopeDeg"),
  TILT_NO_RULER,
  BOW_LITTLE,
  BOW_SIDEWAYS,
  COCKING_DID_NOT_RUN,
  COCKING_LITTLE,
  COCKING_IMPURE("purityPct"),
  NEUTRAL_WRIST_FAR("offDeg"),
  TURN_NOT_STILL,
  TURN_LITTLE("largestDeg", "otherDeg"),
  TURN_FAST("rateDegPerS"),
  TURN_NOT_BACK("offDeg");

  private final List<String> args;

  StepReason(String... args) {
    this.args = List.of(args);
  }

  @Override
  public List<String> args() {
    return args;
  }
}
