package steadyturn.cli.output.table;

import static steadyturn.cli.words.Words.say;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.PairRow;
import steadyturn.analysis.compare.SwingPair;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.cli.terminal.Wrapping;
import steadyturn.cli.words.Verdicts;
import steadyturn.cli.words.Words;

/** Two single swings for people: below each difference stands what to make of it. */
public final class PairTable {

  private PairTable() {}

  /** Writes the swings side by side and what is needed to read it; leaves the writer open. */
  public static void write(SwingPair pair, Writer to) throws IOException {
    String title = say("pair.title", title(pair.first()), title(pair.second()));
    List<String> lines = new ArrayList<>(Wrapping.wrapped(title, Layout.WIDTH));
    lines.addAll(table(pair));
    lines.add("");
    if (!pair.first().lesson().equals(pair.second().lesson())) {
      lines.addAll(Layout.beside("*", 2, say("pair.other-lessons")));
    }
    for (String word : List.of("difference", "usual", "alike", "within-usual", "beyond-usual")) {
      int width = TableReport.NAME_WIDTH + 3;
      lines.addAll(Layout.beside(say("pair.name." + word), width, say("pair.read." + word)));
    }
    lines.addAll(Cautions.afterATable());
    Layout.write(lines, to);
  }

  private static String title(LessonSwing each) {
    return say("pair.swing", each.swing().number(), LessonTable.title(each.swing()));
  }

  private static List<String> table(SwingPair pair) {
    List<List<String>> cells = new ArrayList<>();
    cells.add(
        List.of(
            "",
            say("table.swing", pair.first().swing().number()),
            say("table.swing", pair.second().swing().number()),
            say("pair.name.difference"),
            say("pair.name.usual")));
    cells.add(List.of("", "", "", say("compare.range"), ""));
    for (List<PairRow> atOne : ComparisonTable.grouped(pair.rows(), row -> row.what().at())) {
      String at = ComparisonTable.position(atOne.get(0).what().at());
      cells.add(List.of(at + ":", "", "", "", ""));
      for (PairRow row : atOne) {
        cells.add(cells(row));
        cells.add(List.of("", "", "", Verdicts.of(row, Words.inUse()), ""));
      }
    }
    return Layout.table(cells, 1);
  }

  private static List<String> cells(PairRow row) {
    Measure measure = row.what().measure();
    return List.of(
        "  " + ComparisonTable.name(measure),
        figure(row.first()),
        figure(row.second()),
        row.difference()
            .map(d -> ComparisonTable.range(d.value(), d.low(), d.high(), measure))
            .orElse(Figure.WITHHELD),
        row.usual().map(u -> Figure.nearest(u, measure)).orElse(Figure.WITHHELD));
  }

  private static String figure(Optional<MeasureValue> value) {
    return value.map(Figure::narrow).orElse(Figure.WITHHELD);
  }
}
