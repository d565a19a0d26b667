package steadyturn.analysis.lab.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;

/**
 * Lays dropouts on lessons, one at a time, and holds every value against its twin from the whole
 * lesson: what moves must say so, what does not need the lost samples must stay.
 */
public final class DropoutStudy {

  private static final double SHORTEST_S = 0.02;
  private static final double LONGEST_S = 2;
  private static final double LONG_S = 12;
  private static final double[] BANDS_S = {0, 0.06, 0.2, 0.6, 2.01};
  private static final List<BodyPoint> UNITS =
      List.of(BodyPoint.PELVIS, BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND);

  /**
   * What came out.
   *
   * @param rows by length of the dropout, then all together
   * @param worst the values that went most wrong, for people
   */
  public record Findings(List<DropoutRow> rows, List<String> worst) {}

  /** A lesson with its results as it is. */
  private record Lesson(List<Recording> recordings, List<LessonResult> twins) {}

  private final List<Lesson> lessons = new ArrayList<>();
  private final RandomGenerator draw;
  private final Runnable afterEach;
  private final List<DropoutOutcome> outcomes = new ArrayList<>();

  /**
   * Prepares a study.
   *
   * @param seed of the dropouts
   * @param afterEach called once a case
   */
  public DropoutStudy(List<List<Recording>> lessons, long seed, Runnable afterEach) {
    lessons.forEach(l -> this.lessons.add(new Lesson(l, analyzed(l))));
    this.draw = new Well19937c(seed);
    this.afterEach = afterEach;
  }

  /** Simulated lessons of a few swings each, for a study. */
  public static List<List<Recording>> simulated(int lessons, long seed) {
    LessonSpec spec =
        LessonSpec.standard().withHits(2).withPractices(1).withWaggles(0).withWalking(false);
    List<List<Recording>> out = new ArrayList<>();
    for (int i = 0; i < lessons; i++) {
      LessonSpec one = i % 2 == 0 ? spec : spec.withRateHz(200);
      out.add(List.of(LessonSimulator.simulate(one, seed + i).recording()));
    }
    return out;
  }

  private static List<LessonResult> analyzed(List<Recording> lesson) {
    return new LessonAnalyzer(AnalysisSettings.defaults().withoutCurves()).analyze(lesson);
  }

  /** Dropouts of 0.02 to 2 s; units, phases and lessons take turns, the rest is drawn. */
  public DropoutStudy lay(int cases) {
    for (int i = 0; i < cases; i++) {
      BodyPoint unit = UNITS.get(i % UNITS.size());
      DropoutPhase[] phases = DropoutPhase.values();
      DropoutPhase phase = phases[i / UNITS.size() % phases.length];
      Lesson lesson = lessons.get(i % lessons.size());
      SwingResult swing = swing(lesson);
      double lengthS = SHORTEST_S * Math.pow(LONGEST_S / SHORTEST_S, draw.nextDouble());
      double middleS = phase.instantS(swing, draw.nextDouble());
      Dropout lost = new Dropout(unit, form(), draw.nextInt(3), middleS - lengthS / 2, lengthS);
      run(lesson, "swing " + swing.number() + ", " + phase.word() + ": " + lost, lost);
    }
    return this;
  }

  /** One axis of one unit lost for 12 s: every unit, sensor and axis in turn. */
  public DropoutStudy layLong(int cases) {
    for (int i = 0; i < cases; i++) {
      Lesson lesson = lessons.get(i % lessons.size());
      double impactS = DropoutPhase.timeS(swing(lesson), SwingEvent.IMPACT);
      Dropout.Form form =
          i / UNITS.size() % 2 == 0 ? Dropout.Form.ONE_GYRO_AXIS : Dropout.Form.ONE_ACCEL_AXIS;
      double fromS = impactS - LONG_S * draw.nextDouble();
      Dropout lost = new Dropout(UNITS.get(i % UNITS.size()), form, i / 6 % 3, fromS, LONG_S);
      run(lesson, lost.toString(), lost);
    }
    return this;
  }

