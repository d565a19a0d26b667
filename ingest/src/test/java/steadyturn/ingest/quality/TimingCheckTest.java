package steadyturn.ingest.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A beat of 10 ms from which samples are taken away. */
class TimingCheckTest {

  @Test
  void anEvenBeatHasItsRateAndNothingElse() {
    Timing timing = TimingCheck.of(SteadyUnit.usual().stream());
    assertThat(timing.samples()).isEqualTo(2000);
    assertThat(timing.rateHz()).isCloseTo(100, within(1e-6));
    assertThat(timing.jitterS()).isCloseTo(0, within(1e-9));
    assertThat(timing.lostSamples()).isZero();
    assertThat(timing.gaps()).isEmpty();
    assertThat(timing.lostPct()).isZero();
    assertThat(timing.longestGapS()).isZero();
  }

  @ParameterizedTest
  @CsvSource({"1, 0", "4, 0", "5, 1", "300, 1"})
  void fiveLostInARowAreAGap(int lost, int gaps) {
    Timing timing = TimingCheck.of(SteadyUnit.usual().later(1000, 0.01 * lost).stream());
    assertThat(timing.lostSamples()).isEqualTo(lost);
    assertThat(timing.gaps()).hasSize(gaps);
    assertThat(timing.lostPct()).isCloseTo(100.0 * lost / (2000 + lost), within(1e-12));
    if (gaps > 0) {
      Gap gap = timing.gaps().get(0);
      assertThat(gap.fromS()).isCloseTo(9.99, within(1e-9));
      assertThat(gap.toS()).isCloseTo(10 + 0.01 * lost, within(1e-9));
      assertThat(gap.lostSamples()).isEqualTo(lost);
      assertThat(timing.longestGapS()).isCloseTo(0.01 * (lost + 1), within(1e-9));
    }
  }

  @Test
  void scatteredLossLeavesOutLongGaps() {
    // Given: 50 samples lost at once and 20 singly. Expect: 20 of 2020 scattered; all where even
    // that gap is short.
    SteadyUnit unit = SteadyUnit.usual().later(300, 0.5);
    for (int k = 0; k < 20; k++) {
      unit.later(600 + 50 * k, 0.01);
    }
    Timing timing = TimingCheck.of(unit.stream());
    assertThat(timing.lostSamples()).isEqualTo(70);
    assertThat(timing.scatteredLossPct(0.1)).isCloseTo(100.0 * 20 / 2020, within(1e-12));
    assertThat(timing.scatteredLossPct(0.6)).isCloseTo(100.0 * 70 / 2070, within(1e-12));
  }

  @Test
  void aSampleWithoutOneOfItsSixValuesIsLost() {
    for (int channel = 0; channel < 6; channel++) {
      SteadyUnit unit = SteadyUnit.usual();
      double[] values = channel < 3 ? unit.accel[channel] : unit.gyro[channel - 3];
      values[700] = Double.NaN;
      Timing timing = TimingCheck.of(unit.stream());
      assertThat(timing.samples()).isEqualTo(1999);
      assertThat(timing.lostSamples()).isEqualTo(1);
      assertThat(unit.stream().isWhole(700)).isFalse();
      assertThat(unit.stream().isWhole(701)).isTrue();
    }
  }

  @Test
  void jitterIsTheSpreadAboutTheBeatAndNoLoss() {
    // Given: stamps off by 1 ms of 10 (seed 20260406). Expect: that, less than a twentieth apart.
    Random random = new Random(20_260_406);
    SteadyUnit unit = SteadyUnit.usual();
    for (int i = 0; i < 2000; i++) {
      unit.timeS[i] += 0.001 * random.nextGaussian();
    }
    Timing timing = TimingCheck.of(unit.stream());
    assertThat(timing.jitterS()).isCloseTo(0.001, within(0.00008));
    assertThat(timing.lostSamples()).isZero();
    assertThat(timing.rateHz()).isCloseTo(100, within(0.05));
  }

