package steadyturn.ingest.archive;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import steadyturn.ingest.kept.KeptPlace;
import steadyturn.ingest.recording.dataset.Participants;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.disk.ArchiveLock;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.table.TableText;

/**
 * Gives a player another label, or joins two labels that are one person. Lessons of one label keep
 * theirs where the other player has none of it, else they get the next free number. What is to be
 * done is noted first, so that a run that was cut off is ended by the next one.
 */
public final class Relabelling {

  private static final String INTENT = ".steadyturn-relabelling";

  private final Path root;
  private final String from;
  private final String to;
  private final Map<String, String> lessons;

  private Relabelling(Path root, String from, String to, Map<String, String> lessons) {
    this.root = root;
    this.from = from;
    this.to = to;
    this.lessons = lessons;
  }

  /**
   * Gives a player a label that nobody has.
   *
   * @return the lessons, old label and new
   */
  public static Map<String, String> rename(Path archive, String from, String to) {
    return begun(
        archive,
        from,
        to,
        book -> {
          book.require(from);
          if (book.of(to).isPresent()) {
            throw RecordingException.of(
                book.root(),
                "has a player \"" + to + "\" already. Join the two by ./steadyturn players merge.");
          }
        });
  }

  /** Moves the lessons of one player to another; who goes must swing from the same side. */
  public static Map<String, String> merge(Path archive, String from, String into) {
    return begun(
        archive,
        from,
        into,
        book -> {
          PlayerEntry goes = book.require(from);
          PlayerEntry stays = book.require(into);
          if (goes.handed().isPresent()
              && stays.handed().isPresent()
              && !goes.handed().equals(stays.handed())) {
            throw RecordingException.of(
                book.root(),
                String.format(
                    Locale.ROOT,
                    "says that %s swings %s-handed and %s %s-handed, so they are not one person."
                        + " Correct the wrong line in participants.tsv first.",
                    from,
                    goes.handed().get().word(),
                    into,
                    stays.handed().get().word()));
          }
        });
  }

  /** What has to be so before anything is changed. */
  private interface Condition {
    void require(PlayerBook book);
  }

  private static Map<String, String> begun(
      Path archive, String from, String to, Condition condition) {
    Path root = archive.toAbsolutePath().normalize();
    if (!RunLabel.isLabel(to) || from.equals(to)) {
      throw RecordingException.of(
          root, "\"" + to + "\" is no new label. Use letters and digits only.");
    }
    if (ArchiveLock.isRecordedInto(root)) {
      throw RecordingException.of(root, "is being recorded into. End the recording first.");
    }
    return ArchiveLock.whileWriting(
        root,
        () -> {
          Optional<Relabelling> cut = noted(root);
          Relabelling work =
              cut.filter(w -> w.from.equals(from) && w.to.equals(to))
                  .orElseGet(
                      () -> {
                        PlayerBook book = PlayerBook.read(root, new ArrayList<>());
                        condition.require(book);
                        return note(book, from, to);
                      });
          work.all();
          return work.lessons;
        });
  }

  private static Relabelling note(PlayerBook book, String from, String to) {
    Map<String, String> lessons = lessonsOf(book, from, to);
    StringBuilder text = new StringBuilder(from + "\t" + to + "\n");
    lessons.forEach((old, fresh) -> text.append(old).append('\t').append(fresh).append('\n'));
    WholeFile.write(book.root().resolve(INTENT), text.toString());
    return new Relabelling(book.root(), from, to, lessons);
  }

  private static Map<String, String> lessonsOf(PlayerBook book, String from, String to) {
    Set<String> taken =
        book.of(to).map(PlayerEntry::lessons).orElse(List.of()).stream()
            .map(LessonEntry::lesson)
            .collect(Collectors.toCollection(HashSet::new));
    List<String> going = book.require(from).lessons().stream().map(LessonEntry::lesson).toList();
    Map<String, String> lessons = new LinkedHashMap<>();
    going.stream().filter(l -> !taken.contains(l)).forEach(l -> lessons.put(l, l));
    taken.addAll(going);
    for (String lesson : going) {
      lessons.computeIfAbsent(lesson, l -> free(taken));
    }
    return lessons;
  }