  private SwingResult swing(Lesson lesson) {
    List<SwingResult> swings = lesson.twins.stream().flatMap(t -> t.swings().stream()).toList();
    return swings.get(draw.nextInt(swings.size()));
  }

  /** Lost lines and lost values as often; of these, one axis alone as often as all. */
  private Dropout.Form form() {
    double part = draw.nextDouble();
    if (part < 0.4) {
      return Dropout.Form.LINES;
    }
    if (part < 0.7) {
      return Dropout.Form.ALL_VALUES;
    }
    return part < 0.85 ? Dropout.Form.ONE_GYRO_AXIS : Dropout.Form.ONE_ACCEL_AXIS;
  }

  private void run(Lesson lesson, String where, Dropout lost) {
    try {
      List<LessonResult> results = analyzed(lost.laidOn(lesson.recordings));
      outcomes.add(DropoutOutcome.of(where, lost, lesson.twins, results));
    } catch (RuntimeException e) {
      outcomes.add(DropoutOutcome.failed(where, lost, e));
    }
    afterEach.run();
  }

  public Findings findings(int worst) {
    List<DropoutRow> rows = new ArrayList<>();
    for (int i = 1; i < BANDS_S.length; i++) {
      String name = String.format(Locale.ROOT, "%.2f to %.2f s", BANDS_S[i - 1], BANDS_S[i]);
      double from = BANDS_S[i - 1];
      double to = BANDS_S[i];
      addRow(rows, name, o -> o.lengthS() >= from && o.lengthS() < to);
    }
    addRow(rows, "axis-12-s", o -> o.lengthS() == LONG_S);
    addRow(rows, "all", o -> true);
    return new Findings(rows, worst(worst));
  }

  private void addRow(List<DropoutRow> rows, String name, Predicate<DropoutOutcome> which) {
    List<DropoutOutcome> chosen = outcomes.stream().filter(which).toList();
    if (!chosen.isEmpty()) {
      rows.add(DropoutRow.of(name, chosen));
    }
  }

  private List<String> worst(int most) {
    List<String> out = new ArrayList<>();
    outcomes.stream()
        .filter(o -> !o.failure().isEmpty())
        .limit(most)
        .forEach(o -> out.add("no-result: " + o.where() + ": " + o.failure()));
    add(out, "in-silence", most, DropoutChange::withoutAWord, DropoutChange::moved);
    add(out, "missed", most, c -> c.missed() && !c.withoutAWord(), DropoutStudy::off);
    add(out, "withheld-needlessly", most, DropoutChange::withheldForNothing, c -> 0);
    for (DropoutOutcome o : outcomes) {
      o.elsewhere().stream()
          .filter(c -> c.moved() > 0.5)
          .max(Comparator.comparingDouble(DropoutChange::moved))
          .ifPresent(c -> out.add("elsewhere: " + o.where() + ": " + c));
      if (o.lostInSilence() + o.lostForNothing() + o.swingsInvented() > 0) {
        out.add("swings-differ: " + o.where());
      }
    }
    return out;
  }

  /** How far outside its own interval the twin lies, in half-widths. */
  private static double off(DropoutChange change) {
    return change.moved() / change.widened();
  }

  private void add(
      List<String> out,
      String what,
      int most,
      Predicate<DropoutChange> which,
      ToDoubleFunction<DropoutChange> size) {
    record Found(String where, DropoutChange change) {}
    outcomes.stream()
        .flatMap(o -> o.changes().stream().filter(which).map(c -> new Found(o.where(), c)))
        .sorted(Comparator.comparingDouble((Found f) -> -size.applyAsDouble(f.change)))
        .limit(most)
        .forEach(f -> out.add(what + ": " + f.where + ": " + f.change));
  }
}
