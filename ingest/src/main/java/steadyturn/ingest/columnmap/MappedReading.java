package steadyturn.ingest.columnmap;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVRecord;
import steadyturn.ingest.columnmap.layout.ColumnRef;
import steadyturn.ingest.columnmap.layout.MapPart;
import steadyturn.ingest.columnmap.layout.MappedVector;
import steadyturn.ingest.columnmap.layout.RowChoice;
import steadyturn.ingest.columnmap.layout.TimeColumn;
import steadyturn.ingest.columnmap.layout.TimeText;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.table.SampleColumns;

/** Reads the chosen rows of one table into columns: time first, then the vectors in their order. */
final class MappedReading {

  /** More rows than this share that repeat a time: they belong together, or to several units. */
  private static final double MOST_REPEATED = 0.05;

  private static final int FEW = 10;

  private static final double DAY_S = 86_400;

  private final Path file;
  private final MapPart part;
  private final Optional<RowChoice> where;
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

  MappedReading(Path file, MapPart part, Optional<RowChoice> where, List<MappedVector> vectors) {
    this.file = file;
    this.part = part;
    this.where = where;
    numbers = new MappedNumber(part.table());
    for (MappedVector vector : vectors) {
      for (ColumnRef ref : vector.columns()) {
        refs.add(ref);
        factors.add(ref.sign() * vector.toSi());
      }
    }
  }

  /** Time, then the columns of the vectors. */
  double[][] read() {
    SampleColumns columns = new SampleColumns(1 + refs.size(), 1024);
    try (MappedTable table = MappedTable.open(file, part.table())) {
      int[] indexes = refs.stream().mapToInt(table::index).toArray();
      int[] timeIndexes = part.time().columns().stream().mapToInt(table::index).toArray();
      int whereIndex = where.map(w -> table.index(w.column())).orElse(-1);
      int needed =
          IntStream.concat(Arrays.stream(indexes), Arrays.stream(timeIndexes)).max().orElse(0);
      double[] row = new double[1 + refs.size()];
      long rows = 0;
      while (table.hasNext()) {
        CSVRecord record = table.next();
        if (isWhole(record, Math.max(needed, whereIndex), table) && isMeant(record, whereIndex)) {
          row[0] = timeS(record, timeIndexes, rows, table);
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
      throw RecordingException.of(
          file,
          where.isPresent()
              ? "holds no row with \""
                  + where.get().word()
                  + "\" in "
                  + where.get().column().shown()
                  + ". Check where of the map."
              : "holds no sample. Check skip_lines and header_lines.");
    }
    if (repeated > Math.max(FEW, MOST_REPEATED * columns.size())) {
      throw notGoingOn(
          0,
          repeated + " samples share their time with the one before.",
          "If they were sent together, set batches = true under [time] in the map.");
    }
    return columns.trimmed();
  }

  private boolean isMeant(CSVRecord record, int whereIndex) {
    return whereIndex < 0 || record.get(whereIndex).equals(where.orElseThrow().word());
  }

  /** Times that do not go on: of several units, or for the reason told. */
  private RecordingException notGoingOn(long line, String found, String otherwise) {
    Optional<String> several =
        where.isPresent()
            ? Optional.empty()
            : TellingColumn.in(file, part).map(TellingColumn::told);
    return RecordingException.at(file, line, found + " " + several.orElse(otherwise));
  }

  private boolean isWhole(CSVRecord record, int needed, MappedTable table) {
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

  private double timeS(CSVRecord record, int[] indexes, long rows, MappedTable table) {
    TimeColumn time = part.time();
    if (indexes.length == 0) {
      return rows * time.secondsPerUnit();
    }
    double raw =
        time.text().isPresent()
            ? written(record, indexes, time.text().get(), table)
            : number(record, indexes[0], time.columns().get(0), table);
    double wrapsAt =
        time.wrapsAt().orElse(time.text().isPresent() && raw < DAY_S ? DAY_S : Double.NaN);
    wraps += raw < lastRaw - wrapsAt / 2 ? wrapsAt : 0;
    lastRaw = Double.isNaN(raw) ? lastRaw : raw;
    return (raw + wraps) * time.secondsPerUnit();
  }

  /** Date and time as text. */
  private double written(CSVRecord record, int[] indexes, TimeText text, MappedTable table) {
    String cells =
        Arrays.stream(indexes).mapToObj(record::get).collect(Collectors.joining(" ")).strip();
    if (numbers.isMissing(cells)) {
      return Double.NaN;
    }
    return text.seconds(cells)
        .orElseThrow(
            () ->
                RecordingException.at(
                    file,
                    table.line(),
                    part.time().columns().get(0).shown(),
                    ("\"" + cells + "\" is no time like \"" + text.example() + "\".")
                        + " Set format under [time] in the map."));
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
    if (timeS == lastS && !part.time().isOfBatches()) {
      repeated++;
      return false;
    }
    if (timeS < lastS) {
      throw notGoingOn(
          table.line(),
          "time runs backwards, from " + (float) lastS + " s to " + (float) timeS + " s.",
          "Set wraps_at in the map for a counter that starts again, or split the file.");
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
