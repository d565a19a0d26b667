package steadyturn.ingest.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.shock.Shock;

/** Which shocks of two units are the same, and at what lag their movement agrees. */
class MatchTest {

  private static final double SAMPLE_SD_S = 0.001;
  private static final double REACH_S = 0.12;
  private static final ClockFit KNOWN = ClockLine.prior(0);

  /** Blows at uneven distances, so that no wrong lag fits. */
  private static final double[] BLOWS_S = {3, 10.3, 17.9, 31.2, 40.7, 58.4, 66.1, 83.6};

  private static List<Shock> shocks(double offsetS, double skewPpm, double clarity) {
    List<Shock> shocks = new ArrayList<>();
    for (double t : BLOWS_S) {
      shocks.add(new Shock(t + offsetS + skewPpm * 1e-6 * t, 20, clarity));
    }
    return shocks;
  }

  @ParameterizedTest
  @CsvSource({"0.015, 30", "-0.02, -40", "0, 0", "0.03, 0"})
  void everyBlowFindsItsPartner(double offsetS, double skewPpm) {
    // Given: the second unit later by an offset and a skew. Expect: eight pairs, each the
    // difference of the two times, dated by the first unit's clock.
    List<TimePair> pairs =
        ShockMatch.of(shocks(0, 0, 10), shocks(offsetS, skewPpm, 10), SAMPLE_SD_S, REACH_S, KNOWN);
    assertThat(pairs).hasSize(8);
    for (int k = 0; k < 8; k++) {
      assertThat(pairs.get(k).timeS()).isEqualTo(BLOWS_S[k]);
      assertThat(pairs.get(k).laterS())
          .isCloseTo(offsetS + skewPpm * 1e-6 * BLOWS_S[k], within(1e-12));
    }
  }

  @Test
  void aWeakShockIsWorthLess() {
    // Given: clarity 3 and 5, sampling 1 ms. Our choice: 1 ms for the onset and 2.5 ms over the
    // clarity at each unit, so the root of 1 + 1 + (2.5/3)^2 + (2.5/5)^2 ms.
    TimePair pair =
        ShockMatch.of(shocks(0, 0, 3), shocks(0.01, 0, 5), SAMPLE_SD_S, REACH_S, KNOWN).get(0);
    assertThat(pair.sdS()).isCloseTo(1e-3 * Math.sqrt(2 + 6.25 / 9 + 0.25), within(1e-12));
  }

  @Test
  void aStrangeShockFindsNoPartner() {
    // Given: one blow that only one feels, and one of the other's 60 ms beside another. Expect:
    // the eight true pairs.
    List<Shock> more = shocks(0.01, 0, 10);
    more.add(1, new Shock(5, 20, 10));
    more.add(3, new Shock(BLOWS_S[1] + 0.07, 20, 10));
    List<TimePair> pairs = ShockMatch.of(shocks(0, 0, 10), more, SAMPLE_SD_S, REACH_S, KNOWN);
    assertThat(pairs).hasSize(8);
    assertThat(pairs).allSatisfy(p -> assertThat(p.laterS()).isCloseTo(0.01, within(1e-9)));
  }

  @Test
  void ofTwoPartnersTheNearerOneCounts() {
    // Given: the second unit feels one blow twice, 2 ms apart, both within tolerance. Expect: the
    // one that agrees, once; in either order.
    for (double extra : new double[] {-0.002, 0.002}) {
      List<Shock> twice = shocks(0.01, 0, 10);
      twice.add(extra < 0 ? 4 : 5, new Shock(BLOWS_S[4] + 0.01 + extra, 20, 10));
      List<TimePair> pairs = ShockMatch.of(shocks(0, 0, 10), twice, SAMPLE_SD_S, REACH_S, KNOWN);
      assertThat(pairs).hasSize(8);
      assertThat(pairs.get(4).laterS()).isCloseTo(0.01, within(1e-9));
    }
  }

