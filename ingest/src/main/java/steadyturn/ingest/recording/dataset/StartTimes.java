package steadyturn.ingest.recording.dataset;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoField;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAccessor;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import steadyturn.ingest.recording.disk.ArchiveLock;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.table.TableText;
import steadyturn.ingest.recording.table.TextTable;

/** The {@code acq_time} column of scans files: when the first sample of each table was taken. */
public final class StartTimes {

  private static final DateTimeFormatter WRITTEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSSSSS", Locale.ROOT);

  private final Map<Path, LocalDateTime> byTable = new HashMap<>();

  /** Reads every scans file from the folder up to the root. */
  static StartTimes of(Path folder, Path root, Folders.Lists lists, List<String> notices) {
    StartTimes times = new StartTimes();
    for (Path at : Folders.upTo(folder, root)) {
      for (Path file : lists.files(at)) {
        String name = String.valueOf(file.getFileName());
        if (name.startsWith("sub-") && name.endsWith("_scans.tsv")) {
          try {
            times.add(file, notices);
          } catch (RecordingException e) {
            notices.add(e.getMessage() + " Until then its start times are not known.");
          }
        }
      }
    }
    return times;
  }

  private void add(Path file, List<String> notices) {
    TextTable table = TextTable.read(file, notices);
    if (!table.has("filename") || !table.has("acq_time")) {
      notices.add(
          RecordingException.place(file, 1, "")
              + ": lacks filename or acq_time; start times are not known from it.");
      return;
    }
    int coarse = 0;
    for (TextTable.Row row : table.rows()) {
      String written = table.text(row, "acq_time");
      if (!written.isEmpty()) {
        Path named = file.resolveSibling(table.text(row, "filename")).normalize();
        byTable.putIfAbsent(named, parse(file, row.line(), written));
        coarse += written.contains(".") ? 0 : 1;
      }
    }
    if (coarse > 1) {
      notices.add(
          RecordingException.place(file, 0, "")
              + ": start times are told to whole seconds; units with clocks of their own may be a"
              + " second apart.");
    }
  }

  private static LocalDateTime parse(Path file, int line, String written) {
    try {
      TemporalAccessor parsed = DateTimeFormatter.ISO_DATE_TIME.parse(written);
      return parsed.isSupported(ChronoField.OFFSET_SECONDS)
          ? LocalDateTime.ofInstant(Instant.from(parsed), ZoneOffset.UTC)
          : LocalDateTime.from(parsed);
    } catch (DateTimeException e) {
      throw RecordingException.at(
          file,
          line,
          "acq_time",
          "\"" + written + "\" is no time. Write it as 2025-03-31T10:15:00.123456.");
    }
  }

  Optional<LocalDateTime> of(Path table) {
    return Optional.ofNullable(byTable.get(table.normalize()));
  }

  /**
   * Adds the start of one table to the lesson's scans file; other rows stay as they are.
   *
   * @param root the dataset's folder
   * @param table the motion table
   * @param startedAt when its first sample was taken; kept to the microsecond
   * @return false where another program changes the archive just now: nothing is written then
   */
  public static boolean add(Path root, RunLabel label, Path table, LocalDateTime startedAt) {
    return ArchiveLock.ifNobodyWrites(
            root,
            () -> {
              addAlone(root, label, table, startedAt);
              return true;
            })
        .orElse(false);
  }

  private static void addAlone(Path root, RunLabel label, Path table, LocalDateTime startedAt) {
    Path folder = root.resolve(label.folder());
    Path file = folder.resolve("sub-" + label.player() + "_ses-" + label.lesson() + "_scans.tsv");
    TableText scans = TableText.read(file);
    Map<String, String> row = new LinkedHashMap<>();
    row.put("filename", "motion/" + table.getFileName());
    row.put("acq_time", startedAt.format(WRITTEN));
    scans.put(row);
    WholeFile.write(file, scans.text());
  }

  /** Microseconds from one start to another, as s. */
  public static double secondsBetween(LocalDateTime from, LocalDateTime to) {
    return ChronoUnit.NANOS.between(from, to) / 1e9;
  }
}
