package steadyturn.ingest.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;

/** What is said of a sensor that is cut carries the figures people know: g and deg/s. */
class CutFiguresTest {

  private static List<Double> figures(SteadyUnit unit, QualityReason code) {
    Reason why =
        UnitQuality.judge(unit.stream()).findings().stream()
            .map(Finding::what)
            .filter(reason -> reason.code() == code)
            .findFirst()
            .orElseThrow();
    return why.args().values().stream().map(value -> ((Number) value).doubleValue()).toList();
  }

  @Test
  void aCutBelowTheStatedRangeTellsBoth() {
    // Given: 16 g and 2000 deg/s stated, flat tops at 10 g and 1000 deg/s.
    SteadyUnit unit =
        new SteadyUnit(BodyPoint.PELVIS, 100, 2001).ranges(16 * 9.80665, Math.toRadians(2000));
    Arrays.fill(unit.accel[1], 500, 505, 10 * 9.80665);
    Arrays.fill(unit.gyro[2], 700, 705, Math.toRadians(-1000));
    List<Double> accel = figures(unit, QualityReason.ACCEL_CUT_BELOW);
    assertThat(accel.get(0)).isCloseTo(10, within(1e-9));
    assertThat(accel.get(1)).isCloseTo(16, within(1e-9));
    List<Double> gyro = figures(unit, QualityReason.GYRO_CUT_BELOW);
    assertThat(gyro.get(0)).isCloseTo(1000, within(1e-6));
    assertThat(gyro.get(1)).isCloseTo(2000, within(1e-6));
  }

  @Test
  void aRangeTooNarrowForASwingTellsWhichItIs() {
    SteadyUnit unit =
        new SteadyUnit(BodyPoint.PELVIS, 100, 2001).ranges(2 * 9.80665, Math.toRadians(250));
    assertThat(figures(unit, QualityReason.ACCEL_NARROW).get(0)).isCloseTo(2, within(1e-9));
    assertThat(figures(unit, QualityReason.GYRO_NARROW).get(0)).isCloseTo(250, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"10, 16, 2000, SLOW", "200, 2, 2000, ACCEL_NARROW", "200, 16, 250, GYRO_NARROW"})
  void aUnitThatCannotFollowASwingIsRefusedInOneLine(
      double rateHz, double rangeG, double rangeDegPerS, QualityReason expected) {
    // Given: 200 s at 10 Hz as units leave the factory, or movements cut off at 2 g, at 250 deg/s
    // (the range of a real logger). Expect: not usable, for that reason and no other: that it is
    // never still, or cut, comes of it and is not to be mended by itself.
    SteadyUnit unit =
        new SteadyUnit(BodyPoint.PELVIS, rateHz, 2001)
            .ranges(rangeG * 9.80665, Math.toRadians(rangeDegPerS));
    for (int k = 0; k < 5; k++) {
      int at = 300 + 300 * k;
      for (int i = 0; i < 20; i++) {
        double rises = 1 + i / 40.0; // no flat top but where the range ends
        unit.accel[1][at + i] = Math.min(rangeG, 3 * rises) * 9.80665;
        unit.gyro[2][at + i] = Math.toRadians(Math.min(rangeDegPerS, 500 * rises));
      }
    }
    UnitReport report = UnitQuality.judge(unit.stream());
    assertThat(report.verdict()).isEqualTo(Verdict.NOT_USABLE);
    assertThat(report.findings())
        .filteredOn(f -> f.verdict() != Verdict.FIT)
        .extracting(f -> f.what().code())
        .containsExactly(expected);
  }
}
