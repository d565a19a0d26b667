package steadyturn.analysis.limits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.limits.TrunkDoubt.Witness;

/** What lags of hips behind arms say of a clock; spreads as {@code PelvisSwings} states them. */
class TrunkDoubtTest {

  private static final double KNOWN_S = 0.012;

  private static TrunkDoubt doubt(
      double takeawayS, double turnS, double fastestS, Double... blowsS) {
    return TrunkDoubt.of(
        List.of(
            List.of(new Witness(takeawayS, 0.055)),
            List.of(new Witness(turnS, 0.06)),
            List.of(new Witness(fastestS, 0.08))),
        List.of(blowsS),
        KNOWN_S);
  }

  @Test
  void aUsualBodyCostsNothing() {
    // Given: lags within one spread each. Expect: less than the 12 ms known, in squares a tenth.
    TrunkDoubt doubt = doubt(0.03, -0.04, 0.05);
    assertThat(doubt.wrong()).isLessThan(0.005);
    assertThat(doubt.sdS()).isLessThan(0.004);
  }

  @Test
  void oneHabitIsNoClock() {
    // Given: hips that turn round 250 ms after the hands' usual, or stay at address for 250 ms
    // while all else is usual. Expect: far from disbelieved, and less than the 30 ms that withhold.
    assertThat(doubt(0, 0.25, 0.02).wrong()).isLessThan(0.1);
    assertThat(doubt(0.25, 0, 0.02).wrong()).isLessThan(0.1);
    assertThat(doubt(0, 0.25, 0.02).sdS()).isLessThan(0.03);
    assertThat(doubt(0.25, 0, 0.02).sdS()).isLessThan(0.03);
  }

  @Test
  void whatMovesAllAlikeIsAClock() {
    // Given: all three 200 ms late. Expect: disbelieved, its size within the spread of three
    // bodies' lags together (37 ms), and a tie as wide as that.
    for (double offS : new double[] {0.2, -0.2}) {
      TrunkDoubt doubt = doubt(offS, offS, offS);
      assertThat(doubt.isDisbelieved()).isTrue();
      assertThat(doubt.offS()).isCloseTo(offS, within(0.037));
      assertThat(doubt.sdS()).isBetween(0.15, 0.25);
    }
  }

  @Test
  void aBlowElsewhereTellsWhereLagsOnlyHint() {
    // Given: lags 100 ms late, which a body may show; then a blow there as well; then one where it
    // belongs. Expect: only the second is more than a doubt.
    TrunkDoubt lags = doubt(0.1, 0.1, 0.1);
    assertThat(lags.isDisbelieved()).isFalse();
    TrunkDoubt elsewhere = doubt(0.1, 0.1, 0.1, 0.1);
    assertThat(elsewhere.isDisbelieved()).isTrue();
    assertThat(elsewhere.offS()).isCloseTo(0.1, within(0.01));
    assertThat(doubt(0.1, 0.1, 0.1, 0.0).wrong()).isLessThan(0.02);
  }

  @Test
  void stepsThatComeBackInEverySwingAreOneStep() {
    // Given: four times the same blow 150 ms after the ball's, all lags usual. Expect: as with one.
    double one = doubt(0, 0, 0, 0.15).wrong();
    assertThat(doubt(0, 0, 0, 0.15, 0.15, 0.15, 0.15).wrong()).isCloseTo(one, within(1e-9));
    assertThat(one).isLessThan(0.1);
  }

  @Test
  void withoutAWitnessNothingIsSaid() {
    assertThat(TrunkDoubt.of(List.of(List.of()), List.of(), KNOWN_S).sdS()).isZero();
  }
}
