package steadyturn.ingest.recording.dataset;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import steadyturn.ingest.recording.table.RecordingException;

/** Finds the way about a dataset's folders. */
final class Folders {

  private static final Set<String> NOT_RAW = Set.of("derivatives", "sourcedata", "code", "stimuli");

  private Folders() {}

  /** The dataset a path lies in: the nearest folder above (or at) it that says so. */
  static Path root(Path path) {
    Path folder = Files.isDirectory(path) ? path : of(path);
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

  /** The folder a file lies in. */
  static Path of(Path file) {
    Path absolute = file.toAbsolutePath().normalize();
    Path parent = absolute.getParent();
    return parent == null ? absolute : parent;
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
    try (Stream<Path> entries = Files.list(folder)) {
      return entries.filter(Files::isRegularFile).filter(f -> !isNamed(f, ".")).sorted().toList();
    } catch (IOException e) {
      throw RecordingException.io(folder, e);
    }
  }

  /** Every motion table below a folder, results and sources left out, by name. */
  static List<Path> motionTables(Path folder) {
    List<Path> tables = new ArrayList<>();
    collect(folder, tables, 0);
    return tables;
  }

  private static void collect(Path folder, List<Path> tables, int depth) {
    for (Path file : files(folder)) {
      if (file.toString().endsWith("_motion.tsv")) {
        tables.add(file);
      }
    }
    if (depth == 4) {
      return;
    }
    try (Stream<Path> entries = Files.list(folder)) {
      entries
          .filter(Files::isDirectory)
          .filter(f -> !isNamed(f, ".") && !NOT_RAW.contains(String.valueOf(f.getFileName())))
          .sorted()
          .forEach(f -> collect(f, tables, depth + 1));
    } catch (IOException e) {
      throw RecordingException.io(folder, e);
    } catch (UncheckedIOException e) {
      throw RecordingException.of(folder, "cannot be listed. Check the rights to it.");
    }
  }
}
