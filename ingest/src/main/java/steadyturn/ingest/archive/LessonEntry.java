package steadyturn.ingest.archive;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A lesson in the archive.
 *
 * @param player the player's label
 * @param lesson its own label; empty where the archive has no lessons' folders
 * @param day when it was recorded, where that is told
 * @param runs how many recordings it has
 * @param bytes the size of its motion tables
 */
public record LessonEntry(
    String player, String lesson, Optional<LocalDate> day, int runs, long bytes) {

  /** {@code sub-mika_ses-01}. */
  public String id() {
    return "sub-" + player + (lesson.isEmpty() ? "" : "_ses-" + lesson);
  }
}
