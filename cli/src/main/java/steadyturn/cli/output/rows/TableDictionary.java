package steadyturn.cli.output.rows;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.rows.LessonRows;
import steadyturn.analysis.rows.RowColumn;
import steadyturn.analysis.rows.RowTable;
import steadyturn.cli.words.Words;
import steadyturn.ingest.reason.Reason;

/**
 * What the columns of all tables mean, and what the reasons in them say: two more tables beside
 * them.
 */
public final class TableDictionary {

  private static final Map<String, String> UNITS = Map.of("_s", "s", "_deg", "deg", "_mm", "mm");

  private static final String ROW = "explains.row.";

  private TableDictionary() {}

  /** Writes {@code dictionary.csv}. */
  public static void write(Path folder) {
    CsvTables.write(folder.resolve("dictionary.csv"), rows());
  }

  /** Writes {@code reasons.csv}: each reason once, with its sentence. */
  public static void writeReasons(Path folder, Collection<Reason> reasons) {
    Map<List<String>, String> sentences = new TreeMap<>(Comparator.comparing(TableDictionary::key));
    for (Reason reason : reasons) {
      sentences.put(
          List.of(reason.code().word(), LessonRows.args(reason)), Words.english().text(reason));
    }
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("reason", "reason_args", "why"));
    sentences.forEach((reason, why) -> rows.add(List.of(reason.get(0), reason.get(1), why)));
    CsvTables.write(folder.resolve("reasons.csv"), rows);
  }

  private static String key(List<String> reason) {
    return String.join("\t", reason);
  }

  /** Header and rows: table, column, what its cells hold, unit, what it means. */
  static List<List<String>> rows() {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("table", "column", "type", "unit", "description"));
    for (RowTable table : RowTable.values()) {
      for (RowColumn column : table.columns()) {
        String name = column.name();
        String type = column.kind().name().toLowerCase(Locale.ROOT);
        rows.add(List.of(table.word(), name, type, unit(name), description(table, name)));
      }
    }
    return rows;
  }

  private static String unit(String name) {
    return UNITS.entrySet().stream()
        .filter(unit -> name.endsWith(unit.getKey()))
        .map(Map.Entry::getValue)
        .findFirst()
        .orElse("");
  }

  private static String description(RowTable table, String column) {
    Words words = Words.english();
    for (String key : List.of(ROW + table.word() + "." + column, ROW + column)) {
      if (words.has(key)) {
        return words.text(key);
      }
    }
    boolean isSpread = column.contains("_sd_");
    Measure measure =
        Arrays.stream(Measure.values())
            .filter(m -> column.startsWith(m.id().replace('.', '_') + "_"))
            .findFirst()
            .orElseThrow(() -> new IllegalStateException(column + " is not explained"));
    String name = words.text("name." + measure.id());
    return words.text(isSpread ? "explains.row.curve-sd" : "explains.row.curve", name);
  }
}
