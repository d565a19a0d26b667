package steadyturn.analysis.swing;

import java.util.List;
import steadyturn.ingest.reason.ReasonCode;

/** What became of a mark that no swing was found near. */
public enum MarkReason implements ReasonCode {
  /** It says what a swing was, but there is none. */
  FAR("word", "atS"),
  /** Words about no swing are about the lesson. */
  NOTE("note", "atS");

  private final List<String> args;

  MarkReason(String... args) {
    this.args = List.of(args);
  }

  @Override
  public List<String> args() {
    return args;
  }
}
