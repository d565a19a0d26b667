package steadyturn.cli.output.table;

import static steadyturn.cli.words.Words.say;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.cli.words.PlainWords;
import steadyturn.cli.words.Words;

/** Why values are withheld or only estimated: each reason once, with the values it holds for. */
final class Reasons {

  private record Cause(Grade grade, String why) {}

  /** Where a reason holds: measures with their key positions, and swings. */
  private record Where(Map<String, Set<String>> positionsByMeasure, TreeSet<Integer> swings) {

    void add(MeasureValue value, int swing) {
      Set<String> positions =
          positionsByMeasure.computeIfAbsent(
              PlainWords.of(value.measure()), m -> new LinkedHashSet<>());
      if (!value.at().isEmpty()) {
        positions.add(PlainWords.keyPosition(value.at()));
      }
      swings.add(swing);
    }

    String words(int swingsInAll) {
      Map<Set<String>, List<String>> measuresByPositions = new LinkedHashMap<>();
      positionsByMeasure.forEach(
          (measure, positions) ->
              measuresByPositions.computeIfAbsent(positions, p -> new ArrayList<>()).add(measure));
      return measuresByPositions.entrySet().stream()
              .map(e -> String.join(", ", e.getValue()) + at(e.getKey()))
              .collect(Collectors.joining("; "))
          + in(swingsInAll);
    }

    private static String at(Set<String> positions) {
      String all = String.join(", ", positions);
      return all.isEmpty() ? "" : " " + say("table.at.positions", all);
    }

    private String in(int swingsInAll) {
      if (swingsInAll == 1) {
        return "";
      }
      if (swings.size() == swingsInAll) {
        return " (" + say("table.all-swings") + ")";
      }
      return " (" + TableReport.swings(swings.stream().map(String::valueOf).toList()) + ")";
    }
  }

  private Reasons() {}

  /** One sentence a reason, indented; empty when every value that counts is measured. */
  static List<String> of(List<SwingResult> swings, Predicate<MeasureValue> counts, int indent) {
    return of(swings, counts, indent, Layout.WIDTH);
  }

  /** The same in so many columns. */
  static List<String> of(
      List<SwingResult> swings, Predicate<MeasureValue> counts, int indent, int width) {
    Map<Cause, Where> found = new LinkedHashMap<>();
    for (SwingResult swing : swings) {
      swing.measures().stream()
          .filter(counts)
          .filter(value -> value.grade() != Grade.MEASURED && !value.why().isNone())
          .forEach(
              value ->
                  found
                      .computeIfAbsent(
                          new Cause(value.grade(), Words.inUse().text(value.why())),
                          r -> new Where(new LinkedHashMap<>(), new TreeSet<>()))
                      .add(value, swing.number()));
    }
    List<String> lines = new ArrayList<>();
    found.forEach(
        (cause, where) -> {
          String sign = cause.grade() == Grade.WITHHELD ? Figure.WITHHELD : "~";
          String sentence = where.words(swings.size()) + ": " + cause.why();
          lines.addAll(Layout.beside(" ".repeat(indent) + sign, indent + 2, sentence, width));
        });
    return lines;
  }
}
