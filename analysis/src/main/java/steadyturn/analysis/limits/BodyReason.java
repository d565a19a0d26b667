package steadyturn.analysis.limits;

import java.util.List;
import steadyturn.ingest.reason.ReasonCode;

/** What is said of the player and no player is. */
@SuppressWarnings("ImmutableEnumChecker") // List.of
public enum BodyReason implements ReasonCode {
  /** The size, its figure as given, and the least and the most there is. */
  SIZE("size", "givenMm", "leastMm", "mostMm"),
  SIZES_EXCHANGED("widthMm", "depthMm"),
  SIDE("handed"),
  /** A swing of the other side, which is not measured. */
  OTHER_SIDE("atS");

  private final List<String> args;

  BodyReason(String... args) {
    this.args = List.of(args);
  }

  @Override
  public List<String> args() {
    return args;
  }
}
