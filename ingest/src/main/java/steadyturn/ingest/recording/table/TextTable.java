package steadyturn.ingest.recording.table;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A small tab-separated table with a header line: channels, events, scans, participants. Cells are
 * trimmed; {@code n/a} reads as an empty string.
 */
public record TextTable(Path file, List<String> header, List<Row> rows) {

  public static TextTable read(Path file, List<String> notices) {
    List<String> lines = TextFile.read(file, notices).lines().toList();
    if (lines.isEmpty() || lines.get(0).isBlank()) {
      throw RecordingException.of(file, "is empty. It needs a header line with column names.");
    }
    List<String> header = cells(lines.get(0));
    List<Row> rows = new ArrayList<>();
    for (int i = 1; i < lines.size(); i++) {
      if (!lines.get(i).isBlank()) {
        rows.add(new Row(i + 1, row(file, i + 1, lines.get(i), header)));
      }
    }
    return new TextTable(file, header, rows);
  }

  private static List<String> row(Path file, int line, String text, List<String> header) {
    List<String> cells = cells(text);
    if (cells.size() > header.size()) {
      throw RecordingException.at(
          file,
          line,
          cells.size()
              + " cells under a header of "
              + header.size()
              + ". Separate cells by one tab each.");
    }
    return cells;
  }

  private static List<String> cells(String line) {
    return Arrays.stream(line.split("\t", -1)).map(String::strip).toList();
  }

  public boolean has(String column) {
    return header.contains(column);
  }

  /** The cell as text; empty when the column, the cell or the value is missing. */
  public String text(Row row, String column) {
    String cell = row.cell(header.indexOf(column));
    return cell.equals("n/a") ? "" : CellText.read(cell);
  }

  /** The cell as a number; NaN when missing. */
  public double number(Row row, String column) {
    String cell = text(row, column);
    if (cell.isEmpty()) {
      return Double.NaN;
    }
    try {
      return Double.parseDouble(cell);
    } catch (NumberFormatException e) {
      throw RecordingException.at(file, row.line(), column, Numbers.complaint(cell));
    }
  }

  /**
   * One line below the header.
   *
   * @param line counted from 1, the header being line 1
   */
  public record Row(int line, List<String> cells) {

    String cell(int index) {
      return index >= 0 && index < cells.size() ? cells.get(index) : "";
    }
  }
}
