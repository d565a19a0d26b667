package steadyturn.analysis.reading;

import java.util.List;
import steadyturn.ingest.reason.ReasonCode;

/** What is to be known of how a recording was read. */
@SuppressWarnings("ImmutableEnumChecker") // List.of
public enum ReadingReason implements ReasonCode {
  /** So many days after the recording: the unit may have changed in between. */
  CALIBRATED_LATER("count");

  private final List<String> args;

  ReadingReason(String... args) {
    this.args = List.of(args);
  }

  @Override
  public List<String> args() {
    return args;
  }
}
