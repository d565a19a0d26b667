package steadyturn.ingest.recording.dataset;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Optional;

/**
 * The motion table of one tracking system in one run.
 *
 * @param startedAt when its first sample was taken; empty when no scans file tells
 */
public record UnitFile(Path table, String tracksys, Optional<LocalDateTime> startedAt) {

  MotionName name() {
    return MotionName.parse(fileName())
        .orElseThrow(() -> new IllegalStateException(table + " is no BIDS name"));
  }

  public String fileName() {
    return String.valueOf(table.getFileName());
  }
}
