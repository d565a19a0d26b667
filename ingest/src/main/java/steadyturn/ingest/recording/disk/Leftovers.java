package steadyturn.ingest.recording.disk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import steadyturn.ingest.recording.table.RecordingException;

/** Hidden files and folders of work that is under way, and how they go when it was broken off. */
public final class Leftovers {

  private static final AtomicLong COUNT = new AtomicLong();
  private static final Pattern NAME = Pattern.compile("\\..*?([0-9]{1,15})-[0-9]+\\.part");

  private Leftovers() {}

  /** A name for them: two writers, be they threads or processes, never share one. */
  public static String beside(String hidden) {
    return hidden + ProcessHandle.current().pid() + "-" + COUNT.incrementAndGet() + ".part";
  }

  /** Removes what processes that were killed have left under such names. */
  public static void sweep(Path folder, String hidden) {
    like(folder, hidden).stream().filter(Leftovers::isOfADeadProcess).forEach(Leftovers::delete);
  }

  /** Removes what processes that were killed have left anywhere in an archive. */
  static void sweepAll(Path root) {
    try (Stream<Path> all = Files.walk(root)) {
      all.filter(Leftovers::isOfADeadProcess).toList().forEach(Leftovers::delete);
    } catch (IOException e) {
      throw RecordingException.io(root, e);
    } catch (UncheckedIOException e) {
      return; // a folder nobody may look into keeps what it has
    }
  }

  private static boolean isOfADeadProcess(Path file) {
    Matcher name = NAME.matcher(String.valueOf(file.getFileName()));
    return name.matches() && ProcessHandle.of(Long.parseLong(name.group(1))).isEmpty();
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
    try (Stream<Path> entries = Files.exists(left) ? Files.walk(left) : Stream.of()) {
      for (Path entry : entries.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(entry);
      }
    } catch (IOException e) {
      throw RecordingException.io(left, e);
    }
  }
}
