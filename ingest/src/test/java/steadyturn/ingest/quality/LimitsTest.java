package steadyturn.ingest.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sample.BodyPoint;

/** A unit of which nothing is wrong but one figure, a little to either side of its limit. */
class LimitsTest {

  @Test
  void theLimitsAreThoseThatTheirReasonsName() {
    // Our choices; the reasons stand beside them in the code.
    QualityLimits limits = QualityLimits.defaults();
    assertThat(limits.shortestS()).isEqualTo(2);
    assertThat(limits.slowRateHz()).isEqualTo(95);
    assertThat(limits.slowestRateHz()).isEqualTo(45);
    assertThat(limits.rateOffPct()).isEqualTo(3);
    assertThat(limits.lostWiderPct()).isEqualTo(1);
    assertThat(limits.lostTooManyPct()).isEqualTo(10);
    assertThat(limits.gapS()).isEqualTo(0.1);
    assertThat(limits.saturatedTooManyPct()).isEqualTo(10);
    assertThat(Math.toDegrees(limits.narrowRadPerS())).isCloseTo(300, within(1e-9));
    assertThat(limits.narrowMps2()).isEqualTo(3 * 9.80665);
    assertThat(limits.shockS()).isEqualTo(0.03);
    assertThat(Math.toDegrees(limits.gyroNoiseRadPerS())).isCloseTo(2, within(1e-12));
    assertThat(limits.accelNoiseMps2()).isEqualTo(0.4);
    assertThat(Math.toDegrees(limits.gyroBiasRadPerS())).isCloseTo(5, within(1e-12));
    assertThat(limits.gravityWiderPct()).isEqualTo(3);
    assertThat(limits.gravityTooFarPct()).isEqualTo(8);
  }

  private static void expect(UnitReport report, Check check, String verdict) {
    if (verdict.equals("nothing")) {
      assertThat(report.findings()).isEmpty();
      assertThat(report.verdict()).isEqualTo(Verdict.FIT);
    } else {
      assertThat(report.findings()).extracting(Check::of).containsExactly(check);
      assertThat(report.findings().get(0).verdict()).isEqualTo(Verdict.valueOf(verdict));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "16, 2000, nothing",
    "4, 500, nothing",
    "16, 250, NOT_USABLE",
    "2, 2000, NOT_USABLE",
  })
  void aUnitSetTooNarrowForASwingIsNotUsableThoughNothingWasCutOff(
      double g, double degPerS, String verdict) {
    // Given: a unit at rest, its range as stated. Source of the steps: ranges that such chips have.
    SteadyUnit unit = SteadyUnit.usual().ranges(g * 9.80665, Math.toRadians(degPerS));
    expect(unit.judged(), Check.SATURATION, verdict);
  }

  @Test
  void aSteadyUnitIsFit() {
    expect(SteadyUnit.usual().judged(), Check.REST, "nothing");
  }

  @ParameterizedTest
  @CsvSource({
    "202, 100, nothing",
    "201, 100, nothing",
    "200, 100, NOT_USABLE",
    "110, 50, NOT_USABLE"
  })
  void twoSecondsAreTheLeast(int samples, double rateHz, String verdict) {
    // Given: n samples at a rate last (n - 1) / rate.
    UnitReport report = new SteadyUnit(BodyPoint.PELVIS, rateHz, samples).judged();
    if (rateHz > 95) {
      expect(report, Check.LENGTH, verdict);
    } else {
      // 2.18 s at 50 Hz are long enough; the rate is what is held against it
      expect(report, Check.RATE, "WIDER_INTERVALS");
    }
  }

  @ParameterizedTest
  @CsvSource({"50, nothing", "49, NOT_USABLE"})
  void fiftySamplesAreTheLeast(int samples, String verdict) {
    // Given: samples spread over more than 2 s, at a rate that is told apart below.
    UnitReport report = new SteadyUnit(BodyPoint.PELVIS, 20, samples).judged();
    assertThat(report.findings().stream().anyMatch(f -> Check.of(f) == Check.LENGTH))
        .isEqualTo(!verdict.equals("nothing"));
  }

  @ParameterizedTest
  @CsvSource({
    "95.1, nothing",
    "94.9, WIDER_INTERVALS",
    "45.1, WIDER_INTERVALS",
    "44.9, NOT_USABLE"
  })
  void aSlowUnitIsToldSo(double rateHz, String verdict) {
    expect(new SteadyUnit(BodyPoint.PELVIS, rateHz, 2000).judged(), Check.RATE, verdict);
  }

  @ParameterizedTest
  @CsvSource({"97.2, nothing", "97.0, WIDER_INTERVALS", "103.0, nothing", "103.2, WIDER_INTERVALS"})
  void aRateMayBeThreePercentOffTheStatedOne(double statedHz, String verdict) {
    // Given: 100 Hz. Expect: |100 / stated - 1| against 3 %: 97.2 is 2.88 %, 97.0 3.09 % off.
    expect(SteadyUnit.usual().stated(statedHz).judged(), Check.RATE, verdict);
  }

  @ParameterizedTest
  @CsvSource({"0.08, nothing", "0.099, nothing", "0.11, WIDER_INTERVALS"})
  void aGapOfATenthOfASecondIsWorthASentence(double gapS, String verdict) {
    expect(SteadyUnit.usual().later(1000, gapS - 0.01).judged(), Check.GAP, verdict);
  }

