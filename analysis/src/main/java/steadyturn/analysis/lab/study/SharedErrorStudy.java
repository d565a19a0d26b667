package steadyturn.analysis.lab.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.LongStream;
import org.apache.commons.math3.distribution.FDistribution;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.compare.SharedErrorRow;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lab.truth.SwingTruth;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingEvent;

/**
 * Splits the errors of simulated lessons into what the swings of a lesson share and what each has
 * of its own (one-way random effects: Shrout and Fleiss 1979, Intraclass correlations: uses in
 * assessing rater reliability, Psychol Bull 86:420-428, case 1; from memory).
 */
public final class SharedErrorStudy {

  private static final double SAME_S = 0.3;
  private static final int FEWEST_SWINGS = 3;

  /** Swings whose intervals are widened for a reason of their own stay out. */
  private static final Set<String> APART =
      Set.of(
          "address-not-still",
          "address-short",
          "finish-not-held",
          "off-the-lesson",
          "pelvis-only",
          "arm-gap",
          "gyro-beyond-repair",
          "wrist-units-disagree");

  private final String units;

  /** Errors of one measure, a list a lesson. */
  private final Map<MeasureAt, List<double[]>> errors = new LinkedHashMap<>();

  private SharedErrorStudy(String units) {
    this.units = units;
  }

  /**
   * Simulates and analyses lessons.
   *
   * @param looks the measures to split
   * @param seed of the first lesson; the next lessons follow
   */
  public static List<SharedErrorRow> run(
      LessonSpec spec, List<MeasureAt> looks, int lessons, long seed) {
    SharedErrorStudy study = new SharedErrorStudy(spec.unitGrade().name().toLowerCase(Locale.ROOT));
    looks.forEach(what -> study.errors.put(what, new ArrayList<>()));
    LongStream.range(seed, seed + lessons)
        .mapToObj(each -> LessonSimulator.simulate(spec, each))
        .forEach(study::add);
    List<SharedErrorRow> parts = new ArrayList<>();
    study.errors.forEach(
        (what, byLesson) -> part(study.units, what, byLesson).ifPresent(parts::add));
    return parts;
  }

  private void add(SyntheticLesson lesson) {
    List<SwingResult> swings =
        new LessonAnalyzer(AnalysisSettings.defaults().withoutCurves())
            .analyze(List.of(lesson.recording()))
            .get(0)
            .swings();
    errors.forEach(
        (what, byLesson) -> {
          double[] own =
              lesson.truth().swings().stream()
                  .flatMap(truth -> error(what, truth, swings).stream())
                  .mapToDouble(Double::doubleValue)
                  .toArray();
          if (own.length >= FEWEST_SWINGS) {
            byLesson.add(own);
          }
        });
  }

  private static Optional<Double> error(
      MeasureAt what, SwingTruth truth, List<SwingResult> swings) {
    double impactS = truth.eventS(SwingEvent.IMPACT).orElse(Double.NaN);
    return swings.stream()
        .filter(swing -> Math.abs(swing.timeS(SwingEvent.IMPACT) - impactS) < SAME_S)
        .filter(swing -> swing.flags().stream().noneMatch(APART::contains))
        .findFirst()
        .flatMap(swing -> swing.measure(what.measure(), what.at()))
        .filter(MeasureValue::given)
        .flatMap(
            value ->
                truth
                    .truth(what.measure(), what.at())
                    .map(expected -> value.value() - expected.value()));
  }

  /** Analysis of variance of errors in groups of any sizes; empty with under three lessons. */
  static Optional<SharedErrorRow> part(String units, MeasureAt what, List<double[]> byLesson) {
    int k = byLesson.size();
    if (k < 3) {
      return Optional.empty();
    }
    double n = 0;
    double squaresOfSizes = 0;
    double total = 0;
    for (double[] lesson : byLesson) {
      n += lesson.length;
      squaresOfSizes += (double) lesson.length * lesson.length;
      total += sum(lesson);
    }
    double between = 0;
    double within = 0;
    for (double[] lesson : byLesson) {
      double mean = sum(lesson) / lesson.length;
      between += lesson.length * (mean - total / n) * (mean - total / n);
      for (double error : lesson) {
        within += (error - mean) * (error - mean);
      }
    }
    double usualSize = (n - squaresOfSizes / n) / (k - 1);
    double meanBetween = between / (k - 1);
    double meanWithin = within / (n - k);
    var f = new FDistribution(k - 1, n - k);
    double ratio = meanBetween / meanWithin;
    return Optional.of(
        new SharedErrorRow(
            units,
            what,
            k,
            (int) n,
            share(ratio, usualSize),
            share(ratio / f.inverseCumulativeProbability(0.975), usualSize),
            share(ratio / f.inverseCumulativeProbability(0.025), usualSize),
            Math.sqrt(Math.max(0, meanBetween - meanWithin) / usualSize),
            Math.sqrt(meanWithin)));
  }

  private static double share(double ratio, double size) {
    return Math.max(0, (ratio - 1) / (ratio - 1 + size));
  }

  private static double sum(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum;
  }

  /** Every measure, at the top and at impact where it has key positions. */
  public static List<MeasureAt> looks() {
    List<MeasureAt> looks = new ArrayList<>();
    for (Measure measure : Measure.values()) {
      for (String at : positions(measure)) {
        looks.add(new MeasureAt(measure, at));
      }
    }
    return List.copyOf(looks);
  }

  private static List<String> positions(Measure measure) {
    return switch (measure) {
      case PELVIS_TURN_TO_SLIDE, ORDER_THORAX -> List.of(); // no error worth splitting, no unit
      case WRIST_KEPT ->
          List.of(SwingEvent.LEAD_ARM_LEVEL_DOWN.word(), SwingEvent.SHAFT_LEVEL_DOWN.word());
      case PELVIS_CIRCLE -> List.of("");
      case WRIST_COCK, WRIST_FLEXION -> List.of(SwingEvent.TOP.word(), SwingEvent.IMPACT.word());
      default ->
          measure.id().startsWith("pelvis.")
              ? List.of(SwingEvent.TOP.word(), SwingEvent.IMPACT.word())
              : List.of("");
    };
  }
}
