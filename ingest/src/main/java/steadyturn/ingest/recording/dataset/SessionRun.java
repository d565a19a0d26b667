package steadyturn.ingest.recording.dataset;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/**
 * Units that ran together, as files: the same name but for the tracking system.
 *
 * @param id {@code sub-mika_ses-01_task-swing_run-02}
 * @param root the dataset's folder
 * @param player label of the player
 * @param units their motion tables, the pelvis first
 */
public record SessionRun(String id, Path root, String player, List<UnitFile> units) {

  public SessionRun {
    units = List.copyOf(units);
    if (units.isEmpty()) {
      throw new IllegalArgumentException(id + " has no motion table");
    }
  }

  /** When its first unit began, where a scans file tells. */
  public Optional<LocalDateTime> startedAt() {
    return units.stream().flatMap(u -> u.startedAt().stream()).min(LocalDateTime::compareTo);
  }
}
