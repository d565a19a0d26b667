package steadyturn.ingest.recording.dataset;

import static java.util.stream.Collectors.toSet;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.sample.Offered;

/**
 * What lies under a path: a whole dataset, a player's folder, a lesson's folder, a motion folder,
 * or one motion table (which stands for the run it belongs to, with all its units).
 *
 * @param root the dataset's folder
 * @param sessions the lessons found, by player and label
 * @param notices what was passed over, one sentence each
 */
@Offered
public record Archive(Path root, List<Session> sessions, List<String> notices) {

  public Archive {
    sessions = List.copyOf(sessions);
    notices = List.copyOf(notices);
  }

  /** Lists the recordings under a path without reading their samples. */
  public static Archive open(Path given) {
    Path path = given.toAbsolutePath().normalize();
    if (!Files.exists(path)) {
      throw RecordingException.of(given, "does not exist. Check the path.");
    }
    List<String> notices = new ArrayList<>();
    Path root = Folders.root(path);
    Folders.Lists lists = new Folders.Lists();
    List<Path> asked = Files.isDirectory(path) ? lists.motionTables(path) : List.of(path);
    Map<String, List<Path>> tablesBySession = new TreeMap<>();
    for (Path table : asked) {
      sessionKey(table, notices)
          .ifPresent(
              key -> tablesBySession.computeIfAbsent(key, k -> new ArrayList<>()).add(table));
    }
    if (tablesBySession.isEmpty()) {
      throw nothingIn(given);
    }
    List<Found> found =
        List.copyOf(tablesBySession.values()).parallelStream()
            .map(tables -> session(root, tables, lists))
            .toList();
    found.forEach(f -> notices.addAll(f.notices()));
    return new Archive(root, found.stream().map(Found::lesson).toList(), notices);
  }

  /** A lesson, and what was said of its files: lessons are looked at side by side. */
  private record Found(Session lesson, List<String> notices) {}

  private static RecordingException nothingIn(Path given) {
    return RecordingException.of(
        given,
        "holds no recording. Give a dataset folder with"
            + " sub-<player>/ses-<lesson>/motion/..._motion.tsv in it, or import a table with a"
            + " column map first.");
  }

  private static Optional<String> sessionKey(Path table, List<String> notices) {
    Optional<MotionName> name = MotionName.ofTable(table);
    if (name.isEmpty()) {
      notices.add(
          table
              + ": left out, its name is not sub-<player>_ses-<lesson>_task-<task>_tracksys-<unit>"
              + "_motion.tsv.");
    }
    return name.map(n -> table.getParent() + "/" + n.label("sub") + "/" + n.label("ses"));
  }

  private static Found session(Path root, List<Path> asked, Folders.Lists lists) {
    List<String> notices = new ArrayList<>();
    Path folder = WholeFile.folderOf(asked.get(0));
    StartTimes starts = StartTimes.of(folder, root, lists, notices);
    MotionName first = nameOf(asked.get(0));
    Map<String, List<UnitFile>> unitsByRun = new TreeMap<>();
    for (Path table : lists.files(folder)) {
      MotionName.ofTable(table)
          .filter(n -> n.label("sub").equals(first.label("sub")))
          .filter(n -> n.label("ses").equals(first.label("ses")))
          .ifPresent(
              n ->
                  unitsByRun
                      .computeIfAbsent(n.runId(), k -> new ArrayList<>())
                      .add(new UnitFile(table, n.label("tracksys"), starts.of(table))));
    }
    List<SessionRun> all = new ArrayList<>();
    unitsByRun.forEach((id, units) -> all.add(run(id, root, first.label("sub"), units)));
    all.sort(
        Comparator.comparing((SessionRun r) -> r.startedAt().orElse(LocalDateTime.MAX))
            .thenComparing(
                r -> r.id().replaceAll("([0-9]+)", "00000000$1").replaceAll("0+([0-9]{9})", "$1")));
    Set<String> askedIds = asked.stream().map(t -> nameOf(t).runId()).collect(toSet());
    List<SessionRun> runs = all.stream().filter(r -> askedIds.contains(r.id())).toList();
    return new Found(new Session(first.label("sub"), first.label("ses"), all, runs), notices);
  }

  private static SessionRun run(String id, Path root, String player, List<UnitFile> units) {
    units.sort(
        Comparator.comparing((UnitFile u) -> !u.tracksys().equals("pelvis"))
            .thenComparing(UnitFile::fileName));
    return new SessionRun(id, root, player, units);
  }

  private static MotionName nameOf(Path table) {
    return MotionName.of(table)
        .orElseThrow(() -> new IllegalStateException(table + " is no BIDS name"));
  }
}
