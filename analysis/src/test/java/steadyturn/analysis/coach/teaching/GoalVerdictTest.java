package steadyturn.analysis.coach.teaching;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.ingest.reason.Reason;

class GoalVerdictTest {

  @ParameterizedTest
  @CsvSource({
    "-40, -20, -30, 10, CANNOT_BE_TOLD",
    "-30, -20, -30, 10, INSIDE",
    "-60, -31, -30, 10, OUTSIDE",
    "11, 15, -30, 10, OUTSIDE",
    "-90, 90, -30, 10, CANNOT_BE_TOLD",
    "5, Infinity, -Infinity, 10, CANNOT_BE_TOLD",
    "80, 99, -Infinity, 100, INSIDE",
    "101, Infinity, -Infinity, 100, OUTSIDE",
  })
  void itIsJudgedByTheWholeInterval(
      double low, double high, double from, double to, GoalVerdict expected) {
    // Given: an interval and a goal. Expect: by hand, whole within, whole beyond, or across an
    // edge.
    double middle = Double.isInfinite(high) ? low : (low + high) / 2;
    MeasureValue value =
        new MeasureValue(
            Measure.PELVIS_SLIDE, "top", middle, low, high, Grade.MEASURED, Reason.NONE);
    assertThat(GoalVerdict.of(value, from, to)).isEqualTo(expected);
  }
}
