package steadyturn.analysis.lab;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lab.family.Half;
import steadyturn.analysis.lab.family.Situation;
import steadyturn.analysis.lab.truth.SwingTruth;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingEvent;

/** A wrist that cocks pulls at the skin under the forearm's unit. */
class PulledSkinTest {

  private static final long SEED = 3014;

  @Test
  void aTopReadWhileTheWristStillCocksIsKnownLessWell() {
    // Given: a drawn player whose wrist cocks until the top, over skin that moves
    // with it (tuning half). Expect: the way back holds the truth; it was 11 and 13 ms short and
    // +-3. Within three spreads, as one lesson of many is looked at.
    System.out.println("seed " + SEED);
    SyntheticLesson lesson = FamilyLessons.simulate(Situation.ADDRESS_RESTLESS, Half.TUNING, SEED);
    List<SwingResult> found =
        new LessonAnalyzer(AnalysisSettings.defaults().withoutCurves())
            .analyze(List.of(lesson.recording()))
            .get(0)
            .swings();
    assertThat(found).hasSameSizeAs(lesson.truth().swings());
    for (int i = 0; i < found.size(); i++) {
      SwingTruth truth = lesson.truth().swings().get(i);
      double backS =
          truth.eventS(SwingEvent.TOP).orElseThrow()
              - truth.eventS(SwingEvent.TAKEAWAY).orElseThrow();
      MeasureValue back = found.get(i).measure(Measure.TEMPO_BACK, "").orElseThrow();
      double sdS = (back.high() - back.value()) / MeasureValue.Z95;
      assertThat(Math.abs(back.value() - backS) / sdS).isLessThan(3);
    }
  }
}
