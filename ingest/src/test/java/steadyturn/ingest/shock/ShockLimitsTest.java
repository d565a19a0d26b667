package steadyturn.ingest.shock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * A unit at rest, without noise, that is struck: the acceleration along one axis jumps at an
 * instant and stays. A jump of a shows as a change (second difference) of a in the first 2 ms.
 */
class ShockLimitsTest {

  private static UnitStream unit(double rateHz, double lengthS, DoubleUnaryOperator x) {
    int n = (int) Math.round(lengthS * rateHz);
    double[] timeS = new double[n];
    double[][] accel = new double[3][n];
    for (int i = 0; i < n; i++) {
      timeS[i] = i / rateHz;
      accel[0][i] = x.applyAsDouble(timeS[i]);
      accel[2][i] = 9.80665;
    }
    return new UnitStream(
        UnitFacts.plain(BodyPoint.LEAD_HAND, rateHz), timeS, accel, new double[3][n]);
  }

  private static DoubleUnaryOperator jump(double atS, double mps2) {
    return t -> t > atS ? mps2 : 0;
  }

  @ParameterizedTest
  @CsvSource({"500, 0.002", "1000, 0.001", "200, 0.005", "100, 0.01"})
  void theOnsetLiesHalfwayBeforeTheFirstSampleThatShowsIt(double rateHz, double periodS) {
    // Given: a jump of 30 m/s^2 between the samples at 1 s and one period later. Expect: half a
    // period after 1 s.
    List<Shock> shocks = ShockFinder.find(unit(rateHz, 2, jump(1 + periodS / 3, 30)));
    assertThat(shocks).hasSize(1);
    assertThat(shocks.get(0).timeS()).isCloseTo(1 + periodS / 2, within(1e-9));
    assertThat(shocks.get(0).sizeMps2()).isCloseTo(30, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"1.95, 0", "2.05, 1"})
  void aChangeCountsFromTwoMetresPerSecondSquared(double mps2, int shocks) {
    for (int sign : new int[] {1, -1}) {
      assertThat(ShockFinder.find(unit(500, 2, jump(1.0005, sign * mps2)))).hasSize(shocks);
    }
  }

  @ParameterizedTest
  @CsvSource({"5.8, 0", "6.2, 1"})
  void aShockStandsOutSixfoldOfWhatIsUsualNearby(double times, int shocks) {
    // Given: a shake from sample to sample whose second difference is 4 x 0.25 = 1 m/s^2 always,
    // and
    // a jump of so much and 1 on top, which the shake lessens by 1. Expect: a shock beyond six.
    UnitStream shaken =
        unit(
            500,
            2,
            t -> (Math.round(t * 500) % 2 == 0 ? 0.25 : -0.25) + (t > 1.0005 ? times + 1 : 0));
    assertThat(ShockFinder.find(shaken)).hasSize(shocks);
  }

  @ParameterizedTest
  @CsvSource({"0.0975, 1", "0.1005, 2"})
  void aSecondBlowWithinATenthOfASecondIsARing(double laterS, int shocks) {
    UnitStream twice = unit(500, 2, t -> (t > 1.0005 ? 30 : 0) + (t > 1.0005 + laterS ? 30 : 0));
    assertThat(ShockFinder.find(twice)).hasSize(shocks);
  }

  @ParameterizedTest
  @CsvSource({
    "500, 0.010, 0.012, 0.004, 0.006",
    "1000, 0.011, 0.01225, 0.005, 0.006",
    "4000, 0.01175, 0.01225, 0.0055, 0.00575"
  })
  void aBlowThatGrowsIsDatedByItsBeginning(
      double rateHz, double riseS, double beyondS, double nearS, double farS) {
    // Given: a little at first, 40 m/s^2 some ms later. Expect: the onset of the first part where
    // it is more than a tenth of the largest and comes less than 12 ms before it; a smaller one
    // only within 5.5 ms, where the calm before did not announce it. Else one of the later samples
    // that still show it.
    double halfS = 0.5 / rateHz;
    double earlyS = 1 + 1 / rateHz - halfS;
    assertThat(onsetS(rateHz, 4.1, farS)).isCloseTo(earlyS, within(1e-9));
    assertThat(onsetS(rateHz, 3.9, farS)).isGreaterThan(earlyS + halfS);
    assertThat(onsetS(rateHz, 3.9, nearS)).isCloseTo(earlyS, within(1e-9));
    assertThat(onsetS(rateHz, 4.5, riseS)).isCloseTo(earlyS, within(1e-9));
    assertThat(onsetS(rateHz, 4.5, beyondS)).isGreaterThan(earlyS + halfS);
  }

  private static double onsetS(double rateHz, double firstMps2, double laterS) {
    double hair = 1e-6;
    List<Shock> shocks =
        ShockFinder.find(
            unit(
                rateHz,
                1.5,
                t -> (t > 1 + hair ? firstMps2 : 0) + (t > 1 + laterS + hair ? 40 : 0)));
    assertThat(shocks).hasSize(1);
    return shocks.get(0).timeS();
  }

