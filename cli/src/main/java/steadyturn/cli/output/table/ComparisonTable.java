package steadyturn.cli.output.table;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import steadyturn.analysis.compare.Comparison;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.ComparisonVerdict;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeanDifference;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.output.Decimals;
import steadyturn.cli.words.PlainWords;
import steadyturn.cli.words.Words;

/** A comparison of groups for people, at most 100 columns wide. */
public final class ComparisonTable {

  private static final int LONGEST_NAME = 22;
  private static final int LONGEST_GROUP = 12;
  private static final String NONE = "-";
  private static final String MEAN = Words.say("compare.mean");
  private static final String SPREAD = Words.say("compare.spread");

  private ComparisonTable() {}

  /** Writes one table a pair of groups and what is needed to read it; leaves the writer open. */
  public static void write(Comparison comparison, Writer to) throws IOException {
    List<String> lines = new ArrayList<>();
    for (List<ComparisonRow> pair : pairs(comparison)) {
      lines.addAll(pair(pair));
      lines.add("");
    }
    lines.addAll(ownSpread(pairs(comparison).get(0)));
    lines.add("");
    comparison
        .notices()
        .forEach(notice -> lines.addAll(Layout.beside("*", 2, Words.inUse().text(notice))));
    lines.addAll(howToRead());
    lines.addAll(Cautions.afterATable());
    for (String line : lines) {
      to.write(line + "\n");
    }
  }

  private static List<List<ComparisonRow>> pairs(Comparison comparison) {
    Map<List<String>, List<ComparisonRow>> pairs = new LinkedHashMap<>();
    for (ComparisonRow row : comparison.rows()) {
      List<String> names = List.of(row.first().group(), row.second().group());
      pairs.computeIfAbsent(names, key -> new ArrayList<>()).add(row);
    }
    return List.copyOf(pairs.values());
  }

  private static List<String> pair(List<ComparisonRow> rows) {
    List<String> lines = new ArrayList<>();
    GroupSummary first = largest(rows, true);
    GroupSummary second = largest(rows, false);
    lines.addAll(
        Layout.wrapped(
            Words.say(
                "compare.against", first.group(), swings(first), second.group(), swings(second)),
            Layout.WIDTH));
    List<List<String>> cells = new ArrayList<>();
    String a = shortened(first.group());
    String b = shortened(second.group());
    cells.add(List.of("", a, "", b, "", Words.say("compare.difference"), ""));
    cells.add(List.of("", MEAN, SPREAD, MEAN, SPREAD, Words.say("compare.range"), ""));
    String at = "none yet";
    for (ComparisonRow row : byPosition(rows)) {
      if (!row.what().at().equals(at)) {
        at = row.what().at();
        cells.add(List.of(position(at) + ":", "", "", "", "", "", ""));
      }
      cells.add(cells(row));
    }
    lines.addAll(Layout.table(cells, 1));
    return lines;
  }

  private static List<ComparisonRow> byPosition(List<ComparisonRow> rows) {
    Map<String, List<ComparisonRow>> byPosition = new LinkedHashMap<>();
    rows.forEach(
        row -> byPosition.computeIfAbsent(row.what().at(), at -> new ArrayList<>()).add(row));
    return byPosition.values().stream().flatMap(List::stream).toList();
  }

  private static GroupSummary largest(List<ComparisonRow> rows, boolean first) {
    return rows.stream()
        .map(row -> first ? row.first() : row.second())
        .max((x, y) -> Integer.compare(x.count(), y.count()))
        .orElseThrow();
  }

  private static String swings(GroupSummary group) {
    return Swings.count(group.count());
  }

  private static String shortened(String group) {
    return group.length() <= LONGEST_GROUP ? group : group.substring(0, LONGEST_GROUP - 1) + "~";
  }

  private static List<String> cells(ComparisonRow row) {
    Measure measure = row.what().measure();
    return List.of(
        "  " + name(measure),
        number(row.first().mean(), measure),
        number(row.first().spread(), measure),
        number(row.second().mean(), measure),
        number(row.second().spread(), measure),
        row.difference().map(d -> range(d, measure)).orElse(NONE),
        words(row));
  }

  static String name(Measure measure) {
    String name = PlainWords.of(measure) + " " + PlainWords.unit(measure);
    return name.length() <= LONGEST_NAME + 2 ? name.strip() : measure.id();
  }

  static String position(String at) {
    return at.isEmpty() ? Words.say("compare.whole-swing") : PlainWords.keyPosition(at);
  }

  private static String range(MeanDifference d, Measure measure) {
    return range(d.value(), d.low(), d.high(), measure);
  }

  static String range(double value, double low, double high, Measure measure) {
    return Words.say(
        "unit.range", number(value, measure), number(low, measure), number(high, measure));
  }

  private static String words(ComparisonRow row) {
    return Words.say(
        "compare.cell." + row.verdict().word(), Decimals.cell(row.margin(), Decimals.OF_VALUE));
  }

  private static String number(double number, Measure measure) {
    return Double.isFinite(number) ? Figure.nearest(number, measure) : NONE;
  }

  /** Typical error and detectable changes, one row a measure and position. */
  private static List<String> ownSpread(List<ComparisonRow> rows) {
    List<List<String>> cells = new ArrayList<>();
    cells.add(
        List.of(
            Words.say("compare.smallest"),
            Words.say("compare.typical"),
            Words.say("compare.two-single"),
            Words.say("compare.these")));
    cells.add(
        List.of(
            Words.say("compare.smallest.below"),
            Words.say("compare.typical.below"),
            Words.say("compare.two-single.below"),
            Words.say("compare.these.below")));
    for (ComparisonRow row : byPosition(rows)) {
      Measure measure = row.what().measure();
      String at = row.what().at().isEmpty() ? "" : ", " + position(row.what().at());
      cells.add(
          List.of(
              "  " + name(measure) + at,
              row.typicalError().map(t -> number(t.value(), measure)).orElse(NONE),
              row.typicalError().map(t -> number(t.detectableChange(), measure)).orElse(NONE),
              row.verdict() == ComparisonVerdict.TOO_FEW_SWINGS
                  ? NONE
                  : row.difference().map(d -> number(d.detectable(), measure)).orElse(NONE)));
    }
    return Layout.table(cells, 1);
  }

  private static List<String> howToRead() {
    List<String> lines = new ArrayList<>();
    int width = TableReport.NAME_WIDTH;
    lines.addAll(
        Layout.beside(
            Words.say("compare.difference"), width, Words.say("compare.read.difference")));
    lines.addAll(
        Layout.beside(Words.say("compare.verdict.real"), width, Words.say("compare.read.real")));
    lines.addAll(
        Layout.beside(Words.say("compare.same-within"), width, Words.say("compare.read.same")));
    lines.addAll(
        Layout.beside(
            Words.say("compare.verdict.not-shown"), width, Words.say("compare.read.not-shown")));
    return lines;
  }
}