  /** The next free number, of two digits where they will do. */
  private static String free(Set<String> taken) {
    int number = 1;
    while (!taken.add(String.format(Locale.ROOT, "%02d", number))) {
      number++;
    }
    return String.format(Locale.ROOT, "%02d", number);
  }

  private static Optional<Relabelling> noted(Path root) {
    Path intent = root.resolve(INTENT);
    if (!Files.exists(intent)) {
      return Optional.empty();
    }
    List<String[]> lines =
        new String(ArchiveWalk.bytes(intent), StandardCharsets.UTF_8)
            .lines()
            .map(line -> line.split("\t", -1))
            .toList();
    Map<String, String> lessons = new LinkedHashMap<>();
    lines.stream().skip(1).forEach(line -> lessons.put(line[0], line[1]));
    return Optional.of(new Relabelling(root, lines.get(0)[0], lines.get(0)[1], lessons));
  }

  /** A relabelling that was cut off: from which label to which. */
  public static Optional<List<String>> unfinished(Path archive) {
    return noted(archive.toAbsolutePath().normalize()).map(w -> List.of(w.from, w.to));
  }

  /** First what files say, then what they are called, last the line among the players. */
  private void all() {
    PlayerNames old = new PlayerNames(from, "");
    Pattern id = old.ofId();
    for (Path file : ArchiveWalk.files(root)) {
      if (KeptPlace.isKept(file) && (old.isOn(file) || ArchiveWalk.holds(file, id))) {
        ArchiveWalk.erase(file); // reckoned again under the new label
      }
    }
    BareLabels bare = new BareLabels(from, to, lessons);
    for (Path file : ArchiveWalk.files(root)) {
      String name = String.valueOf(file.getFileName());
      boolean isText = name.matches(".*\\.(tsv|json|html|md|txt|sha256)|README");
      if (isText && !name.endsWith("_motion.tsv") && !name.equals(Participants.FILE)) {
        ArchiveWalk.text(file)
            .ifPresent(
                text -> {
                  String relabelled =
                      bare.moved(name, id.matcher(text).find() ? moved(text) : text);
                  if (!relabelled.equals(text)) {
                    WholeFile.write(file, relabelled);
                  }
                });
      }
    }
    for (Path file : ArchiveWalk.files(root)) {
      Path target = root.resolve(moved(root.relativize(file).toString()));
      if (!target.equals(file)) {
        if (Files.exists(target)) {
          throw RecordingException.of(target, "is there already. Take it away, and do it again.");
        }
        WholeFile.folder(target);
        WholeFile.move(file, target);
      }
    }
    ArchiveWalk.topmost(root, old::isOn).forEach(ArchiveWalk::erase); // folders that are empty now
    moveLine();
    ArchiveWalk.erase(root.resolve(INTENT));
  }

  /** A text or path with the new ids. */
  private String moved(String text) {
    Matcher lesson =
        Pattern.compile(new PlayerNames(from, "").ofId() + "([_/\\\\])ses-([0-9A-Za-z]+)")
            .matcher(text);
    String moved =
        lesson.replaceAll(
            m ->
                Matcher.quoteReplacement(
                    "sub-"
                        + to
                        + m.group(1)
                        + "ses-"
                        + lessons.getOrDefault(m.group(2), m.group(2))));
    return new PlayerNames(from, "").ofId().matcher(moved).replaceAll("sub-" + to);
  }

  private void moveLine() {
    Map<String, Map<String, String>> rows = Participants.rows(root, new ArrayList<>());
    Map<String, String> goes = rows.get(from);
    if (goes == null) {
      return;
    }
    Path file = root.resolve(Participants.FILE);
    TableText table = TableText.read(file);
    if (rows.containsKey(to)) {
      Map<String, String> filled = new LinkedHashMap<>(goes);
      filled.replace("participant_id", "sub-" + to);
      table.fill(filled);
      table.dropWhere(cell -> cell.equals("sub-" + from));
    } else {
      table.replaceAll(cell -> cell.equals("sub-" + from) ? "sub-" + to : cell);
    }
    WholeFile.write(file, table.text());
  }
}
