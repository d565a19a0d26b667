package steadyturn.analysis.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.reason.Reason;

class MeasureValueTest {

  @Test
  void ninetyFivePercentLieWithinThatManySpreads() {
    // Expect: the 97.5th percentile of the normal distribution. Within 1e-6: digits of the
    // constant.
    double expected = new NormalDistribution(null, 0, 1).inverseCumulativeProbability(0.975);
    assertThat(MeasureValue.Z95).isCloseTo(expected, within(1e-6));
    MeasureValue value =
        MeasureValue.of(Measure.PELVIS_TURN, "top", -40, 2, Grade.MEASURED, Reason.NONE);
    assertThat(value.low()).isCloseTo(-40 - 2 * expected, within(1e-5));
    assertThat(value.high()).isCloseTo(-40 + 2 * expected, within(1e-5));
    assertThat(value.value()).isEqualTo(-40);
    assertThat(value.given()).isTrue();
  }

  @Test
  void aWithheldValueHasNoNumbers() {
    MeasureValue value =
        MeasureValue.withheld(Measure.PELVIS_TURN, "top", Reason.of(MeasureReason.NEEDS_PELVIS));
    assertThat(value.given()).isFalse();
    assertThat(new double[] {value.low(), value.value(), value.high()}).containsOnly(Double.NaN);
    assertThat(value.grade().word()).isEqualTo("withheld");
  }

  @ParameterizedTest
  @CsvSource({"1,2,3", "NaN,0,2", "1,NaN,2", "1,0,0.5"})
  void aValueOutsideItsIntervalIsNone(double value, double low, double high) {
    MeasureValue good = MeasureValue.of(Measure.TEMPO_BACK, "", 1, 0, Grade.ESTIMATED, Reason.NONE);
    assertThat(good.low()).isEqualTo(good.high());
    assertThatThrownBy(
            () ->
                new MeasureValue(
                    Measure.TEMPO_BACK, "", value, low, high, Grade.MEASURED, good.why()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("tempo.back");
  }

  @Test
  void aCurveHasAsManyTimesAsValuesAndSpreads() {
    List<Double> two = List.of(1.0, 2.0);
    List<Double> one = List.of(1.0);
    assertThat(new Curve("a", "deg", two, two, two).value()).hasSize(2);
    assertThatThrownBy(() -> new Curve("a", "deg", one, two, two))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Curve("a", "deg", two, two, one))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void idsAreUniqueAndEveryMeasureHasAUnit() {
    assertThat(Arrays.stream(Measure.values()).map(Measure::id)).doesNotHaveDuplicates();
    assertThat(Measure.values()).allMatch(m -> !m.unit().isBlank());
    assertThat(Measure.PELVIS_SLIDE_PER_TURN.id()).isEqualTo("pelvis.slide-per-turn");
    assertThat(Measure.PELVIS_SLIDE_PER_TURN.unit()).isEqualTo("mm/deg");
  }
}