  @Test
  void clarityIsHowFarItStandsOut() {
    // Given: no shake, so the least that counts is 2 m/s^2. Expect: 30 / 2.
    assertThat(ShockFinder.find(unit(500, 2, jump(1.0005, 30))).get(0).clarity())
        .isCloseTo(15, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"500, 0.5", "500, 0.002", "1000, 0.5", "1000, 0.001", "2000, 0.0005"})
  void aGapIsNoShock(double rateHz, double missingS) {
    // Given: a jump that falls into missing samples, be it one. Expect: nothing, as a smooth
    // movement would have gone on meanwhile.
    UnitStream whole = unit(rateHz, 2, t -> t > 1 ? 30 : 0);
    double[] timeS = whole.timeColumnS();
    for (int i = 0; i < timeS.length; i++) {
      timeS[i] += timeS[i] > 1 ? missingS : 0;
    }
    assertThat(ShockFinder.find(whole)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"980, 0", "1020, 1"})
  void aKinkShowsItsChangeOfSlopeOverTwoMilliseconds(double slope, int shocks) {
    // Given: an acceleration that begins to grow by so many m/s^3, at 10 kHz. Expect, by the second
    // difference over 2 ms: slope x 2 ms, which counts from 2 m/s^2 on.
    assertThat(ShockFinder.find(unit(10_000, 0.5, t -> slope * Math.max(0, t - 0.4))))
        .hasSize(shocks);
  }

  @ParameterizedTest
  @CsvSource({"0.073, 1", "0.077, 0"})
  void nearbyIsWithin150MillisecondsOnEitherSide(double shakenS, int shocks) {
    // Given: a jump of 3 m/s^2, and so long before and behind it a shake whose changes are 1
    // m/s^2. Expect: while it fills less than half of 300 ms the usual change is none and the jump
    // stands out; beyond that it would need 6.
    UnitStream unit =
        unit(
            1000,
            2,
            t ->
                (Math.abs(t - 1.0005) < shakenS ? (Math.round(t * 500) % 2 == 0 ? 0.25 : -0.25) : 0)
                    + (t > 1.0005 ? 3 : 0));
    assertThat(ShockFinder.find(unit)).hasSize(shocks);
  }

  @ParameterizedTest
  @CsvSource({"50, 1.001", "52, 0.999"})
  void theCalmBeforeIsThatOfFortyMilliseconds(double earlierMs, double onsetS) {
    // Given: 3.9 m/s^2 at 0.999 s, 40 at 1.003 s, so that the small one is the beginning if the
    // calm announced nothing; and a step of 1.4 m/s^2, which shows in three samples, so many ms
    // before
    // 1.003 s. Expect: within 40 ms before what is looked at (8 ms, and 2 more samples that still
    // show the step) the first sample of the small one is no surprise any more, as 3.9 is less than
    // 3 x 1.4, and its second, which strays twice as far, is.
    double stepS = 1.003 - earlierMs / 1000;
    UnitStream unit =
        unit(500, 2, t -> (t > stepS ? 1.4 : 0) + (t > 0.9985 ? 3.9 : 0) + (t > 1.0025 ? 40 : 0));
    List<Shock> shocks = ShockFinder.find(unit);
    assertThat(shocks).hasSize(1);
    assertThat(shocks.get(0).timeS()).isCloseTo(onsetS, within(1e-9));
  }

  @Test
  void aBlowAtTheVeryStartIsDatedAsAnyOther() {
    // Given: a jump between the second and the third sample. Expect: half a sample before the
    // third.
    List<Shock> shocks = ShockFinder.find(unit(500, 2, jump(0.003, 30)));
    assertThat(shocks).hasSize(1);
    assertThat(shocks.get(0).timeS()).isCloseTo(0.003, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"5000", "-5000"})
  void whenTheClockBeganDoesNotMatter(double zeroS) {
    UnitStream unit = unit(500, 2, jump(1.0005, 30));
    List<Shock> expected = ShockFinder.find(unit);
    double[] timeS = unit.timeColumnS();
    for (int i = 0; i < timeS.length; i++) {
      timeS[i] += zeroS;
    }
    List<Shock> moved = ShockFinder.find(unit);
    assertThat(moved).hasSize(1);
    assertThat(moved.get(0).timeS() - zeroS).isCloseTo(expected.get(0).timeS(), within(1e-9));
  }

  @Test
  void theWayOfABlowToTheTrunkIsOurAssumption() {
    // no source: docs/accuracy.md names 2 +- 2 ms, after about a metre of bone and soft parts
    assertThat(BlowDelay.TRUNK_S).isEqualTo(0.002);
    assertThat(BlowDelay.TRUNK_SD_S).isEqualTo(0.002);
  }

  @Test
  void underTwentySamplesNothingIsLookedFor() {
    assertThat(ShockFinder.find(unit(500, 0.038, jump(0.02, 30)))).isEmpty();
    assertThat(ShockFinder.find(unit(500, 0.04, jump(0.0205, 30)))).hasSize(1);
  }
}
