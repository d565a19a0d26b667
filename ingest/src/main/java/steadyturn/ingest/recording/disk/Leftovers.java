package steadyturn.ingest.recording.disk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import steadyturn.ingest.recording.table.RecordingException;

/** Hidden files and folders of work that is under way, and how they go when it was broken off. */
public final class Leftovers {

  private static final AtomicLong COUNT = new AtomicLong();

  private Leftovers() {}

  /** A name for them: two writers, be they threads or processes, never share one. */
  public static String beside(String hidden) {
    return hidden + ProcessHandle.current().pid() + "-" + COUNT.incrementAndGet() + ".part";
  }

  /** Removes what processes that were killed have left under such names. */
  public static void sweep(Path folder, String hidden) {
    for (Path left : like(folder, hidden)) {
      String rest = String.valueOf(left.getFileName()).substring(hidden.length());
      if (rest.matches("[0-9]{1,15}-[0-9]+\\.part") && isOfADeadProcess(rest)) {
        delete(left);
      }
    }
  }

  private static boolean isOfADeadProcess(String mark) {
    long pid = Long.parseLong(mark.substring(0, mark.indexOf('-')));
    return ProcessHandle.of(pid).isEmpty();
  }

  /** What lies in a folder under names that begin so. */
  public static List<Path> like(Path folder, String start) {
    try (Stream<Path> entries = Files.list(folder)) {
      return entries.filter(f -> String.valueOf(f.getFileName()).startsWith(start)).toList();
    } catch (IOException e) {
      throw RecordingException.io(folder, e);
    } catch (UncheckedIOException e) {
      throw RecordingException.of(folder, "cannot be listed. Check the rights to it.");
    }
  }

  /** Removes a file, or a folder of files, if it is there. */
  public static void delete(Path left) {
    try (Stream<Path> entries = Files.exists(left) ? Files.walk(left, 1) : Stream.of()) {
      for (Path entry : entries.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(entry);
      }
    } catch (IOException e) {
      throw RecordingException.io(left, e);
    }
  }
}
