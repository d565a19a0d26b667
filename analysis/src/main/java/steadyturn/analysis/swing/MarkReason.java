package steadyturn.analysis.swing;

import java.util.List;
import steadyturn.ingest.reason.ReasonCode;

/** What became of a mark that no swing was found near. */
public enum MarkReason implements ReasonCode {
  /** It says what a swing was, but there is none. */
  FAR("word"),
  /** Words about no swing are about the lesson. */
  NOTE("note");

  private final String says;

  MarkReason(String says) {
    this.says = says;
  }

  @Override
  public List<String> args() {
    return List.of(says, "atS");
  }
}
