package steadyturn.cli.output.table;

import static steadyturn.cli.words.Words.say;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.apache.commons.math3.stat.StatUtils;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;

/** The lesson at a glance: one row a swing, swings of one club and kind together. */
final class LessonTable {

  /** Fewer swings than this have no mean worth printing (our choice). */
  private static final int ENOUGH_FOR_A_MEAN = 3;

  private final List<SwingResult> swings;
  private final List<Column> columns;

  LessonTable(List<SwingResult> swings) {
    this.swings = swings;
    this.columns = Column.OF_A_LESSON.stream().filter(c -> c.isGivenIn(swings)).toList();
  }

  boolean shows(Measure measure) {
    return columns.stream().anyMatch(c -> c.measure() == measure);
  }

  boolean shows(Grade grade) {
    return swings.stream()
        .flatMap(swing -> columns.stream().flatMap(c -> c.value(swing).stream()))
        .anyMatch(value -> value.grade() == grade);
  }

  boolean hasMeans() {
    return groups().values().stream().anyMatch(group -> group.size() >= ENOUGH_FOR_A_MEAN);
  }

  private Map<String, List<SwingResult>> groups() {
    return swings.stream()
        .collect(
            Collectors.groupingBy(LessonTable::title, LinkedHashMap::new, Collectors.toList()));
  }

  List<String> lines() {
    if (swings.isEmpty()) {
      return List.of(say("table.no-swing"));
    }
    List<List<String>> rows = new ArrayList<>();
    rows.add(row("", Column::group));
    rows.add(row("swing", Column::head));
    Map<Integer, String> titles = new LinkedHashMap<>();
    groups()
        .forEach(
            (title, group) -> {
              titles.put(rows.size(), title);
              rows.add(row("", c -> ""));
              addGroup(rows, group);
            });
    List<String> lines = new ArrayList<>(Layout.table(rows, 1));
    titles.forEach(lines::set); // a title is wider than the column it stands over
    return lines;
  }

  private void addGroup(List<List<String>> rows, List<SwingResult> group) {
    for (SwingResult swing : group) {
      String mark = flagsToTell(swing).isEmpty() ? "" : " !";
      rows.add(row("  " + swing.number() + mark, c -> c.cell(swing)));
    }
    List<SwingResult> counting = group.stream().filter(SwingResult::counts).toList();
    if (counting.size() >= ENOUGH_FOR_A_MEAN) {
      rows.add(row("  mean", c -> summary(c, counting, StatUtils::mean)));
      rows.add(row("  spread", c -> summary(c, counting, LessonTable::spread)));
    }
  }

  private List<String> row(String first, Function<Column, String> cell) {
    List<String> row = new ArrayList<>(List.of(first));
    columns.forEach(c -> row.add(cell.apply(c)));
    return row;
  }

  /** The flags that need a word: a virtual impact is told by the ~ of its values already. */
  static List<String> flagsToTell(SwingResult swing) {
    return swing.flags().stream().filter(flag -> !flag.equals("impact-virtual")).toList();
  }

  static String title(SwingResult swing) {
    String club = swing.club().isBlank() ? say("table.no-club") : swing.club();
    return club + ", " + say("table.kind." + swing.kind().word());
  }

  private static String summary(
      Column column, List<SwingResult> group, ToDoubleFunction<double[]> of) {
    double[] values =
        group.stream()
            .flatMap(s -> column.value(s).stream())
            .filter(MeasureValue::given)
            .mapToDouble(MeasureValue::value)
            .toArray();
    return values.length < ENOUGH_FOR_A_MEAN
        ? Figure.WITHHELD
        : Figure.nearest(of.applyAsDouble(values), column.measure());
  }

  /** Standard deviation between swings, with n - 1. */
  private static double spread(double[] values) {
    return Math.sqrt(StatUtils.variance(values));
  }
}
