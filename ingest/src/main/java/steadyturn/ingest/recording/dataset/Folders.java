package steadyturn.ingest.recording.dataset;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import steadyturn.ingest.recording.disk.Leftovers;
import steadyturn.ingest.recording.disk.WholeFile;

/** Finds the way about a dataset's folders. */
final class Folders {

  private static final Set<String> NOT_RAW = Set.of("derivatives", "sourcedata", "code", "stimuli");

  /** A motion table lies in root/player/lesson/motion; one folder more for those who nest. */
  private static final int DEEPEST = 4;

  private Folders() {}

  /** The dataset a path lies in: the nearest folder above (or at) it that says so. */
  static Path root(Path path) {
    Path folder = Files.isDirectory(path) ? path : WholeFile.folderOf(path);
    Path below = folder;
    for (Path at = folder; at != null; at = at.getParent()) {
      if (Files.exists(at.resolve("dataset_description.json"))
          || Files.exists(at.resolve("participants.tsv"))) {
        return at;
      }
      if (isNamed(at, "sub-")) {
        below = at.getParent() == null ? at : at.getParent();
      }
    }
    return below;
  }

  private static boolean isNamed(Path folder, String start) {
    return folder.getFileName() != null && folder.getFileName().toString().startsWith(start);
  }

  /** The folders from one up to the root, both included. */
  static List<Path> upTo(Path folder, Path root) {
    List<Path> way = new ArrayList<>();
    for (Path at = folder; at != null && at.startsWith(root); at = at.getParent()) {
      way.add(at);
    }
    return way;
  }

  /** The files in a folder by name; hidden ones are left out. */
  static List<Path> files(Path folder) {
    return seen(folder).filter(Files::isRegularFile).toList();
  }

  /** What lies in a folder by name; hidden things are left out. */
  private static Stream<Path> seen(Path folder) {
    return Leftovers.like(folder, "").stream().filter(f -> !isNamed(f, ".")).sorted();
  }

  /**
   * What lies in folders, each of which is listed once: lessons share those above them. May be
   * asked by many at once.
   */
  static final class Lists {

    /** What lies in one folder, by name. */
    private record Inside(List<Path> files, List<Path> folders) {}

    private final Map<Path, Inside> known = new ConcurrentHashMap<>();

    /** The files in a folder by name; hidden ones are left out. */
    List<Path> files(Path folder) {
      return inside(folder).files();
    }

    private Inside inside(Path folder) {
      return known.computeIfAbsent(folder, Lists::look);
    }

    private static Inside look(Path folder) {
      Inside inside = new Inside(new ArrayList<>(), new ArrayList<>());
      for (Path entry : seen(folder).toList()) {
        kind(entry)
            .filter(kind -> kind.isDirectory() || kind.isRegularFile())
            .map(kind -> kind.isDirectory() ? inside.folders() : inside.files())
            .ifPresent(list -> list.add(entry));
      }
      return inside;
    }

    /** One question to the file system in place of two; empty for a link that leads nowhere. */
    private static Optional<BasicFileAttributes> kind(Path entry) {
      try {
        return Optional.of(Files.readAttributes(entry, BasicFileAttributes.class));
      } catch (IOException gone) {
        return Optional.empty();
      }
    }

    /** Every motion table below a folder, results and sources left out, by name. */
    List<Path> motionTables(Path folder) {
      return below(folder, 0);
    }

    private List<Path> below(Path folder, int depth) {
      Inside inside = inside(folder);
      Stream<Path> here = inside.files().stream().filter(f -> f.toString().endsWith("_motion.tsv"));
      Stream<Path> deeper =
          depth == DEEPEST
              ? Stream.of()
              : inside.folders().parallelStream()
                  .filter(f -> !NOT_RAW.contains(String.valueOf(f.getFileName())))
                  .map(f -> below(f, depth + 1))
                  .flatMap(List::stream);
      return Stream.concat(here, deeper).toList();
    }
  }
}
