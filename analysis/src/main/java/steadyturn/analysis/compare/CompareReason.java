package steadyturn.analysis.compare;

import java.util.List;
import steadyturn.ingest.reason.ReasonCode;

/** What keeps a reader from believing more than the design of a comparison allows. */
public enum CompareReason implements ReasonCode {
  OTHER_LESSONS,
  IN_BLOCKS;

  /** The names of the two groups. */
  @Override
  public List<String> args() {
    return List.of("first", "second");
  }
}
