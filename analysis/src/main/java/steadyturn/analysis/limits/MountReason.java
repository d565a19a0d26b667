package steadyturn.analysis.limits;

import java.util.List;
import steadyturn.ingest.reason.ReasonCode;

/** How a unit is worn other than it says. */
@SuppressWarnings("ImmutableEnumChecker") // List.of
public enum MountReason implements ReasonCode {
  UPSIDE_DOWN("unit"),
  ON_ITS_SIDE("unit", "offDeg"),
  FACING_IN("unit"),
  /** Further round the body than the middle of the back. */
  ROUND_THE_HIP("unit", "offDeg"),
  /** It moved on the body between two swings. */
  SLIPPED("unit", "turnedDeg", "afterS", "beforeS"),
  TOWARDS_ELBOW("unit"),
  /** It turns away from the target where the rest of the body turns to it. */
  TURNS_AGAINST("unit"),
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
