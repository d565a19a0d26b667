package steadyturn.cli.output.table;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.cli.words.PlainWords;
import steadyturn.cli.words.Words;

/** Everything known of one swing: measures by key position, then what holds for the whole swing. */
final class SwingBlock {

  /** Key positions side by side; more would not fit the width. */
  private static final int POSITIONS_A_TABLE = 5;

  private final SwingResult swing;

  SwingBlock(SwingResult swing) {
    this.swing = swing;
  }

  List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add("Swing " + swing.number() + ": " + heading());
    if (!swing.note().isEmpty()) {
      lines.addAll(Layout.beside("  note:", 8, swing.note()));
    }
    swing.flags().forEach(flag -> lines.add("  ! " + PlainWords.flag(flag)));
    List<String> positions = positions();
    for (int from = 0; from < positions.size(); from += POSITIONS_A_TABLE) {
      int to = Math.min(positions.size(), from + POSITIONS_A_TABLE);
      lines.addAll(byPosition(positions.subList(from, to)));
    }
    lines.addAll(wholeSwing());
    if (!swing.events().isEmpty()) {
      lines.addAll(Layout.beside("  times, s:", 12, times()));
    }
    lines.addAll(Reasons.of(List.of(swing), value -> true, 2));
    return lines;
  }

  private String heading() {
    return swing.club().isBlank() ? swing.kind().word() : swing.club() + ", " + swing.kind().word();
  }

  /** Key positions that have a value, in the order they come in a swing. */
  private List<String> positions() {
    return Arrays.stream(SwingEvent.values())
        .map(SwingEvent::word)
        .filter(word -> swing.measures().stream().anyMatch(m -> m.given() && m.at().equals(word)))
        .toList();
  }

  private List<String> byPosition(List<String> positions) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(head(positions, 0));
    rows.add(head(positions, 1));
    for (Measure measure : Measure.values()) {
      List<String> cells = positions.stream().map(at -> cell(measure, at)).toList();
      if (cells.stream().anyMatch(cell -> !cell.equals(Figure.WITHHELD))) {
        rows.add(row("  " + PlainWords.of(measure), PlainWords.unit(measure), cells));
      }
    }
    return Layout.table(rows, 2);
  }

  /** The name of a position over two lines: its last word below, where it has several. */
  private static List<String> head(List<String> positions, int line) {
    List<String> cells =
        positions.stream()
            .map(PlainWords::keyPosition)
            .map(
                name -> {
                  int lastWord = name.lastIndexOf(' ') + 1;
                  return line == 1 ? name.substring(lastWord) : name.substring(0, lastWord).strip();
                })
            .toList();
    return row("", "", cells);
  }

  private static List<String> row(String name, String unit, List<String> cells) {
    List<String> row = new ArrayList<>(List.of(name, unit));
    row.addAll(cells);
    return row;
  }

  private String cell(Measure measure, String at) {
    return swing.measure(measure, at).map(Figure::narrow).orElse(Figure.WITHHELD);
  }

  private List<String> wholeSwing() {
    List<List<String>> rows =
        swing.measures().stream()
            .filter(m -> m.at().isEmpty() && m.given())
            .map(
                m ->
                    List.of(
                        "  " + PlainWords.of(m.measure()),
                        PlainWords.unit(m.measure()),
                        Figure.wide(m)))
            .toList();
    return rows.isEmpty() ? List.of() : Layout.table(rows, 2);
  }

  private String times() {
    return swing.events().stream()
        .map(
            e ->
                PlainWords.keyPosition(e.event().word())
                    + " "
                    + Words.inUse().decimal(e.timeS(), 3))
        .collect(Collectors.joining("; "));
  }
}
