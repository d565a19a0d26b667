package steadyturn.analysis.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.synthetic.LessonSimulator;
import steadyturn.analysis.synthetic.LessonSpec;
import steadyturn.analysis.synthetic.SyntheticLesson;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;

/** Stretches of the pelvis unit are lost: what it costs, and whom. */
class PelvisGapTest {

  private static final List<Measure> LOOKED_AT =
      List.of(
          Measure.PELVIS_TURN,
          Measure.PELVIS_SLIDE,
          Measure.PELVIS_THRUST,
          Measure.PELVIS_LIFT,
          Measure.PELVIS_TILT,
          Measure.PELVIS_SIDETILT);

  private static SyntheticLesson lesson(long seed, int hits) {
    LessonSpec spec =
        LessonSpec.standard().withHits(hits).withPractices(0).withWaggles(0).withWalking(false);
    return LessonSimulator.simulate(spec.withLossPct(0), seed);
  }

  private static List<SwingResult> analyze(Recording recording) {
    return new LessonAnalyzer(AnalysisSettings.defaults().withoutCurves())
        .analyze(List.of(recording))
        .get(0)
        .swings();
  }

  @Test
  void scan() {
    SplittableRandom random = new SplittableRandom(5);
    double[] lengths = {0.1, 0.2, 0.3, 0.5};
    for (Dropout.Kind kind : List.of(Dropout.Kind.LINES, Dropout.Kind.ONE_FORCE)) {
      for (double length : lengths) {
        List<Double> moved = new ArrayList<>();
        List<Double> errors = new ArrayList<>();
        List<Double> wider = new ArrayList<>();
        int withheld = 0;
        int all = 0;
        String worst = "";
        double most = 0;
        for (long seed = 1; seed <= 3; seed++) {
          SyntheticLesson lesson = lesson(seed, 3);
          List<SwingResult> twin = analyze(lesson.recording());
          for (int i = 0; i < 4; i++) {
            double takeawayS =
                lesson.truth().swings().get(1).eventS(SwingEvent.TAKEAWAY).orElseThrow();
            double impactS = lesson.truth().swings().get(1).eventS(SwingEvent.IMPACT).orElseThrow();
            double at = takeawayS - 0.3 + random.nextDouble() * (impactS - takeawayS + 0.5);
            Recording cut =
                Dropout.of(
                    lesson.recording(), BodyPoint.PELVIS, kind, at - length / 2, at + length / 2);
            SwingResult gapped = analyze(cut).get(1);
            for (MeasureValue was : twin.get(1).measures()) {
              if (!LOOKED_AT.contains(was.measure()) || !was.given()) {
                continue;
              }
              all++;
              Optional<MeasureValue> is = gapped.measure(was.measure(), was.at());
              if (is.isEmpty() || !is.get().given()) {
                withheld++;
                continue;
              }
              double half = (is.get().high() - is.get().low()) / 2;
              double m = (is.get().value() - was.value()) / half;
              moved.add(m);
              wider.add(half / ((was.high() - was.low()) / 2));
              if (Math.abs(m) > most) {
                most = Math.abs(m);
                worst =
                    seed
                        + " at "
                        + (at - takeawayS)
                        + " of "
                        + (impactS - takeawayS)
                        + " "
                        + is.get()
                        + " was "
                        + was.value()
                        + " flags "
                        + gapped.flags();
              }
            }
          }
        }
        System.out.printf(
            "%s %.2f s: withheld %d of %d, moved rms %.2f, over 1: %d, wider %.2f; worst %.2f %s%n",
            kind,
            length,
            withheld,
            all,
            Math.sqrt(moved.stream().mapToDouble(x -> x * x).average().orElse(0)),
            moved.stream().filter(x -> Math.abs(x) > 1).count(),
            wider.stream().mapToDouble(x -> x).average().orElse(0),
            most,
            worst);
      }
    }
    assertThat(random).isNotNull();
  }
}