  @ParameterizedTest
  @CsvSource({"0.119, 8", "-0.119, 8", "0.121, 0", "-0.121, 0"})
  void shocksOfAnotherTimeAreNoPartners(double offsetS, int pairs) {
    assertThat(ShockMatch.of(shocks(0, 0, 10), shocks(offsetS, 0, 10), SAMPLE_SD_S, REACH_S, KNOWN))
        .hasSize(pairs);
    assertThat(ShockMatch.of(List.of(), shocks(0, 0, 10), SAMPLE_SD_S, REACH_S, KNOWN)).isEmpty();
  }

  @Test
  void chanceIsNoAgreement() {
    // Given: 40 shocks of either unit a tenth of a second apart, shifted at random (a fixed
    // sequence): so many candidates agree by chance. Expect: no pair.
    List<Shock> first = new ArrayList<>();
    List<Shock> second = new ArrayList<>();
    for (int k = 0; k < 40; k++) {
      first.add(new Shock(k * 0.1 + 0.04 * ((k * 7919L) % 97) / 97, 20, 10));
      second.add(new Shock(k * 0.1 + 0.04 * ((k * 6101L) % 89) / 89, 20, 10));
    }
    assertThat(ShockMatch.of(first, second, 0.00001, REACH_S, KNOWN)).isEmpty();
  }

  /** Turns about z with two sines that share no period; everything else is still. */
  private static UnitStream turning(double lagS, double rateHz, double lengthS, double size) {
    int n = (int) (lengthS * rateHz);
    double[] timeS = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    for (int i = 0; i < n; i++) {
      timeS[i] = i / rateHz;
      double t = timeS[i] - lagS;
      gyro[2][i] = size * (2 + Math.sin(2 * Math.PI * 0.71 * t) + Math.sin(2 * Math.PI * 1.37 * t));
    }
    return new UnitStream(UnitFacts.plain(BodyPoint.LEAD_HAND, rateHz), timeS, accel, gyro);
  }

  @ParameterizedTest
  @CsvSource({"0", "0.02", "-0.02", "0.0525", "-0.0831", "0.113"})
  void theLagOfACommonMovementIsFoundBetweenSamples(double lagS) {
    // Given: the same movement, seen later by the other unit. Expect: one pair for every 4 s, dated
    // at its middle, which lies half a window and the reach of 0.15 s behind the start; the lag
    // within 0.3 ms, as a parabola is laid through 25 ms steps of a slow movement.
    List<TimePair> pairs = TurningMatch.of(turning(0, 200, 21, 2), turning(lagS, 200, 21, 2));
    assertThat(pairs).hasSize(5);
    for (int k = 0; k < 5; k++) {
      assertThat(pairs.get(k).timeS()).isCloseTo(2.15 + 4 * k, within(1e-9));
      assertThat(pairs.get(k).laterS()).isCloseTo(lagS, within(0.0003));
      assertThat(pairs.get(k).sdS()).isBetween(TurningMatch.PAIR_SD_S, 0.009);
    }
  }

  @ParameterizedTest
  @CsvSource({"0.155", "-0.155"})
  void aLagBeyondReachIsNoPair(double lagS) {
    assertThat(TurningMatch.of(turning(0, 200, 9, 2), turning(lagS, 200, 9, 2))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"0.08, 0", "0.1, 2"})
  void whoHardlyTurnsGivesNoPair(double size, int pairs) {
    // Given: a rate of size times 2 and two sines of that size (RMS sqrt(5) times it). Expect:
    // pairs from 0.2 rad/s on, which is a size of 0.089.
    assertThat(TurningMatch.of(turning(0, 200, 9, 2), turning(0.02, 200, 9, size))).hasSize(pairs);
    assertThat(TurningMatch.of(turning(0, 200, 9, size), turning(0.02, 200, 9, 2))).hasSize(pairs);
  }

  @Test
  void whoTurnsOtherwiseOrNotAtAllGivesNoPair() {
    UnitStream other = turning(1.1, 200, 9, 2);
    assertThat(TurningMatch.of(turning(0, 200, 9, 2), other)).isEmpty();
    assertThat(TurningMatch.of(turning(0, 200, 3.9, 2), turning(0, 200, 9, 2))).isEmpty();
    assertThat(TurningMatch.of(turning(0, 200, 9, 2).between(50, 60), other)).isEmpty();
    assertThat(TurningMatch.of(turning(0, 200, 9, 2), other.between(50, 60))).isEmpty();
  }
}
