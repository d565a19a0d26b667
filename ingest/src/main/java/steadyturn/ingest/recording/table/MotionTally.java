package steadyturn.ingest.recording.table;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Counts what was left out of a motion table while it was read, and tells it in sentences. */
public final class MotionTally {

  private final Path file;
  private long missing;
  private long firstMissingLine;
  private long repeated;
  private long firstRepeatedLine;
  private long withoutTime;
  private long cutLine;

  MotionTally(Path file) {
    this.file = file;
  }

  void missing(long line) {
    firstMissingLine = missing == 0 ? line : firstMissingLine;
    missing++;
  }

  void repeated(long line) {
    firstRepeatedLine = repeated == 0 ? line : firstRepeatedLine;
    repeated++;
  }

  void withoutTime() {
    withoutTime++;
  }

  void cut(long line) {
    cutLine = line;
  }

  public List<String> notices() {
    List<String> notices = new ArrayList<>();
    String values = missing == 1 ? " lost value" : " lost values";
    tell(
        notices,
        missing,
        firstMissingLine,
        "the first of " + missing + values + " (n/a, NaN or an empty cell).");
    tell(notices, withoutTime, 0, withoutTime + " samples without a time left out.");
    tell(
        notices,
        repeated,
        firstRepeatedLine,
        ("the first of " + repeated)
            + " samples that repeat the time of the one before; they were left out.");
    tell(notices, cutLine, cutLine, "the last line is cut short; it was left out.");
    return notices;
  }

  private void tell(List<String> notices, long count, long line, String what) {
    if (count > 0) {
      notices.add(RecordingException.place(file, line, "") + ": " + what);
    }
  }
}
