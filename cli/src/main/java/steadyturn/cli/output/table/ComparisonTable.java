package steadyturn.cli.output.table;

import static steadyturn.cli.words.Words.say;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadyturn.analysis.compare.Comparison;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.ComparisonVerdict;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Decimals;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.terminal.Wrapping;
import steadyturn.cli.words.ComparisonWords;
import steadyturn.cli.words.PlainWords;
import steadyturn.cli.words.Words;

/** A comparison of groups for people: below each difference stands what to make of it. */
public final class ComparisonTable {

  private static final int LONGEST_NAME = 22;
  private static final int LONGEST_GROUP = 12;
  private static final String MEAN = say("compare.mean");
  private static final String SPREAD = say("compare.spread");

  private ComparisonTable() {}

  /**
   * Writes one table a pair of groups and what is needed to read it; leaves the writer open.
   *
   * @param inFull the whole name of a group
   */
  public static void write(Comparison comparison, UnaryOperator<String> inFull, Writer to)
      throws IOException {
    List<String> lines = new ArrayList<>();
    for (List<ComparisonRow> pair : pairs(comparison)) {
      lines.addAll(pair(pair, inFull));
      lines.add("");
      further(lines, pair);
    }
    lines.addAll(ownSpread(pairs(comparison).get(0)));
    lines.add("");
    new ComparisonWords(Words.inUse(), Figure::withUnit, inFull)
        .drifts(comparison)
        .forEach(drift -> lines.addAll(Layout.beside("*", 2, drift)));
    comparison.notices().forEach(n -> lines.addAll(Layout.beside("*", 2, Words.inUse().text(n))));
    lines.addAll(howToRead());
    lines.addAll(Cautions.afterATable());
    Layout.write(lines, to);
  }

  private static List<List<ComparisonRow>> pairs(Comparison comparison) {
    return grouped(comparison.rows(), row -> List.of(row.first().group(), row.second().group()));
  }

  /** Groups of rows in the order in which their first members come. */
  static <R, K> List<List<R>> grouped(List<R> rows, Function<R, K> by) {
    return List.copyOf(
        rows.stream()
            .collect(Collectors.groupingBy(by, LinkedHashMap::new, Collectors.toList()))
            .values());
  }

  private static List<String> pair(List<ComparisonRow> rows, UnaryOperator<String> inFull) {
    GroupSummary first = largest(rows.stream().map(ComparisonRow::first));
    GroupSummary second = largest(rows.stream().map(ComparisonRow::second));
    String a = PlainWords.swings(first.count());
    String b = PlainWords.swings(second.count());
    String title =
        say("compare.against", inFull.apply(first.group()), a, inFull.apply(second.group()), b);
    List<String> lines = new ArrayList<>(Wrapping.wrapped(title, Layout.WIDTH));
    List<String> ofFirst = ofGroup(rows, ComparisonRow::first);
    List<String> ofSecond = ofGroup(rows, ComparisonRow::second);
    List<List<String>> cells = new ArrayList<>();
    cells.add(
        List.of(
            "",
            head(first, say("compare.first")),
            head(second, say("compare.second")),
            say("compare.difference")));
    cells.add(List.of("", ofFirst.get(0), ofSecond.get(0), say("compare.range")));
    int figures = 1;
    for (List<ComparisonRow> atOne : byPosition(rows)) {
      cells.add(List.of(position(atOne.get(0).what().at()) + ":", "", "", ""));
      for (ComparisonRow row : atOne) {
        cells.add(
            List.of(
                "  " + name(row.what().measure()),
                ofFirst.get(figures),
                ofSecond.get(figures),
                difference(row)));
        cells.add(List.of("", "", "", words(row)));
        figures++;
      }
    }
    lines.addAll(Layout.table(cells, 1));
    return lines;
  }

  /** Mean and spread of one of the two, under their heads, in the order of the table. */
  private static List<String> ofGroup(
      List<ComparisonRow> rows, Function<ComparisonRow, GroupSummary> of) {
    List<List<String>> cells = new ArrayList<>();
    cells.add(List.of(MEAN, SPREAD));
    for (ComparisonRow row : byPosition(rows).stream().flatMap(List::stream).toList()) {
      Measure measure = row.what().measure();
      cells.add(
          List.of(
              Figure.ifAny(of.apply(row).mean(), measure),
              Figure.ifAny(of.apply(row).spread(), measure)));
    }
    return Layout.table(cells, 0);
  }

