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
    if (missing > 0) {
      notices.add(
          RecordingException.place(file, firstMissingLine, "")
              + ": the first of "
              + missing
              + (missing == 1 ? " lost value" : " lost values")
              + " (n/a, NaN or an empty cell).");
    }
    if (withoutTime > 0) {
      notices.add(
          RecordingException.place(file, 0, "")
              + ": "
              + withoutTime
              + " samples without a time left out.");
    }
    if (repeated > 0) {
      notices.add(
          RecordingException.place(file, firstRepeatedLine, "")
              + ": the first of "
              + repeated
              + " samples that repeat the time of the one before; they were left out.");
    }
    if (cutLine > 0) {
      notices.add(
          RecordingException.place(file, cutLine, "")
              + ": the last line is cut short; it was left out.");
    }
    return notices;
  }
}
