package steadyturn.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TwoSpreadsTest {

  @ParameterizedTest
  @CsvSource({
    "2, 4.303, 0.002",
    "2, 9.925, 0.002",
    "2, 31.60, 0.002",
    "2, 100, 0.03",
    "4, 2.776, 0.002",
    "4, 8.610, 0.002",
    "9, 4.781, 0.002",
    "29, 3.659, 0.002"
  })
  void withOneSpreadOnlyItIsStudentsT(int freedom, double t, double part) {
    // Given: second spread and known part 0. Expect: the tail of Student's t.
    // Within 0.2 % of the tail, 3 % far out where it is 5e-5: no verdict is made there.
    double expect = 1 - new TDistribution(freedom).cumulativeProbability(t);
    double tail = new TwoSpreads(9, freedom, 0, 5, 0).upperTail(3 * t);
    assertThat(tail / expect).isCloseTo(1, within(part));
  }

  @ParameterizedTest
  @CsvSource({"-3", "-0.5", "0", "0.1", "1", "1.96", "3", "4", "6"})
  void theNormalTailAgreesWithAnotherImplementation(double z) {
    // Given: z. Expect: the tail of commons-math. Within 1e-7: half of the printed 1.5e-7 of erf.
    double expect = 1 - new NormalDistribution().cumulativeProbability(z);
    assertThat(TwoSpreads.normalTail(z)).isCloseTo(expect, within(1e-7));
  }

  @Test
  void withKnownSpreadOnlyItIsNormal() {
    // Given: SD 2 known. Expect: normal tail beyond 3. Within 1e-7: error of the normal tail.
    double expect = 1 - new NormalDistribution(0, 2).cumulativeProbability(3);
    assertThat(new TwoSpreads(0, 4, 0, 4, 4).upperTail(3)).isCloseTo(expect, within(1e-7));
  }

  @Test
  void equalSpreadsOfSevenAndSevenGiveTheTabledFivePercentPoint() {
    // Given: equal spreads, 6 and 6 degrees of freedom. Expect: 2.435 (Fisher and Yates,
    // Statistical
    // Tables, table of Sukhatme; from memory). Within 0.002: printed to three places, quadrature.
    double point = new TwoSpreads(0.5, 6, 0.5, 6, 0).upperQuantile(0.025);
    assertThat(point).isCloseTo(2.435, within(0.002));
  }

  @Test
  void threePartsTogetherMatchDrawnNumbers() {
    // Given: a = 2 with 3, b = 1 with 9 degrees of freedom, c = 1.5. Expect: the share of 400,000
    // draws beyond 6. Within 0.0012: three standard errors of that share.
    long seed = 20260301;
    System.err.println("seed " + seed);
    Random random = new Random(seed);
    int beyond = 0;
    int draws = 400_000;
    for (int i = 0; i < draws; i++) {
      double x = 2 * student(random, 3) + student(random, 9) + 1.5 * random.nextGaussian();
      beyond += x > 6 ? 1 : 0;
    }
    double tail = new TwoSpreads(4, 3, 1, 9, 2.25).upperTail(6);
    assertThat(tail).isCloseTo((double) beyond / draws, within(0.0012));
  }

  @Test
  void nothingVariesNothingIsExceeded() {
    var none = new TwoSpreads(0, 4, 0, 4, 0);
    assertThat(none.upperTail(0.1)).isZero();
    assertThat(none.upperQuantile(0.025)).isZero();
  }

  @ParameterizedTest
  @CsvSource({"9, 2, 1, 2, 0", "1, 4, 1, 9, 3", "0, 2, 0, 2, 5", "1e-6, 2, 4, 2, 0"})
  void aQuantileIsExceededAsOftenAsItSays(
      double variance1, int freedom1, double variance2, int freedom2, double known) {
    // Given: 0.1 %, 2.5 % and 20 % points. Expect: their own tails back. Within 1e-5 of the tail:
    // the last Newton step is under 1e-6 of the scale.
    var spread = new TwoSpreads(variance1, freedom1, variance2, freedom2, known);
    for (double p : new double[] {0.001, 0.025, 0.2}) {
      double tail = spread.upperTail(spread.upperQuantile(p));
      assertThat(tail / p).isCloseTo(1, within(1e-5));
    }
  }

  private static double student(Random random, int freedom) {
    double chi2 = 0;
    for (int i = 0; i < freedom; i++) {
      double z = random.nextGaussian();
      chi2 += z * z;
    }
    return random.nextGaussian() / Math.sqrt(chi2 / freedom);
  }
}