  @ParameterizedTest
  @CsvSource({"102, nothing", "95, WIDER_INTERVALS", "10, WIDER_INTERVALS", "8, NOT_USABLE"})
  void lostSamplesAreCountedInPercentOfThoseExpected(int everyNth, String verdict) {
    // Given: one sample lost after every n: 19, 21, 199 and 249, so 0.94, 1.04, 9.1 and 11.1 %.
    SteadyUnit unit = SteadyUnit.usual();
    for (int i = everyNth; i < 2000; i += everyNth) {
      unit.later(i, 0.01);
    }
    expect(unit.judged(), Check.LOSS, verdict);
  }

  @ParameterizedTest
  @CsvSource({"1, WIDER_INTERVALS", "200, WIDER_INTERVALS", "201, NOT_USABLE"})
  void aRateAtTheEndOfItsRange(int samples, String verdict) {
    // Given: 2000 samples, range 2000 deg/s. Expect: up to 10 %, 200 of them, wider intervals.
    // Single
    // samples apart, so that nothing is held.
    SteadyUnit unit = SteadyUnit.usual().ranges(157, Math.toRadians(2000));
    for (int k = 0; k < samples; k++) {
      unit.gyro[1][1000 + 3 * k] = Math.toRadians(2000);
    }
    expect(unit.judged(), Check.SATURATION, verdict);
  }

  @ParameterizedTest
  @CsvSource({"3, FIT", "4, WIDER_INTERVALS"})
  void anAccelerationAtTheEndOfItsRangeForThirtyMillisecondsIsAnImpact(
      int samples, String verdict) {
    SteadyUnit unit = SteadyUnit.usual().ranges(157, Math.toRadians(2000));
    for (int k = 0; k < samples; k++) {
      unit.accel[0][1000 + k] = -157;
    }
    expect(unit.judged(), Check.SATURATION, verdict);
  }

  @ParameterizedTest
  @CsvSource({
    "1.14, 0.01, nothing",
    "1.17, 0.01, WIDER_INTERVALS",
    "0.05, 0.22, nothing",
    "0.05, 0.24, WIDER_INTERVALS"
  })
  void noiseAtRest(double gyroDegPerS, double accelMps2, String verdict) {
    // Given: the same spread on three axes, root 3 in all: 1.97 and 2.03 deg/s, 0.38 and 0.42
    // m/s^2.
    SteadyUnit unit = SteadyUnit.usual();
    for (int axis = 0; axis < 3; axis++) {
      unit.gyroDegPerS(axis, 0, gyroDegPerS).accel(axis, axis == 2 ? 9.80665 : 0, accelMps2);
    }
    expect(unit.judged(), Check.NOISE, verdict);
  }

  @ParameterizedTest
  @CsvSource({"3, 3.99, nothing", "3, 4.01, WIDER_INTERVALS", "-3, -4.01, WIDER_INTERVALS"})
  void aBiasOfFiveDegreesASecond(double x, double y, String verdict) {
    expect(
        SteadyUnit.usual().gyroDegPerS(0, x, 0.05).gyroDegPerS(1, y, 0.05).judged(),
        Check.GYRO_BIAS,
        verdict);
  }

  @ParameterizedTest
  @CsvSource({
    "10.09, nothing", "10.11, WIDER_INTERVALS", "9.52, nothing", "9.50, WIDER_INTERVALS",
    "10.59, WIDER_INTERVALS", "10.60, NOT_USABLE", "9.03, WIDER_INTERVALS", "9.02, NOT_USABLE"
  })
  void gravityMayBeThreePercentOff(double mps2, String verdict) {
    // 3 % of 9.80665 is 0.2942, 8 % 0.7845 m/s^2.
    expect(SteadyUnit.usual().accel(2, mps2, 0.01).judged(), Check.GRAVITY, verdict);
  }

  @ParameterizedTest(name = "{0} m/s^2 reads like {1}")
  @CsvSource({
    "1.049, 1", "0.951, 1", "0.49, 0.1", "1049, 1000", "951, 1000", "9320, 9806.65",
        "10290, 9806.65",
    "1.06, 5", "0.94, 5", "0.51, 5", "1060, 5", "940, 5", "9310, 5", "10300, 5"
  })
  void whatGravityLooksLikeIsGuessed(double mps2, double like) {
    // Given: in g, taken out, in thousandths, or none of these. Expect: the same advice for the
    // same.
    assertThat(advice(mps2)).isEqualTo(advice(like));
    List<Object> all = List.of(advice(1), advice(0.1), advice(1000), advice(5));
    assertThat(all).doesNotHaveDuplicates();
  }

  private static Object advice(double mps2) {
    SteadyUnit unit = SteadyUnit.usual();
    for (int axis = 0; axis < 3; axis++) {
      unit.accel(axis, axis == 2 ? mps2 : 0, 1e-6);
    }
    UnitReport report = unit.judged();
    assertThat(report.findings()).extracting(Check::of).containsExactly(Check.GRAVITY);
    return report.findings().get(0).what().code();
  }

  @Test
  void whatIsDeadIsNotJudgedFurther() {
    // Given: a channel that never changes while the others move by 5 deg/s, and a rate far from the
    // stated one. Expect: only the first is told.
    SteadyUnit unit = SteadyUnit.usual().stated(200).gyroDegPerS(1, 0, 5).gyroDegPerS(0, 0, 0);
    expect(unit.judged(), Check.STUCK, "NOT_USABLE");
  }
}
