package steadyturn.analysis.wrist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;

/** Gyroscopes that end below the hand's fastest rates. Seed 43, hands up to 1700 deg/s. */
class FullScaleTest {

  private static List<SwingResult> swings(double fullScaleDegPerS) {
    LessonSpec spec =
        LessonSpec.standard()
            .withHits(5)
            .withPractices(0)
            .withWaggles(0)
            .withWalking(false)
            .withGyroFullScaleDegPerS(fullScaleDegPerS);
    return LessonAnalyzer.withDefaults()
        .analyze(List.of(LessonSimulator.simulate(spec, 43).recording()))
        .get(0)
        .swings();
  }

  private static MeasureValue value(SwingResult swing, Measure measure, String at) {
    return swing.measure(measure, at).orElseThrow();
  }

  @Test
  void halfOfTheFullScaleMovesReleasesByLessThanAMillisecondAndSaysThatRatesWereCut() {
    // Given: the same five swings felt by gyroscopes up to 2000 and up to 1000 deg/s; the latter
    // are cut for some 90 ms, from 20 ms before the release on. Expect: the same release within
    // 1 ms (0.5 deg of angle 20 ms into the cut, at 700 deg/s), the same cock at impact within
    // three spreads of the angle through the cut (2 deg); the interval no narrower.
    List<SwingResult> whole = swings(2000);
    List<SwingResult> cut = swings(1000);
    assertThat(cut).hasSize(5);
    for (int i = 0; i < 5; i++) {
      MeasureValue release = value(cut.get(i), Measure.WRIST_RELEASE, "");
      MeasureValue asWhole = value(whole.get(i), Measure.WRIST_RELEASE, "");
      assertThat(release.value()).isCloseTo(asWhole.value(), within(1.0));
      MeasureValue cock = value(cut.get(i), Measure.WRIST_COCK, "impact");
      MeasureValue cockAsWhole = value(whole.get(i), Measure.WRIST_COCK, "impact");
      assertThat(cock.value()).isCloseTo(cockAsWhole.value(), within(6.0));
      assertThat(cock.high() - cock.low()).isGreaterThan(cockAsWhole.high() - cockAsWhole.low());
      assertThat(cut.get(i).flags()).contains("gyro-repaired");
      assertThat(whole.get(i).flags()).doesNotContain("gyro-repaired");
    }
  }
}
