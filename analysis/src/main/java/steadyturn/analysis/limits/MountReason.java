package steadyturn.analysis.limits;

import java.util.List;
import steadyturn.ingest.reason.ReasonCode;

/** How a unit is worn other than it says. */
@SuppressWarnings("ImmutableEnumChecker") // List.of
public enum MountReason implements ReasonCode {
  UPSIDE_DOWN("unit"),
  ON_ITS_SIDE("unit", "offDeg"),
  FACING_IN("unit"),
  TOWARDS_ELBOW("unit"),
  EXCHANGED("unit", "other"),
  /** Two units that move as one, though a joint lies between their places. */
  SAME_PLACE("unit", "other");

  private final List<String> args;

  MountReason(String... args) {
    this.args = List.of(args);
  }

  @Override
  public List<String> args() {
    return args;
  }
}
