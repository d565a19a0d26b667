package steadyturn.analysis.swing;

import java.util.List;
import steadyturn.ingest.reason.ReasonCode;

/** What may have gone with samples that never came. */
public enum LostReason implements ReasonCode {
  SWING;

  /** Where a swing may have been. */
  @Override
  public List<String> args() {
    return List.of("atS");
  }
}
