package steadyturn.analysis.lab.unit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LowPassTest {

  private static double most(double hz) {
    LowPass filter =
        new LowPass(
            (t, force, rate) -> {
              force[0] = Math.sin(2 * Math.PI * hz * t);
              rate[1] = force[0];
            },
            60,
            1.0 / 250);
    double[] force = new double[3];
    double[] rate = new double[3];
    double most = 0;
    for (int k = 0; k < 5000; k++) {
      filter.feel(k / 250.0, force, rate);
      assertThat(rate[1]).isEqualTo(force[0]);
      most = k > 500 ? Math.max(most, Math.abs(force[0])) : 0;
    }
    return most;
  }

  @Test
  void aButterworthFilterHalvesThePowerAtItsCut() {
    // Given: sines at 5, 60 (the cut) and 120.7 Hz through a filter asked for at 250 Hz. Expect: 1,
    // 1 / sqrt 2 and 1 / sqrt(1 + 2^4) at twice the cut (Butterworth, second order), within 2 %:
    // samples may miss the crest, and the bilinear transform bends 120 Hz by 2 % at 1000 Hz.
    assertThat(most(5.03)).isCloseTo(1, within(0.01));
    assertThat(most(60)).isCloseTo(Math.sqrt(0.5), within(0.015));
    assertThat(most(120.7)).isCloseTo(1 / Math.sqrt(17), within(0.02));
  }
}
