package steadyturn.cli;

import java.util.ArrayList;
import java.util.List;

/** One row of a TSV table, its cells by the names of the header. */
record Row(List<String> header, List<String> cells) {

  static List<Row> table(List<String> lines) {
    List<String> header = List.of(lines.get(0).split("\t", -1));
    List<Row> rows = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      rows.add(new Row(header, List.of(line.split("\t", -1))));
    }
    return rows;
  }

  String get(String column) {
    int at = header.indexOf(column);
    if (at < 0) {
      throw new IllegalArgumentException("no column " + column + " in " + header);
    }
    return cells.get(at);
  }

  double number(String column) {
    return Double.parseDouble(get(column));
  }
}
