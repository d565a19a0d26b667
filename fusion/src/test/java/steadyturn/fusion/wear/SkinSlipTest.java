package steadyturn.fusion.wear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Takeaway at 1 s, top at 2 s, impact at 2.25 s, finish at 3 s. */
class SkinSlipTest {

  private static final SkinSlip SLIP = new SkinSlip(1, 2, 2.25, 3);

  @ParameterizedTest
  @CsvSource({"0.5,0,0,0", "2,1,0,0", "2.25,0,1,0", "3,0,0,1", "4,0,0,1", "1.5,0.5,0,0"})
  void eachTurnIsWholeAtItsMomentAndHalfGrownHalfWay(
      double timeS, double top, double impact, double finish) {
    // Given: the moments themselves, before, after, and half way back. Within 1e-12: rounding.
    assertThat(SLIP.parts(timeS))
        .containsExactly(new double[] {top, impact, finish}, within(1e-12));
  }

  @Test
  void whatIsLostByOneTurnIsGainedByTheNext() {
    // Given: after the top. Expect: shares that add up to one. Within 1e-12: rounding.
    for (double t = 2; t < 4; t += 0.01) {
      double[] parts = SLIP.parts(t);
      assertThat(parts[0] + parts[1] + parts[2]).as("at " + t + " s").isCloseTo(1, within(1e-12));
    }
  }

  @Test
  void momentsOutOfOrderAreRefused() {
    assertThatThrownBy(() -> new SkinSlip(1, 2, 2.25, 2.2))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("2.2");
  }
}
