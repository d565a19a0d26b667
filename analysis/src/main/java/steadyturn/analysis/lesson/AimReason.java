package steadyturn.analysis.lesson;

import java.util.List;
import steadyturn.ingest.reason.ReasonCode;

/** What the aim step brought. */
@SuppressWarnings("ImmutableEnumChecker") // List.of
public enum AimReason implements ReasonCode {
  NOT_SEEN,
  /** How far the hips stood open to the target at address, and its 95 % range. */
  SEEN("openDeg", "lowDeg", "highDeg");

  private final List<String> args;

  AimReason(String... args) {
    this.args = List.of(args);
  }

  @Override
  public List<String> args() {
    return args;
  }
}
