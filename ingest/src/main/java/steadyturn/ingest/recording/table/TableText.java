package steadyturn.ingest.recording.table;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;

/**
 * A small table to add to: rows and cells that are there stay as they are, new columns go to the
 * right, what a row lacks is {@code n/a}.
 */
public final class TableText {

  private static final String MISSING = "n/a";

  private final List<String> header = new ArrayList<>();
  private final List<Map<String, String>> rows = new ArrayList<>();

  /** The table in a file, or an empty one where there is none. */
  public static TableText read(Path file) {
    TableText table = new TableText();
    if (Files.exists(file)) {
      TextTable there = TextTable.read(file, new ArrayList<>());
      table.header.addAll(there.header());
      for (TextTable.Row row : there.rows()) {
        Map<String, String> cells = new LinkedHashMap<>();
        for (int i = 0; i < there.header().size(); i++) {
          cells.put(there.header().get(i), row.cell(i));
        }
        table.rows.add(cells);
      }
    }
    return table;
  }

  /** Adds a row, or fills what the row of that key lacks. The first cell is the key. */
  public void fill(Map<String, String> cells) {
    Map<String, String> row = rowLike(cells);
    cells.forEach(
        (column, cell) -> {
          String there = row.getOrDefault(column, "");
          if (there.isEmpty() || there.equals(MISSING)) {
            row.put(column, clean(cell));
          }
        });
  }

  /** Adds a row, or writes over these cells of the row of that key. The first cell is the key. */
  public void put(Map<String, String> cells) {
    Map<String, String> row = rowLike(cells);
    cells.forEach((column, cell) -> row.put(column, clean(cell)));
  }

  /** Takes out the rows in which a cell is such. Returns how many went. */
  public int dropWhere(Predicate<String> cell) {
    int before = rows.size();
    rows.removeIf(row -> row.values().stream().anyMatch(cell));
    return before - rows.size();
  }

  /** Writes every cell anew. */
  public void replaceAll(UnaryOperator<String> cell) {
    rows.forEach(row -> row.replaceAll((column, text) -> cell.apply(text)));
  }

  private Map<String, String> rowLike(Map<String, String> cells) {
    cells.keySet().stream().filter(column -> !header.contains(column)).forEach(header::add);
    var key = cells.entrySet().iterator().next();
    for (Map<String, String> row : rows) {
      if (key.getValue().equals(row.get(key.getKey()))) {
        return row;
      }
    }
    Map<String, String> fresh = new LinkedHashMap<>();
    rows.add(fresh);
    return fresh;
  }

  /** A cell holds no tab, no line end, and nothing that a spreadsheet would run. */
  public static String clean(String cell) {
    String plain = CellText.written(cell);
    return plain.isEmpty() ? MISSING : plain;
  }

  public String text() {
    StringBuilder text = new StringBuilder(String.join("\t", header)).append('\n');
    for (Map<String, String> row : rows) {
      List<String> cells = new ArrayList<>();
      for (String column : header) {
        String cell = row.getOrDefault(column, "");
        cells.add(cell.isEmpty() ? MISSING : cell);
      }
      text.append(String.join("\t", cells)).append('\n');
    }
    return text.toString();
  }
}