  private static String difference(ComparisonRow row) {
    return row.difference()
        .map(d -> range(d.value(), d.low(), d.high(), row.what().measure()))
        .orElse(Figure.WITHHELD);
  }

  private static List<List<ComparisonRow>> byPosition(List<ComparisonRow> rows) {
    return grouped(rows, row -> row.what().at());
  }

  private static GroupSummary largest(Stream<GroupSummary> groups) {
    return groups.max(Comparator.comparingInt(GroupSummary::count)).orElseThrow();
  }

  /** A name that fits above its column, or which of the two in the title it is. */
  private static String head(GroupSummary summary, String which) {
    return summary.group().length() <= LONGEST_GROUP ? summary.group() : which;
  }

  /** How many more balls it takes to tell what is not told yet. */
  private static void further(List<String> lines, List<ComparisonRow> rows) {
    List<List<String>> cells = new ArrayList<>();
    cells.add(
        List.of(say("compare.further"), say("compare.further.of"), say("compare.further.balls")));
    for (ComparisonRow row : rows) {
      row.further()
          .ifPresent(
              more ->
                  cells.add(
                      List.of(
                          "  " + name(row.what()),
                          Figure.ifAny(more.difference(), row.what().measure()),
                          ComparisonWords.balls(more, Words.inUse()))));
    }
    if (cells.size() > 1) {
      lines.addAll(Layout.table(cells, 1));
      lines.add("");
    }
  }

  private static String name(MeasureAt what) {
    return name(what.measure()) + (what.at().isEmpty() ? "" : ", " + position(what.at()));
  }

  static String name(Measure measure) {
    String unit = PlainWords.unit(measure);
    int length = PlainWords.of(measure).length() + 1 + unit.length();
    return length <= LONGEST_NAME + 2 ? PlainWords.withUnit(measure) : measure.id();
  }

  static String position(String at) {
    return at.isEmpty() ? say("compare.whole-swing") : PlainWords.keyPosition(at);
  }

  static String range(double value, double low, double high, Measure measure) {
    return say(
        "unit.range",
        Figure.ifAny(value, measure),
        Figure.ifAny(low, measure),
        Figure.ifAny(high, measure));
  }

  private static String words(ComparisonRow row) {
    return say(
        "compare.cell." + row.verdict().word(), Decimals.cell(row.margin(), Decimals.OF_VALUE));
  }

  /** Typical error and detectable changes, one row a measure and position. */
  private static List<String> ownSpread(List<ComparisonRow> rows) {
    List<String> head = List.of("smallest", "typical", "two-single", "these");
    List<List<String>> cells = new ArrayList<>();
    cells.add(head.stream().map(word -> say("compare." + word)).toList());
    cells.add(head.stream().map(word -> say("compare." + word + ".below")).toList());
    for (ComparisonRow row : byPosition(rows).stream().flatMap(List::stream).toList()) {
      Measure measure = row.what().measure();
      cells.add(
          List.of(
              "  " + name(row.what()),
              row.typicalError().map(t -> Figure.ifAny(t.value(), measure)).orElse(Figure.WITHHELD),
              row.typicalError()
                  .map(t -> Figure.ifAny(t.detectableChange(), measure))
                  .orElse(Figure.WITHHELD),
              row.verdict() == ComparisonVerdict.TOO_FEW_SWINGS
                  ? Figure.WITHHELD
                  : row.difference()
                      .map(d -> Figure.ifAny(d.detectable(), measure))
                      .orElse(Figure.WITHHELD)));
    }
    return Layout.table(cells, 1);
  }

  private static List<String> howToRead() {
    List<String> lines = new ArrayList<>();
    lines.addAll(explained("compare.difference", "compare.read.difference"));
    lines.addAll(explained("compare.verdict.real", "compare.read.real"));
    lines.addAll(explained("compare.same-within", "compare.read.same"));
    lines.addAll(explained("compare.verdict.not-shown", "compare.read.not-shown"));
    lines.addAll(explained("compare.further.balls", "compare.read.further"));
    return lines;
  }

  private static List<String> explained(String name, String words) {
    return Layout.beside(say(name), TableReport.NAME_WIDTH, say(words));
  }
}
