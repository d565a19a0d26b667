package steadyturn.analysis.limits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.ingest.reason.Reason;

/** What a rate that nothing confirms adds to values, by how they follow from it. */
class ScaleDoubtTest {

  @ParameterizedTest
  @CsvSource({
    "wrist.rate, -50, 1", // deg/s, as the rates are
    "tempo.back, 0.9, 0.018", // s, counted
    "pelvis.turn, -50, 0", // the pelvis' estimate knows of it
    "pelvis.slide, 100, 0",
    "wrist.cock, 20, 3", // both arm units turn by 150 deg on the way
    "tempo.ratio, 3, 0" // of two times, both off alike
  })
  void aDoubtOfTwoPercentWidens(String id, double value, double bySd) {
    // Given: a value known to 2 of its units; 2 % of doubt. Expect: both spreads in squares.
    MeasureValue given =
        MeasureValue.of(
            Measure.ofId(id).orElseThrow(), "top", value, 2, Grade.MEASURED, Reason.NONE);
    MeasureValue in = new ScaleDoubt(0.02).in(given);
    assertThat(in.sd()).isCloseTo(Math.hypot(2, bySd), within(1e-9));
    assertThat(in.value()).isEqualTo(value);
    assertThat(new ScaleDoubt(0.001).in(given)).isEqualTo(given);
    MeasureValue none = MeasureValue.withheld(given.measure(), "top", MeasureReason.NEEDS_PELVIS);
    assertThat(new ScaleDoubt(0.02).in(none)).isEqualTo(none);
  }
}
