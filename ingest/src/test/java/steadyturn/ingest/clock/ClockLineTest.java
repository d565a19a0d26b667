package steadyturn.ingest.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Known beforehand: offset 0 +- 12 ms, skew 0 +- 40 ppm (assumptions of this program). */
class ClockLineTest {

  private static final ClockFit KNOWN = ClockLine.prior(0);

  private static List<TimePair> pairs(
      double offsetS, double skewPpm, double sdS, double... timesS) {
    List<TimePair> pairs = new ArrayList<>();
    for (double t : timesS) {
      pairs.add(new TimePair(t, offsetS + skewPpm * 1e-6 * t, sdS));
    }
    return pairs;
  }

  @ParameterizedTest
  @CsvSource({"0.015, 40", "-0.015, 40", "0.015, -40", "-0.025, -55", "0, 0"})
  void pairsOnALineGiveTheLine(double offsetS, double skewPpm) {
    // Given: seven pairs over 1800 s, each good to 1 us. Expect: the line; within 1e-6 s and 1e-3
    // ppm, as what is known beforehand weighs a millionth.
    ClockFit fit =
        ClockLine.fit(pairs(offsetS, skewPpm, 1e-6, 0, 300, 600, 900, 1200, 1500, 1800), 0, KNOWN);
    assertThat(fit.offsetS()).isCloseTo(offsetS, within(1e-6));
    assertThat(fit.skewPpm()).isCloseTo(skewPpm, within(1e-3));
    assertThat(fit.centreS()).isCloseTo(900, within(1e-6));
    assertThat(fit.pairs()).isEqualTo(7);
  }

  @Test
  void onePairShiftsWhatWasKnownByItsWeight() {
    // Given: one pair at 100 s, 10 ms later, good to 5 ms. Closed form of two independent numbers:
    // known beforehand 0 +- hypot(12 ms, 40 ppm x 100 s) there, information 1/sd^2 each.
    double known = Math.hypot(0.012, 40e-6 * 100);
    double information = 1 / (known * known) + 1 / (0.005 * 0.005);
    ClockFit fit = ClockLine.fit(List.of(new TimePair(100, 0.010, 0.005)), 0, KNOWN);
    assertThat(fit.correctionS(100)).isCloseTo(0.010 / (0.005 * 0.005) / information, within(1e-4));
    assertThat(fit.sdS()).isCloseTo(Math.sqrt(1 / information), within(2e-5));
    assertThat(fit.skewPpm()).isZero();
    assertThat(fit.skewSdPpm()).isCloseTo(40, within(1e-9));
    assertThat(fit.pairs()).isEqualTo(1);
  }

  @Test
  void twoPairsFarApartTellTheSkew() {
    // Given: pairs at 0 and 1000 s good to 1 ms. Closed form: skew information (1/40 ppm)^2 +
    // 2 (500 s / 1 ms)^2, so the spread is 1.4142 ppm less a little, and 30 ppm come out as
    // 30 / (1 + 1.4142^2/40^2).
    ClockFit fit = ClockLine.fit(pairs(0, 30, 0.001, 0, 1000), 0, KNOWN);
    double sd = Math.sqrt(2);
    double shrunk = 1 / (1 + sd * sd / (40 * 40));
    assertThat(fit.skewPpm()).isCloseTo(30 * shrunk, within(0.01));
    assertThat(fit.skewSdPpm()).isCloseTo(sd * Math.sqrt(shrunk), within(0.005));
    assertThat(fit.sdS()).isCloseTo(0.001 / Math.sqrt(2), within(1e-5));
  }

  @Test
  void anErrorThatAllPairsShareIsAddedAndNeverAveragedAway() {
    // Given: 100 pairs of 1 ms and a floor of 4 ms. Expect: 4.001 ms, the root of 16 + 1/100.
    double[] times = new double[100];
    for (int i = 0; i < 100; i++) {
      times[i] = 10 * i;
    }
    ClockFit fit = ClockLine.fit(pairs(0, 0, 0.001, times), 0.004, KNOWN);
    assertThat(fit.sdS()).isCloseTo(Math.hypot(0.004, 0.0001), within(1e-6));
  }

  @Test
  void moreExactPairsWeighMore() {
    // Given: two pairs at one time, 0 +- 2 ms and 2 +- 1 ms. Expect: weights 1 to 4, so 1.6 ms less
    // the pull of what was known (12 ms): 1.6 x 1.25/(1.25 + 1/144) = 1.591; within 0.02 ms, as the
    // biweight takes a little from both.
    List<TimePair> two = List.of(new TimePair(0, 0, 0.002), new TimePair(0, 0.002, 0.001));
    assertThat(ClockLine.fit(two, 0, KNOWN).correctionS(0)).isCloseTo(0.00159, within(2e-5 + 6e-5));
  }

  @Test
  void aPairFarOffLosesItsWeight() {
    // Given: nine pairs on 5 ms and one at 90 ms, each good to 1 ms. Expect: the nine, within 0.1
    // ms.
    List<TimePair> pairs = pairs(0.005, 0, 0.001, 0, 100, 200, 300, 400, 500, 600, 700, 800);
    pairs.add(new TimePair(450, 0.09, 0.001));
    ClockFit fit = ClockLine.fit(pairs, 0, KNOWN);
    assertThat(fit.correctionS(450)).isCloseTo(0.005, within(1e-4));
    assertThat(fit.pairs()).isEqualTo(9);
  }

  @Test
  void pairsThatScatterMoreThanTheySayWidenTheSpread() {
    // Given: 40 pairs that claim 1 ms and scatter by 5 ms (seed 20260404). Expect: the spread of a
    // mean of 40 values of 5 ms, 0.79 ms; within a third, the spread of a median of 40.
    Random random = new Random(20_260_404);
    List<TimePair> pairs = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      pairs.add(new TimePair(10 * i, 0.005 * random.nextGaussian(), 0.001));
    }
    ClockFit fit = ClockLine.fit(pairs, 0, KNOWN);
    assertThat(fit.sdS()).isBetween(0.00053, 0.00115);
    assertThat(Math.abs(fit.correctionS(200))).isLessThan(3 * fit.sdS());
  }

  @Test
  void withoutPairsWhatWasKnownRemains() {
    ClockFit prior = ClockLine.prior(5);
    assertThat(prior).isEqualTo(new ClockFit(0, 0, 5, 0.012, 40, 0));
  }

  @Test
  void aResidualIsWhatThePairHasMoreThanTheLine() {
    ClockFit line = new ClockFit(0.01, 10, 0, 0, 0, 2);
    assertThat(ClockLine.residualS(new TimePair(1000, 0.025, 0.001), line))
        .isCloseTo(0.005, within(1e-12));
  }
}
