package steadyturn.analysis.lab.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lab.truth.SwingTruth;
import steadyturn.analysis.lab.truth.TrueMeasure;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;

/**
 * All measures of the pelvis, at the key positions as found, against the truth at the true ones.
 * Lessons run on all cores; the rows are the same whatever their order.
 */
public final class PelvisStudy {

  private static final double SAME_SWING_S = 0.3;
  private static final List<String> POSITIONS =
      List.of("lead-arm-level-back", "top", "lead-arm-level-down", "impact", "");

  private final StudyCase study;
  private final Map<String, ErrorTally> tallies = new LinkedHashMap<>();
  private final Map<String, String> units = new LinkedHashMap<>();
  private int planned;
  private int found;
  private int flaggedNotStill;

  private PelvisStudy(StudyCase study) {
    this.study = study;
  }

  /**
   * Runs one case.
   *
   * @param lessons how many lessons
   * @param seed of the first lesson; the next lessons follow
   * @param afterEach called once a lesson, from any thread
   */
  public static List<StudyRow> run(StudyCase study, int lessons, long seed, Runnable afterEach) {
    PelvisStudy out = new PelvisStudy(study);
    IntStream.range(0, lessons)
        .parallel()
        .mapToObj(
            i -> {
              List<Compared> swings = compare(study, study.lesson(seed + i));
              afterEach.run();
              return swings;
            })
        .toList()
        .forEach(swings -> swings.forEach(out::add));
    return out.rows();
  }

  /** One planned swing with what was found of it; no result when it was missed. */
  private record Compared(SwingTruth truth, Optional<SwingResult> result) {}

  private static List<Compared> compare(StudyCase study, SyntheticLesson lesson) {
    List<SwingResult> results =
        new LessonAnalyzer(study.settings()).analyze(List.of(lesson.recording())).get(0).swings();
    List<Compared> out = new ArrayList<>();
    for (SwingTruth truth : lesson.truth().swings()) {
      double impactS = truth.eventS(SwingEvent.IMPACT).orElseThrow();
      out.add(
          new Compared(
              truth,
              results.stream()
                  .filter(
                      r -> impact(r).filter(t -> Math.abs(t - impactS) < SAME_SWING_S).isPresent())
                  .findFirst()));
    }
    return out;
  }

  private static Optional<Double> impact(SwingResult result) {
    return EventTime.of(SwingEvent.IMPACT, result.events()).map(EventTime::timeS);
  }

  private void add(Compared swing) {
    planned++;
    if (swing.result().isEmpty()) {
      return;
    }
    found++;
    SwingResult result = swing.result().get();
    flaggedNotStill += result.flags().contains("address-not-still") ? 1 : 0;
    Map<String, Double> truths = new LinkedHashMap<>();
    for (TrueMeasure t : swing.truth().truthMeasures()) {
      truths.put(key(t.measure(), t.at()), t.value());
    }
    for (MeasureValue value : result.measures()) {
      Double truth = truths.get(key(value.measure(), value.at()));
      if (truth != null && value.given() && counted(value)) {
        add(value, truth);
      }
    }
    for (String at : List.of("top", "impact")) {
      addCentre(result, truths, at);
    }
  }

  private static boolean counted(MeasureValue value) {
    return value.measure().id().startsWith("pelvis.") && POSITIONS.contains(value.at());
  }

  private void add(MeasureValue value, double truth) {
    String key = key(value.measure(), value.at());
    units.put(key, value.measure().unit());
    ErrorTally tally = tallies.computeIfAbsent(key, k -> new ErrorTally());
    if (Double.isInfinite(value.high())) {
      // "at least": only whether it held says anything
      tally.addHeld(value.low() <= truth);
    } else {
      tally.add(value.value(), value.low(), value.high(), truth);
    }
  }

  /** Distance between the point turned about and the true one. */
  private void addCentre(SwingResult result, Map<String, Double> truths, String at) {
    Optional<MeasureValue> along = result.measure(Measure.PELVIS_CENTRE_ALONG, at);
    Optional<MeasureValue> across = result.measure(Measure.PELVIS_CENTRE_ACROSS, at);
    Double trueAlong = truths.get(key(Measure.PELVIS_CENTRE_ALONG, at));
    Double trueAcross = truths.get(key(Measure.PELVIS_CENTRE_ACROSS, at));
    if (along.filter(MeasureValue::given).isEmpty()
        || across.filter(MeasureValue::given).isEmpty()
        || trueAlong == null
        || trueAcross == null) {
      return;
    }
    String key = "pelvis.centre @ " + at;
    units.put(key, "mm");
    tallies
        .computeIfAbsent(key, k -> new ErrorTally())
        .add(Math.hypot(along.get().value() - trueAlong, across.get().value() - trueAcross));
  }

  private static String key(Measure measure, String at) {
    return measure.id() + (at.isEmpty() ? "" : " @ " + at);
  }

  private List<StudyRow> rows() {
    List<StudyRow> rows = new ArrayList<>();
    double missedPct = 100.0 * (planned - found) / Math.max(1, planned);
    rows.add(StudyRow.share(study.name(), "swings not found", planned, missedPct, 1));
    double flaggedPct = 100.0 * flaggedNotStill / Math.max(1, found);
    rows.add(
        StudyRow.share(study.name(), "flagged address-not-still", found, flaggedPct, Double.NaN));
    tallies.values().removeIf(tally -> tally.n() < found / 5);
    tallies.forEach(
        (key, tally) -> {
          StudyCase.Level level =
              study.levels().getOrDefault(key, new StudyCase.Level(Double.NaN, Double.NaN));
          rows.add(
              tally.row(study.name(), key, units.getOrDefault(key, ""), level.must(), level.aim()));
        });
    return rows;
  }
}
