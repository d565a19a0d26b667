package steadyturn.ingest.kept;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.recording.dataset.UnitFile;
import steadyturn.ingest.recording.disk.Leftovers;
import steadyturn.ingest.recording.disk.WholeFile;

/**
 * The files that speak for a lesson: its motion tables, and every sidecar, events and scans file
 * from their folder up to the archive's (the inheritance principle of BIDS). The table of players
 * is not among them, as a line of another player changes nothing.
 */
public final class LessonFiles {

  private static final List<String> SPEAKING =
      List.of("motion.json", "channels.tsv", "events.tsv", "scans.tsv");

  /** Folders that many lessons share are listed once. */
  private final Map<Path, List<Path>> shared = new HashMap<>();

  /** The files of a lesson by name. */
  public List<Path> of(Session lesson) {
    TreeSet<Path> files = new TreeSet<>();
    TreeSet<Path> folders = new TreeSet<>();
    for (SessionRun run : lesson.allRuns()) {
      for (UnitFile unit : run.units()) {
        files.add(unit.table());
        folders.add(WholeFile.folderOf(unit.table()));
      }
    }
    Path root = root(lesson);
    for (Path own : folders) {
      files.addAll(speaking(own));
      for (Path at = own.getParent();
          at != null && at.startsWith(root) && !own.equals(root);
          at = at.getParent()) {
        files.addAll(shared.computeIfAbsent(at, LessonFiles::speaking));
      }
    }
    return new ArrayList<>(files);
  }

  /** The archive's folder. */
  public static Path root(Session lesson) {
    return lesson.allRuns().get(0).root();
  }

  private static List<Path> speaking(Path folder) {
    return Leftovers.like(folder, "").stream()
        .filter(
            file -> {
              String name = String.valueOf(file.getFileName());
              return !name.startsWith(".") && SPEAKING.stream().anyMatch(name::endsWith);
            })
        .toList();
  }
}
