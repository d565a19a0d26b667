package steadyturn.ingest.columnmap;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.table.SampleColumns;

/** Reads the rows of one table into columns: time first, then six a unit in the map's order. */
final class MappedReading {

  private final Path file;
  private final ColumnMap map;
  private final MappedNumber numbers;
  private final List<ColumnRef> refs = new ArrayList<>();
  private final List<Double> factors = new ArrayList<>();
  private long missing;
  private long repeated;
  private long withoutTime;
  private boolean cut;
  private double wraps;
  private double lastRaw = Double.NaN;
  private double lastS = Double.NEGATIVE_INFINITY;

  MappedReading(Path file, ColumnMap map) {
    this.file = file;
    this.map = map;
    numbers = new MappedNumber(map.table());
    for (UnitColumns unit : map.units()) {
      unit.accel().forEach(ref -> add(ref, unit.accelToMps2()));
      unit.gyro().forEach(ref -> add(ref, unit.gyroToRadPerS()));
    }
  }

  private void add(ColumnRef ref, double factor) {
    refs.add(ref);
    factors.add(ref.sign() * factor);
  }

  SampleColumns read() {
    SampleColumns columns = new SampleColumns(1 + refs.size(), 1024);
    try (MappedTable table = MappedTable.open(file, map.table())) {
      int[] indexes = refs.stream().mapToInt(table::index).toArray();
      int timeIndex = map.time().column().map(table::index).orElse(-1);
      double[] row = new double[1 + refs.size()];
      long rows = 0;
      while (table.hasNext()) {
        CSVRecord record = table.next();
        if (isWhole(record, indexes, timeIndex, table)) {
          row[0] = timeS(record, timeIndex, rows, table);
          for (int i = 0; i < indexes.length; i++) {
            row[1 + i] = factors.get(i) * number(record, indexes[i], refs.get(i), table);
          }
          rows++;
          if (keeps(row[0], table)) {
            columns.append(row);
          }
        }
      }
    }
    if (columns.size() == 0) {
      throw RecordingException.of(file, "holds no sample. Check skip_lines and header_lines.");
    }
    return columns;
  }

  private boolean isWhole(CSVRecord record, int[] indexes, int timeIndex, MappedTable table) {
    int needed = Math.max(timeIndex, Arrays.stream(indexes).max().orElse(0));
    if (record.size() > needed) {
      return true;
    }
    long line = table.line();
    if (table.hasNext()) {
      throw RecordingException.at(
          file,
          line,
          (record.size() + " columns where the map names column " + (needed + 1))
              + ". Check the delimiter and the header lines of the map.");
    }
    cut = true;
    return false;
  }

  private double timeS(CSVRecord record, int index, long rows, MappedTable table) {
    TimeColumn time = map.time();
    if (index < 0) {
      return rows * time.secondsPerUnit();
    }
    double raw = number(record, index, time.column().orElseThrow(), table);
    if (time.wrapsAt().isPresent() && raw < lastRaw - time.wrapsAt().getAsDouble() / 2) {
      wraps++;
    }
    lastRaw = Double.isNaN(raw) ? lastRaw : raw;
    return (raw + wraps * time.wrapsAt().orElse(0)) * time.secondsPerUnit();
  }

  private double number(CSVRecord record, int index, ColumnRef ref, MappedTable table) {
    String cell = record.get(index);
    if (numbers.isMissing(cell)) {
      missing++;
      return Double.NaN;
    }
    if (!numbers.isNumber(cell)) {
      throw RecordingException.at(file, table.line(), ref.shown(), numbers.complaint(cell));
    }
    return numbers.value(cell);
  }

  private boolean keeps(double timeS, MappedTable table) {
    if (Double.isNaN(timeS)) {
      withoutTime++;
      return false;
    }
    if (timeS == lastS) {
      repeated++;
      return false;
    }
    if (timeS < lastS) {
      throw RecordingException.at(
          file,
          table.line(),
          ("time runs backwards, from " + (float) lastS + " s to " + (float) timeS + " s.")
              + " Set wraps_at in the map for a counter that starts again, or split the file.");
    }
    lastS = timeS;
    return true;
  }

  List<String> notices() {
    List<String> notices = new ArrayList<>();
    tell(notices, missing, "lost values (empty cells or words of the map's list).");
    tell(notices, withoutTime, "samples without a time left out.");
    tell(notices, repeated, "samples that repeat the time of the one before left out.");
    if (cut) {
      notices.add(file.getFileName() + ": the last line is cut short; it was left out.");
    }
    return notices;
  }

  private void tell(List<String> notices, long count, String what) {
    if (count > 0) {
      notices.add(file.getFileName() + ": " + count + " " + what);
    }
  }
}
