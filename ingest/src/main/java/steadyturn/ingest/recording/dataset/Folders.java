package steadyturn.ingest.recording.dataset;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import steadyturn.ingest.recording.disk.Leftovers;
import steadyturn.ingest.recording.disk.WholeFile;

/** Finds the way about a dataset's folders. */
final class Folders {

  private static final Set<String> NOT_RAW = Set.of("derivatives", "sourcedata", "code", "stimuli");

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

  /** What lies in folders, each of which is listed once: lessons share those above them. */
  static final class Lists {

    private final Map<Path, List<Path>> files = new HashMap<>();
    private final Map<Path, List<Path>> folders = new HashMap<>();

    /** The files in a folder by name; hidden ones are left out. */
    List<Path> files(Path folder) {
      look(folder);
      return files.getOrDefault(folder, List.of());
    }

    private void look(Path folder) {
      if (!files.containsKey(folder)) {
        List<Path> inside = new ArrayList<>();
        List<Path> tables = new ArrayList<>();
        for (Path entry : seen(folder).toList()) {
          kind(entry)
              .filter(kind -> kind.isDirectory() || kind.isRegularFile())
              .ifPresent(kind -> (kind.isDirectory() ? inside : tables).add(entry));
        }
        folders.put(folder, inside);
        files.put(folder, tables);
      }
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
      List<Path> tables = new ArrayList<>();
      collect(folder, tables, 0);
      return tables;
    }

    private void collect(Path folder, List<Path> tables, int depth) {
      files(folder).stream().filter(f -> f.toString().endsWith("_motion.tsv")).forEach(tables::add);
      if (depth < 4) {
        folders.getOrDefault(folder, List.of()).stream()
            .filter(f -> !NOT_RAW.contains(String.valueOf(f.getFileName())))
            .forEach(f -> collect(f, tables, depth + 1));
      }
    }
  }
}
