package steadyturn.cli.output.rows;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.apache.commons.csv.CSVFormat;
import steadyturn.analysis.rows.RowColumn;
import steadyturn.analysis.rows.RowSink;
import steadyturn.analysis.rows.RowTable;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.CellText;

/**
 * Tables as comma-separated text (RFC 4180, UTF-8, lines end in LF): a header, a decimal point, an
 * empty cell where there is nothing. Each file is there whole or not at all.
 */
public final class CsvTables {

  static final CSVFormat FORMAT = CSVFormat.RFC4180.builder().setRecordSeparator('\n').get();

  private final Path folder;
  private final UnaryOperator<String> text;

  private CsvTables(Path folder, UnaryOperator<String> text) {
    this.folder = folder;
    this.text = text;
  }

  /** Tables for people too: nothing in a cell is run by a spreadsheet. */
  public static CsvTables into(Path folder) {
    return new CsvTables(folder, CellText::written);
  }

  /** Tables for machines alone: texts as they are. */
  static CsvTables plain(Path folder) {
    return new CsvTables(folder, text -> text);
  }

  /** What hands out rows. */
  @FunctionalInterface
  public interface Work {
    void writeTo(RowSink sink) throws IOException;
  }

  /** The file of a table. */
  Path file(RowTable table) {
    return folder.resolve(table.word() + ".csv");
  }

  /** Writes these tables, rows of others are let go. */
  public void write(List<RowTable> tables, Work work) {
    open(tables, new EnumMap<>(RowTable.class), work);
  }

  private void open(List<RowTable> left, Map<RowTable, Writer> open, Work work) {
    if (left.isEmpty()) {
      try {
        work.writeTo((table, cells) -> row(open, table, cells));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      return;
    }
    RowTable table = left.get(0);
    WholeFile.writeText(
        file(table),
        to -> {
          FORMAT.printRecord(to, table.columns().stream().map(RowColumn::name).toArray());
          open.put(table, to);
          open(left.subList(1, left.size()), open, work);
        });
  }

  private void row(Map<RowTable, Writer> open, RowTable table, Object... cells) throws IOException {
    Writer to = open.get(table);
    if (to != null) {
      FORMAT.printRecord(to, Arrays.stream(cells).map(this::cell).toArray());
    }
  }

  private Object cell(Object cell) {
    if (cell instanceof BigDecimal number) {
      return number.toPlainString();
    }
    return cell instanceof String words ? text.apply(words) : cell;
  }

  /** Writes a small table of texts under a header. */
  static void write(Path file, List<List<String>> rows) {
    WholeFile.writeText(
        file,
        to -> {
          for (List<String> row : rows) {
            FORMAT.printRecord(to, row.stream().map(CellText::written).toArray());
          }
        });
  }
}
