package steadyturn.analysis.lab.study;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import steadyturn.analysis.lab.FamilyLessons;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lab.family.Half;
import steadyturn.analysis.lab.family.Situation;
import steadyturn.analysis.lab.truth.SwingTruth;
import steadyturn.analysis.lab.truth.TrueMeasure;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;

/**
 * Lessons of families through the whole analysis: every value and every key position against the
 * truth. Lessons run on all cores; the table is the same whatever their order, and each seed stands
 * for itself.
 */
public final class FamilyStudy {

  private static final double SAME_SWING_S = 0.3;
  private static final LessonAnalyzer ANALYZER =
      new LessonAnalyzer(AnalysisSettings.defaults().withoutCurves());

  private final Map<String, Cell> cells = new LinkedHashMap<>();
  private final Map<String, Integer> flags = new TreeMap<>();
  private int planned;
  private int found;
  private int taken;

  /** One value over all lessons. */
  private static final class Cell {
    private final String unit;
    private final ErrorTally tally = new ErrorTally();
    private int asked;
    private int given;
    private long worstSeed;
    private double worst;

    private Cell(String unit) {
      this.unit = unit;
    }

    private FamilyRow row(String name) {
      double withheldPct = 100.0 * (asked - given) / Math.max(1, asked);
      return new FamilyRow(
          name,
          unit,
          asked,
          withheldPct,
          tally.rmse(),
          tally.bias(),
          tally.halfWidth(),
          tally.coveragePct(),
          worstSeed);
    }

    private void add(double value, double low, double high, double truth, long seed) {
      tally.add(value, low, high, truth);
      double off = Math.abs(value - truth) / Math.max(1e-12, (high - low) / 2);
      if (off > worst) {
        worst = off;
        worstSeed = seed;
      }
    }
  }

  /** A lesson's swings with what was found of each, and how much else was found. */
  private record Judged(
      long seed, List<SwingTruth> truths, List<Optional<SwingResult>> results, int taken) {}

  private FamilyStudy() {}

  /**
   * Runs one situation.
   *
   * @param seed of the first lesson; the next lessons follow
   * @param afterEach called once a lesson, from any thread
   */
  public static FamilyTable run(
      Situation situation, Half half, int lessons, long seed, Runnable afterEach) {
    FamilyStudy study = new FamilyStudy();
    IntStream.range(0, lessons)
        .parallel()
        .mapToObj(
            i -> {
              Judged judged = judge(FamilyLessons.simulate(situation, half, seed + i));
              afterEach.run();
              return judged;
            })
        .toList()
        .forEach(study::add);
    return study.table(situation, lessons);
  }

  private static Judged judge(SyntheticLesson lesson) {
    List<SwingResult> results = ANALYZER.analyze(List.of(lesson.recording())).get(0).swings();
    List<Optional<SwingResult>> matched = new ArrayList<>();
    Set<SwingResult> used = new HashSet<>();
    for (SwingTruth truth : lesson.truth().swings()) {
      double impactS = truth.eventS(SwingEvent.IMPACT).orElseThrow();
      Optional<SwingResult> match =
          results.stream()
              .filter(r -> Math.abs(r.timeS(SwingEvent.IMPACT) - impactS) < SAME_SWING_S)
              .findFirst();
      match.ifPresent(used::add);
      matched.add(match);
    }
    return new Judged(
        lesson.truth().seed(), lesson.truth().swings(), matched, results.size() - used.size());
  }

  private void add(Judged lesson) {
    taken += lesson.taken();
    for (int i = 0; i < lesson.truths().size(); i++) {
      planned++;
      SwingTruth truth = lesson.truths().get(i);
      lesson.results().get(i).ifPresent(r -> compare(truth, r, lesson.seed()));
    }
  }

  private void compare(SwingTruth truth, SwingResult result, long seed) {
    found++;
    result.flags().forEach(flag -> flags.merge(flag, 1, Integer::sum));
    truth.eventsS().forEach((event, timeS) -> compare(event, timeS, result, seed));
    for (TrueMeasure measure : truth.truthMeasures()) {
      String at = measure.at().isEmpty() ? "" : " @ " + measure.at();
      Cell cell = cell(measure.measure().id() + at, measure.measure().unit());
      cell.asked++;
      result
          .measure(measure.measure(), measure.at())
          .filter(MeasureValue::given)
          .ifPresent(value -> add(cell, value, measure.value(), seed));
    }
  }

  private Cell cell(String name, String unit) {
    return cells.computeIfAbsent(name, n -> new Cell(unit));
  }

  private void compare(SwingEvent event, double trueS, SwingResult result, long seed) {
    Cell cell = cell("time @ " + event.word(), "ms");
    cell.asked++;
    EventTime.of(event, result.events())
        .ifPresent(
            e -> {
              cell.given++;
              double half = 1000 * MeasureValue.Z95 * e.sdS();
              double ms = 1000 * e.timeS();
              cell.add(ms, ms - half, ms + half, 1000 * trueS, seed);
            });
  }

  private static void add(Cell cell, MeasureValue value, double truth, long seed) {
    cell.given++;
    if (Double.isInfinite(value.high())) {
      // "at least": only whether it held says anything
      cell.tally.addHeld(value.low() <= truth);
    } else {
      cell.add(value.value(), value.low(), value.high(), truth, seed);
    }
  }

  private FamilyTable table(Situation situation, int lessons) {
    List<FamilyRow> rows = new ArrayList<>();
    cells.forEach(
        (name, cell) -> {
          if (cell.given >= found / 5 && cell.tally.n() > 0) {
            rows.add(cell.row(name));
          }
        });
    Map<String, Double> flagsPct = new TreeMap<>();
    flags.forEach((flag, n) -> flagsPct.put(flag, 100.0 * n / Math.max(1, found)));
    double foundPct = 100.0 * found / Math.max(1, planned);
    return new FamilyTable(situation, lessons, planned, foundPct, taken, flagsPct, rows);
  }
}
