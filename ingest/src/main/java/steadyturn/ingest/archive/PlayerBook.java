package steadyturn.ingest.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.Participants;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.recording.dataset.UnitFile;
import steadyturn.ingest.recording.disk.Leftovers;
import steadyturn.ingest.recording.table.RecordingException;

/**
 * The players of an archive, by label: those with a line in {@code participants.tsv} and those with
 * a folder.
 */
public record PlayerBook(Path root, List<PlayerEntry> players) {

  /** Columns of {@code participants.tsv} that tell of the person. */
  static final String SHOWN_NAME = "shown_name";

  static final String CONSENT_DATE = "consent_date";
  static final String CONSENT_BY = "consent_by";

  public PlayerBook {
    players = List.copyOf(players);
  }

  /**
   * Lists the players without reading samples.
   *
   * @param archive the archive's folder
   * @param notices what was passed over, one sentence each
   */
  public static PlayerBook read(Path archive, List<String> notices) {
    Path root = archive.toAbsolutePath().normalize();
    if (!Files.isDirectory(root)) {
      throw RecordingException.of(archive, "is no folder. Name the folder of an archive.");
    }
    Map<String, List<LessonEntry>> lessons = new TreeMap<>();
    for (Path folder : Leftovers.like(root, "sub-")) {
      lessons.put(String.valueOf(folder.getFileName()).substring("sub-".length()), List.of());
    }
    if (!lessons.isEmpty()) {
      lessons.replaceAll((label, none) -> lessonsOf(root.resolve("sub-" + label), notices));
    }
    Map<String, Map<String, String>> rows = Participants.rows(root, notices);
    rows.keySet().forEach(label -> lessons.putIfAbsent(label, List.of()));
    List<PlayerEntry> players = new ArrayList<>();
    lessons.forEach(
        (label, its) -> players.add(entry(label, rows.getOrDefault(label, Map.of()), its)));
    return new PlayerBook(root, players);
  }

  private static List<LessonEntry> lessonsOf(Path folder, List<String> notices) {
    try {
      Archive archive = Archive.open(folder);
      notices.addAll(archive.notices());
      return archive.sessions().stream().map(PlayerBook::entry).toList();
    } catch (RecordingException none) {
      return List.of(); // a folder without a recording
    }
  }

  private static LessonEntry entry(Session session) {
    long bytes = 0;
    for (SessionRun run : session.runs()) {
      for (UnitFile unit : run.units()) {
        bytes += sizeOf(unit.table());
      }
    }
    return new LessonEntry(
        session.player(),
        session.lesson(),
        session.runs().stream()
            .flatMap(run -> run.startedAt().stream())
            .min(LocalDateTime::compareTo)
            .map(LocalDateTime::toLocalDate),
        session.runs().size(),
        bytes);
  }

  private static long sizeOf(Path file) {
    try {
      return Files.size(file);
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }

  private static PlayerEntry entry(
      String label, Map<String, String> cells, List<LessonEntry> lessons) {
    String name = cells.getOrDefault(SHOWN_NAME, "");
    return new PlayerEntry(
        label,
        name.isEmpty() ? label : name,
        Participants.side(cells.getOrDefault("handedness", "")),
        consent(cells),
        lessons);
  }

  private static Optional<Consent> consent(Map<String, String> cells) {
    try {
      LocalDate day = LocalDate.parse(cells.getOrDefault(CONSENT_DATE, ""));
      return Optional.of(new Consent(day, cells.getOrDefault(CONSENT_BY, "")));
    } catch (DateTimeException noDay) {
      return Optional.empty();
    }
  }

  /** The player of a label. */
  public Optional<PlayerEntry> of(String label) {
    return players.stream().filter(player -> player.label().equals(label)).findFirst();
  }

  /** The player of a label, or a refusal that names the nearest one. */
  public PlayerEntry require(String label) {
    return of(label).orElseThrow(() -> RecordingException.of(root, unknown(label)));
  }

  private String unknown(String label) {
    List<String> like =
        players.stream().filter(p -> p.matches(label)).map(PlayerEntry::label).toList();
    String all = players.isEmpty() ? "It has no player." : "./steadyturn players lists them.";
    return "knows no player \""
        + label
        + "\". "
        + (like.isEmpty() ? all : "Is it " + String.join(", ", like) + "?");
  }

  /** What is noted of a player's consent; the lessons are not looked at. */
  public static Optional<Consent> consentOf(Path root, String label) {
    return consent(Participants.rows(root, new ArrayList<>()).getOrDefault(label, Map.of()));
  }

  /** Writes what people call a player. */
  public static void showAs(Path root, String label, String shownName) {
    Participants.put(root, label, Map.of(SHOWN_NAME, shownName));
  }

  /** Notes that a player agreed. */
  public static void agreed(Path root, String label, Consent consent) {
    Map<String, String> cells = new LinkedHashMap<>();
    cells.put(CONSENT_DATE, consent.day().toString());
    cells.put(CONSENT_BY, consent.by());
    Participants.put(root, label, cells);
  }
}
