package steadyturn.cli.output.table;

import static steadyturn.cli.words.Words.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.cli.words.PlainWords;
import steadyturn.cli.words.Words;

/** A swing on one screen: measures by key position, then what holds for the whole swing. */
final class SwingBlock {

  /** What fits beside the names; the others are in the files of results. */
  private static final List<SwingEvent> SHOWN =
      List.of(
          SwingEvent.LEAD_ARM_LEVEL_BACK,
          SwingEvent.TOP,
          SwingEvent.LEAD_ARM_LEVEL_DOWN,
          SwingEvent.IMPACT,
          SwingEvent.FINISH);

  /** Other ways to say what another row says; JSON and TSV have them all. */
  private static final Set<Measure> SAID_ALREADY =
      Set.of(
          Measure.PELVIS_SLIDE_PER_TURN,
          Measure.PELVIS_TURN_TO_SLIDE,
          Measure.PELVIS_CENTRE_ALONG,
          Measure.PELVIS_CENTRE_ACROSS,
          Measure.WRIST_RELEASE_PART,
          Measure.WRIST_RATE_TIME,
          Measure.ORDER_ARM);

  private final SwingResult swing;

  SwingBlock(SwingResult swing) {
    this.swing = swing;
  }

  List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add(say("each.swing", swing.number(), heading()));
    if (!swing.note().isEmpty()) {
      lines.addAll(Layout.beside("  " + say("each.note"), 8, swing.note()));
    }
    if (!swing.flags().isEmpty()) {
      lines.addAll(Layout.beside("  !", 4, flags()));
    }
    lines.addAll(byPosition(positions()));
    lines.addAll(wholeSwing());
    if (!swing.events().isEmpty()) {
      lines.addAll(Layout.beside("  " + say("each.times"), 12, times()));
    }
    return lines;
  }

  private String flags() {
    return swing.flags().stream().map(PlainWords::flag).collect(Collectors.joining("; "));
  }

  private String heading() {
    return swing.club().isBlank() ? swing.kind().word() : swing.club() + ", " + swing.kind().word();
  }

  /** Key positions that have a value, in the order they come in a swing. */
  private List<String> positions() {
    return SHOWN.stream()
        .map(SwingEvent::word)
        .filter(word -> swing.measures().stream().anyMatch(m -> m.given() && m.at().equals(word)))
        .toList();
  }

  private List<String> byPosition(List<String> positions) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(head(positions, 0));
    rows.add(head(positions, 1));
    for (Measure measure : Measure.values()) {
      if (SAID_ALREADY.contains(measure)) {
        continue;
      }
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

  /** Two measures a line. */
  private List<String> wholeSwing() {
    List<String> cells =
        swing.measures().stream()
            .filter(m -> m.at().isEmpty() && m.given() && !SAID_ALREADY.contains(m.measure()))
            .map(
                m ->
                    (PlainWords.of(m.measure())
                            + " "
                            + Figure.narrow(m)
                            + " "
                            + PlainWords.unit(m.measure()))
                        .strip())
            .toList();
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < cells.size(); i += 2) {
      rows.add(List.of("  " + cells.get(i), i + 1 < cells.size() ? cells.get(i + 1) : ""));
    }
    return rows.isEmpty() ? List.of() : Layout.table(rows, 2);
  }

  /** Of the positions in the columns, and of the takeaway; JSON has them all. */
  private String times() {
    return swing.events().stream()
        .filter(e -> e.event() == SwingEvent.TAKEAWAY || SHOWN.contains(e.event()))
        .map(
            e ->
                PlainWords.keyPosition(e.event().word())
                    + " "
                    + Words.inUse().decimal(e.timeS(), 3))
        .collect(Collectors.joining("; "));
  }
}
