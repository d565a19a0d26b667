package steadyturn.cli.output.table;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.PairRow;
import steadyturn.analysis.compare.SwingPair;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.cli.words.Verdicts;
import steadyturn.cli.words.Words;

/** Two single swings for people, at most 100 columns wide. */
public final class PairTable {

  private PairTable() {}

  /** Writes the swings side by side and what is needed to read it; leaves the writer open. */
  public static void write(SwingPair pair, Writer to) throws IOException {
    List<String> lines = new ArrayList<>();
    lines.addAll(
        Layout.wrapped(
            Words.say("pair.title", title(pair.first()), title(pair.second())), Layout.WIDTH));
    lines.addAll(table(pair));
    lines.add("");
    if (!pair.first().lesson().equals(pair.second().lesson())) {
      lines.addAll(Layout.beside("*", 2, Words.say("pair.other-lessons")));
    }
    for (String word : List.of("difference", "usual", "alike", "within-usual", "beyond-usual")) {
      lines.addAll(
          Layout.beside(
              Words.say("pair.name." + word),
              TableReport.NAME_WIDTH + 3,
              Words.say("pair.read." + word)));
    }
    lines.addAll(Cautions.afterATable());
    for (String line : lines) {
      to.write(line + "\n");
    }
  }

  private static String title(LessonSwing each) {
    return Words.say("pair.swing", each.swing().number(), LessonTable.title(each.swing()));
  }

  private static List<String> table(SwingPair pair) {
    List<List<String>> cells = new ArrayList<>();
    cells.add(
        List.of(
            "",
            Words.say("table.swing", pair.first().swing().number()),
            Words.say("table.swing", pair.second().swing().number()),
            Words.say("pair.name.difference"),
            Words.say("pair.name.usual"),
            ""));
    cells.add(List.of("", "", "", Words.say("compare.range"), "", ""));
    Map<String, List<PairRow>> byPosition = new LinkedHashMap<>();
    pair.rows()
        .forEach(
            row -> byPosition.computeIfAbsent(row.what().at(), at -> new ArrayList<>()).add(row));
    byPosition.forEach(
        (at, rows) -> {
          cells.add(List.of(ComparisonTable.position(at) + ":", "", "", "", "", ""));
          rows.forEach(row -> cells.add(cells(row)));
        });
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
        row.usual().map(u -> Figure.nearest(u, measure)).orElse(Figure.WITHHELD),
        Verdicts.of(row, Words.inUse()));
  }

  private static String figure(Optional<MeasureValue> value) {
    return value.map(Figure::narrow).orElse(Figure.WITHHELD);
  }
}
