package steadyturn.analysis.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.reason.Reason;

class BestSwingTest {

  private static final Teaching TEACHING = TeachingReader.shipped();

  @Test
  void theSwingNearestToTheTargetsIsTheBestAndALikeOneIsNamed() {
    // Given: turns of -28, -45, -37 and -39.5 deg, each known to 1 deg, of which 0.45 deg is the
    // swing's own; full turn is -40 deg, a margin 2 deg. Expect: the second is best with nothing
    // missed; the fourth misses a quarter of a margin, and 1.96 times 0.22 allow that; the third
    // misses one and a half and does not.
    BestSwing best = among(swing(1, -28), swing(2, -45), swing(3, -37), swing(4, -39.5));
    assertThat(best.swing().number()).isEqualTo(2);
    assertThat(best.miss()).isZero();
    assertThat(best.alike()).containsExactly(4);
  }

  @Test
  void amongSwingsThatAllKeepTheLimitsNoneIsToldApart() {
    assertThat(among(swing(1, -45), swing(2, -48), swing(3, -50)).alike()).containsExactly(2, 3);
  }

  @Test
  void aSwingWithoutTheValueIsNoCandidate() {
    var lost =
        swing(
            1,
            MeasureValue.withheld(
                Measure.PELVIS_TURN, "top", Reason.of(MeasureReason.NEEDS_PELVIS)));
    assertThat(among(lost, swing(2, -30)).swing().number()).isEqualTo(2);
    assertThat(BestSwing.among(TEACHING, List.of(lost))).isEmpty();
  }

  private static BestSwing among(SwingResult... swings) {
    return BestSwing.among(TEACHING, List.of(swings)).orElseThrow();
  }

  private static SwingResult swing(int number, double turnDeg) {
    return swing(
        number,
        MeasureValue.of(Measure.PELVIS_TURN, "top", turnDeg, 1, Grade.MEASURED, Reason.NONE));
  }

  private static SwingResult swing(int number, MeasureValue turn) {
    return new SwingResult(
        number, "7-iron", SwingKind.HIT, List.of(), List.of(), List.of(turn), List.of());
  }
}
