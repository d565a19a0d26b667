package steadyturn.analysis.lab.mistake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lab.truth.SwingTruth;
import steadyturn.analysis.lab.truth.TrueMeasure;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.sample.Recording;

/**
 * Does every mistake to lessons and counts how often it is called by its name, and how often a
 * value that is given in spite of it misses the truth. Sound lessons go first: what is refused in
 * them is a false alarm.
 */
public final class MistakeStudy {

  /** No two swings lie so near, and no mistake moves one further, s. */
  private static final double SAME_SWING_S = 1.5;

  private static final LessonAnalyzer ANALYZER =
      new LessonAnalyzer(AnalysisSettings.defaults().withoutCurves());

  private MistakeStudy() {}

  /** What became of one lesson. */
  private record Outcome(long seed, boolean named, int swings, int values, int missed) {}

  /**
   * Runs so many lessons a mistake.
   *
   * @param only these of them, all where empty
   * @param afterEach called after each lesson, from any thread
   */
  public static List<MistakeRow> run(
      int lessons, long seed, Set<Mistake> only, Runnable afterEach) {
    List<Mistake> mistakes =
        Stream.of(Mistake.values()).filter(m -> only.isEmpty() || only.contains(m)).toList();
    List<List<Outcome>> outcomes =
        LongStream.range(seed, seed + lessons)
            .parallel()
            .mapToObj(
                s -> {
                  List<Outcome> all = lesson(s, mistakes);
                  afterEach.run();
                  return all;
                })
            .toList();
    return IntStream.rangeClosed(0, mistakes.size())
        .mapToObj(
            k ->
                row(
                    k == 0 ? MistakeRow.SOUND : mistakes.get(k - 1).word(),
                    outcomes.stream().map(all -> all.get(k)).toList()))
        .toList();
  }

  private static List<Outcome> lesson(long seed, List<Mistake> mistakes) {
    SyntheticLesson sound = SoundLessons.of(seed);
    List<Outcome> out = new ArrayList<>();
    out.add(outcome(sound, sound.recording(), 1, Optional.empty()));
    for (Mistake mistake : mistakes) {
      Recording wrong = mistake.in(sound.recording(), seed);
      out.add(outcome(sound, wrong, mistake.ofTime(), Optional.of(mistake)));
    }
    return out;
  }

  private static Outcome outcome(
      SyntheticLesson sound, Recording wrong, double ofTime, Optional<Mistake> mistake) {
    boolean losesPose = mistake.filter(Mistake::losesNeutralPose).isPresent();
    LessonResult result = ANALYZER.analyze(List.of(wrong)).get(0);
    List<Boolean> held =
        result.swings().stream().flatMap(swing -> held(swing, sound, ofTime, losesPose)).toList();
    return new Outcome(
        sound.truth().seed(),
        mistake.filter(m -> !m.isToBeNamed()).isPresent()
            || result.notices().stream()
                .anyMatch(notice -> mistake.map(m -> m.isNamed(notice)).orElse(notice.refuses())),
        (int) result.swings().stream().filter(MistakeStudy::says).count(),
        held.size(),
        (int) held.stream().filter(h -> !h).count());
  }

  private static boolean says(SwingResult swing) {
    return swing.measures().stream().anyMatch(MeasureValue::given);
  }

  /** Of each value given and true of the swing, whether its interval holds the truth. */
  private static Stream<Boolean> held(
      SwingResult swing, SyntheticLesson sound, double ofTime, boolean losesPose) {
    double impactS = swing.timeS(SwingEvent.IMPACT) / ofTime;
    Optional<SwingTruth> same =
        sound.truth().swings().stream()
            .filter(t -> Math.abs(t.eventS(SwingEvent.IMPACT).orElse(1e9) - impactS) < SAME_SWING_S)
            .findFirst();
    return same.stream()
        .flatMap(
            truth ->
                truth.truthMeasures().stream()
                    .flatMap(
                        its -> {
                          double is = its.value() - (losesPose ? zeroDeg(truth, its) : 0);
                          return swing.measure(its.measure(), its.at()).stream()
                              .filter(MeasureValue::given)
                              .map(v -> v.low() <= is && is <= v.high());
                        }));
  }

  /** What an angle of the wrist counts from where the neutral pose is lost, deg. */
  private static double zeroDeg(SwingTruth swing, TrueMeasure its) {
    if (!swing.absoluteWrist()) {
      return 0;
    }
    return switch (its.measure()) {
      case WRIST_COCK, WRIST_COCK_MAX -> Math.toDegrees(swing.addressCockRad());
      case WRIST_FLEXION -> Math.toDegrees(swing.addressFlexionRad());
      default -> 0;
    };
  }

  private static MistakeRow row(String name, List<Outcome> all) {
    List<Long> unnamed =
        all.stream()
            .filter(o -> o.named() == name.equals(MistakeRow.SOUND))
            .map(Outcome::seed)
            .toList();
    return new MistakeRow(
        name,
        all.size(),
        (int) all.stream().filter(Outcome::named).count(),
        unnamed,
        all.stream().mapToInt(Outcome::swings).sum(),
        all.stream().mapToInt(Outcome::values).sum(),
        all.stream().mapToInt(Outcome::missed).sum());
  }
}
