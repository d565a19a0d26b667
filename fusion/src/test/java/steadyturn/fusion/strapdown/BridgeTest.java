package steadyturn.fusion.strapdown;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class BridgeTest {

  private static final Bridge BRIDGE = new Bridge(7, 1.25, 1.5, 0.1, 0.2, 0.3);

  @Test
  void itsNineSpreadsAreTurnVelocityAndPlace() {
    double[] expect = {0.1, 0.1, 0.1, 0.2, 0.2, 0.2, 0.3, 0.3, 0.3};
    for (int i = 0; i < Bridge.SIZE; i++) {
      assertThat(BRIDGE.sd(i)).as("number %d", i).isEqualTo(expect[i]);
    }
    assertThat(BRIDGE.lengthS()).isCloseTo(0.25, within(1e-15));
  }

  @Test
  void itHoldsWhatLiesStrictlyBetweenItsGoodSamples() {
    assertThat(BRIDGE.holds(1.25)).isFalse();
    assertThat(BRIDGE.holds(Math.nextUp(1.25))).isTrue();
    assertThat(BRIDGE.holds(Math.nextDown(1.5))).isTrue();
    assertThat(BRIDGE.holds(1.5)).isFalse();
  }

  @Test
  void turnedTooFarItIsBeyond() {
    // Expect: at 20 deg errors still go by straight lines (sine and angle differ by 2 %), beyond
    // not any more.
    double limit = Math.toRadians(20);
    assertThat(new Bridge(7, 1, 2, limit, 9, 9).isBeyond()).isFalse();
    assertThat(new Bridge(7, 1, 2, Math.nextUp(limit), 0, 0).isBeyond()).isTrue();
  }
}
