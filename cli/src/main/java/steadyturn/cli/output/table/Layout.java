package steadyturn.cli.output.table;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import steadyturn.cli.terminal.Wrapping;

/** Lines of text at most {@link #WIDTH} columns wide: aligned tables and wrapped sentences. */
final class Layout {

  static final int WIDTH = 80;

  private static final String GAP = "  ";

  private Layout() {}

  /**
   * Aligns rows of equal length: the first {@code leftColumns} columns to the left, numbers to the
   * right.
   */
  static List<String> table(List<List<String>> rows, int leftColumns) {
    List<Integer> widths = new ArrayList<>(Collections.nCopies(rows.get(0).size(), 0));
    for (List<String> row : rows) {
      for (int c = 0; c < row.size(); c++) {
        widths.set(c, Math.max(widths.get(c), row.get(c).length()));
      }
    }
    return rows.stream().map(row -> line(row, widths, leftColumns)).toList();
  }

  private static String line(List<String> row, List<Integer> widths, int leftColumns) {
    StringBuilder line = new StringBuilder();
    for (int c = 0; c < row.size(); c++) {
      String space = " ".repeat(widths.get(c) - row.get(c).length());
      line.append(c == 0 ? "" : GAP);
      line.append(c < leftColumns ? row.get(c) + space : space + row.get(c));
    }
    return line.toString().stripTrailing();
  }

  /** A name and a sentence beside it; further lines start under the sentence. */
  static List<String> beside(String name, int nameWidth, String sentence) {
    return beside(name, nameWidth, sentence, WIDTH);
  }

  /** The same in so many columns. */
  static List<String> beside(String name, int nameWidth, String sentence, int width) {
    List<String> lines = new ArrayList<>();
    String start = name + " ".repeat(Math.max(1, nameWidth - name.length()));
    for (String part : Wrapping.wrapped(sentence, width - nameWidth)) {
      lines.add(start + part);
      start = " ".repeat(nameWidth);
    }
    return lines;
  }

  /** Writes lines; leaves the writer open. */
  static void write(List<String> lines, Writer to) throws IOException {
    to.write(String.join("\n", lines) + "\n");
  }
}
