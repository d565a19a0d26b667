package steadyturn.analysis.swing;

import java.util.List;
import steadyturn.ingest.reason.ReasonCode;

/** A mistake of the program itself. */
public enum FaultReason implements ReasonCode {
  SWING;

  /** Where the swing is, what was thrown, and the line it came from. */
  @Override
  public List<String> args() {
    return List.of("atS", "mistake", "place");
  }
}
