package steadyturn.analysis.lab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.analysis.lab.family.Half;
import steadyturn.analysis.lab.family.Situation;
import steadyturn.analysis.lab.unit.UnitClock;
import steadyturn.ingest.clock.AlignedRecording;
import steadyturn.ingest.clock.CommonClock;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitStream;

/** The clocks of simulated lessons, whose truth is known, are brought together by their shocks. */
class SimulatedClocksTest {

  private static double errorS(
      SyntheticLesson lesson, AlignedRecording aligned, BodyPoint point, double trueS) {
    UnitClock ofUnit = clock(lesson, point);
    UnitClock ofPelvis = clock(lesson, BodyPoint.PELVIS);
    return aligned.fit(point).toReferenceS(ofUnit.shownS(trueS)) - ofPelvis.shownS(trueS);
  }

  private static UnitClock clock(SyntheticLesson lesson, BodyPoint point) {
    return lesson.truth().unit(point).orElseThrow().clock();
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void forearmAndHandAgreeWithinOneMillisecondAndThePelvisWithinThree(long seed) {
    // Given: ten hits at 500 Hz, clocks as the simulator draws them (20-50 ppm, starts some ms
    // off).
    // Expect: forearm against hand within 1 ms (half a sample), pelvis against forearm within 3 ms
    // (it
    // feels a hundredth of the shock), from the wear steps on to the end; and within 2.5 of the
    // stated
    // spreads.
    SyntheticLesson lesson = LessonSimulator.simulate(LessonSpec.standard().withHits(10), seed);
    AlignedRecording aligned = CommonClock.align(lesson.recording());
    UnitStream pelvis = lesson.recording().units().get(0);
    for (double t = 20; t < pelvis.timeS(pelvis.size() - 1); t += 5) {
      double forearmS = errorS(lesson, aligned, BodyPoint.LEAD_FOREARM, t);
      double betweenS = errorS(lesson, aligned, BodyPoint.LEAD_HAND, t) - forearmS;
      double sdS = aligned.sdBetweenS(BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND, t);
      assertThat(betweenS).isCloseTo(0, within(Math.min(0.001, 2.5 * sdS)));
      assertThat(forearmS).isCloseTo(0, within(0.003));
    }
  }

  @Test
  void aStrayShockMovesNoUnitWhoseStartIsKnown() {
    // Given: family lesson standard, tuning half, seed 1011: starts right to 1 ms, one shock at the
    // pelvis, and others of forearm and hand at other times. Expect: each tie within 5 ms and
    // within
    // two of its spreads; a single pair once moved two units by 94 and 46 ms.
    SyntheticLesson lesson = FamilyLessons.simulate(Situation.STANDARD, Half.TUNING, 1011);
    AlignedRecording aligned = CommonClock.align(lesson.recording());
    for (BodyPoint point : List.of(BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND)) {
      double sdS = aligned.sdBetweenS(BodyPoint.PELVIS, point, 40);
      assertThat(errorS(lesson, aligned, point, 40)).isCloseTo(0, within(Math.min(0.012, 2 * sdS)));
    }
  }
}
