package steadyturn.ingest.archive;

import java.text.Normalizer;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import steadyturn.ingest.sample.Handedness;

/**
 * A player as the archive knows them.
 *
 * @param label letters and digits, after {@code sub-} in names
 * @param shownName as people say it; the label where none was given
 * @param handed which side they swing from, where told
 * @param consent to be recorded, where it was noted
 * @param lessons by label
 */
public record PlayerEntry(
    String label,
    String shownName,
    Optional<Handedness> handed,
    Optional<Consent> consent,
    List<LessonEntry> lessons) {

  public PlayerEntry {
    lessons = List.copyOf(lessons);
  }

  /** The day of the latest lesson, where it is told. */
  public Optional<LocalDate> lastDay() {
    return lessons.stream().flatMap(l -> l.day().stream()).max(LocalDate::compareTo);
  }

  /** The size of all motion tables. */
  public long bytes() {
    return lessons.stream().mapToLong(LessonEntry::bytes).sum();
  }

  /** Whether label or name hold a text; capitals and accents do not matter. */
  public boolean matches(String text) {
    return plain(label).contains(plain(text)) || plain(shownName).contains(plain(text));
  }

  private static String plain(String text) {
    return Normalizer.normalize(text.strip(), Normalizer.Form.NFD)
        .replaceAll("\\p{M}+", "")
        .toLowerCase(Locale.ROOT);
  }
}