  @Test
  void aDriftOfTheClockIsFollowedAndIsNoLoss() {
    // Given: a beat that slows by 1 % over 20 s, 0.1 s in all, ten samples. Expect: none lost.
    SteadyUnit unit = SteadyUnit.usual();
    for (int i = 0; i < 2000; i++) {
      unit.timeS[i] += 0.005 * unit.timeS[i] * unit.timeS[i] / 20;
    }
    assertThat(TimingCheck.of(unit.stream()).lostSamples()).isZero();
  }

  @Test
  void thePeriodIsTheMeanOfStepsNearTheMedian() {
    // Given: steps of 3, 4, 3, 4, 4, 30 and 1 ms. Expect: the mean of the five, 3.6 ms: the median
    // is 4, so 2 to 6 ms count.
    assertThat(TimingCheck.periodS(new double[] {0, 3, 7, 10, 14, 18, 48, 49}))
        .isCloseTo(3.6, within(1e-12));
    assertThat(TimingCheck.periodS(new double[] {1, 3})).isEqualTo(2);
    // Two of three steps are no times of their own: the median alone remains.
    assertThat(TimingCheck.periodS(new double[] {0, 4, 10, 14})).isCloseTo(4, within(1e-12));
  }

  @Test
  void aLongStreamIsLookedAtInPartsForItsMedian() {
    double[] timeS = new double[100_000];
    for (int i = 1; i < timeS.length; i++) {
      timeS[i] = timeS[i - 1] + (i % 5 == 0 ? 0.004 : 0.002);
    }
    // The median step is 2 ms; 4 ms are too far from it to count.
    assertThat(TimingCheck.periodS(timeS)).isCloseTo(0.002, within(1e-9));
  }

  @Test
  void underTwoSamplesThereIsNoRate() {
    SteadyUnit one = new SteadyUnit(steadyturn.ingest.sample.BodyPoint.PELVIS, 100, 3);
    one.gyro[0][0] = Double.NaN;
    one.gyro[0][2] = Double.NaN;
    assertThat(TimingCheck.of(one.stream())).isEqualTo(new Timing(1, 0, 0, 2, List.of()));
    assertThat(new Timing(0, 0, 0, 0, List.of()).lostPct()).isEqualTo(100);
    assertThat(new Timing(0, 0, 0, 0, List.of()).scatteredLossPct(1)).isEqualTo(100);
  }

  @Test
  void aGapEndsAfterItBegins() {
    assertThatThrownBy(() -> new Gap(2, 2, 1)).hasMessageContaining("after 2.0 s");
    assertThat(new Gap(2, 2.5, 1).durationS()).isEqualTo(0.5);
  }

  @Test
  void countsOfPiecesAddUpAndCanBeTakenOff() {
    // Given: 1 s at 100 Hz and 3 s at 200 Hz. Expect: sums; the rate by time, (100 + 600) / 4.
    UnitCount first = new UnitCount(95, 5, 1, 1, 100);
    UnitCount both = first.and(new UnitCount(595, 5, 2, 3, 200));
    assertThat(both).isEqualTo(new UnitCount(690, 10, 3, 4, 175));
    assertThat(both.lostPct()).isCloseTo(100.0 * 10 / 700, within(1e-12));
    assertThat(new UnitCount(0, 0, 0, 0, 0).lostPct()).isEqualTo(100);
    assertThat(new UnitCount(1, 0, 0, 0, 50).and(new UnitCount(1, 0, 0, 0, 70)).rateHz())
        .isEqualTo(50);
    assertThat(both.without(first)).isEqualTo(new UnitCount(595, 5, 2, 3, 200));
    assertThat(first.without(first).rateHz()).isEqualTo(100);
    UnitCount of = UnitCount.of(SteadyUnit.usual().later(1000, 0.05).ranges(9, 9).stream());
    assertThat(of.samples()).isEqualTo(2000);
    assertThat(of.lostSamples()).isEqualTo(5);
    assertThat(of.saturatedSamples()).isEqualTo(2000);
    assertThat(of.lengthS()).isCloseTo(20.04, within(1e-9));
    assertThat(of.rateHz()).isCloseTo(100, within(1e-6));
  }
}
