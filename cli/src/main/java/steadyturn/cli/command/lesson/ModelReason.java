package steadyturn.cli.command.lesson;

import java.util.List;
import steadyturn.ingest.reason.ReasonCode;

/** How the model swing was chosen. */
@SuppressWarnings("ImmutableEnumChecker") // List.of
enum ModelReason implements ReasonCode {
  BEST("swing"),
  /** With the numbers of the swings that it cannot be told apart from. */
  ALIKE("swing", "others");

  private final List<String> args;

  ModelReason(String... args) {
    this.args = List.of(args);
  }

  @Override
  public List<String> args() {
    return args;
  }
}
