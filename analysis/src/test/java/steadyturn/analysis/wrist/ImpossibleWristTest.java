package steadyturn.analysis.wrist;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lab.FamilyLessons;
import steadyturn.analysis.lab.family.Half;
import steadyturn.analysis.lab.family.Situation;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;

/** A bend that no wrist makes is not told as one. */
class ImpossibleWristTest {

  @Test
  void withoutWearSteps() {
    // Given: a player without wear steps (family for tuning, seed 1008) whose units, taken as
    // drawn,
    // gave a cock of 330 deg at impact where 42 is true. Expect: no angle beyond 130 deg is told,
    // and
    // what is withheld for it says why.
    List<SwingResult> swings =
        LessonAnalyzer.withDefaults()
            .analyze(
                List.of(
                    FamilyLessons.simulate(Situation.NO_WEAR_STEPS, Half.TUNING, 1008).recording()))
            .get(0)
            .swings();
    for (SwingResult swing : swings) {
      for (MeasureValue value : swing.measures()) {
        if (value.measure() == Measure.WRIST_COCK && value.given()) {
          assertThat(value.value()).as(value.at()).isBetween(-130.0, 130.0);
        }
      }
    }
    assertThat(swings)
        .anyMatch(
            s ->
                s.measures().stream()
                    .anyMatch(m -> m.why().code() == MeasureReason.NO_WRIST_BENDS_SO));
  }
}
