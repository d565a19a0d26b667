package steadyturn.fusion.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

class RestGateTest {

  /** 5 s at 200 Hz: moving, still from 1 to 2.5 s with sway of the given size, moving again. */
  private static UnitStream stream(double swayDegPerS) {
    SplittableRandom random = new SplittableRandom(3);
    int n = 1000;
    double[] time = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    for (int i = 0; i < n; i++) {
      time[i] = i / 200.0;
      boolean still = time[i] >= 1 && time[i] < 2.5;
      double rate = Math.toRadians(still ? swayDegPerS : 60);
      gyro[0][i] = 0.02 + rate * (random.nextDouble() - 0.5) * Math.sqrt(12) / Math.sqrt(3);
      gyro[1][i] = rate * (random.nextDouble() - 0.5) * 2;
      gyro[2][i] = rate * (random.nextDouble() - 0.5) * 2;
      accel[2][i] = 9.81 + (still ? 0.02 : 2) * (random.nextDouble() - 0.5);
    }
    return new UnitStream(UnitFacts.plain(BodyPoint.PELVIS, 200), time, accel, gyro);
  }

  private static final Vector3 BIAS = new Vector3(0.02, 0, 0);

  @Test
  void aSwayingPersonIsAtRest() {
    // Given: sway of 1 deg/s (a standing person, our assumption). Expect: the rest from 1 to 2.5 s.
    // Within 0.15 s: one window of the gate.
    Optional<Rest> rest = new RestGate(RestSettings.address()).before(stream(1), BIAS, 0, 3.5);
    assertThat(rest).isPresent();
    assertThat(rest.get().startS()).isCloseTo(1, within(0.15));
    assertThat(rest.get().endS()).isCloseTo(2.5, within(0.15));
  }

  @Test
  void aRestlessAddressIsNone() {
    // Given: 8 deg/s between the movements. Expect: no rest by the limit of 3 deg/s at address, but
    // a rest by the
    // limit of 9 deg/s of a finish.
    assertThat(new RestGate(RestSettings.address()).before(stream(8), BIAS, 0, 3.5)).isEmpty();
    assertThat(new RestGate(RestSettings.finish()).after(stream(8), BIAS, 0.5, 4)).isPresent();
  }

  @Test
  void aShortRestIsTooShort() {
    // Given: a look at 0.5 s of the rest only. Expect: nothing, as the address asks for 0.7 s.
    assertThat(new RestGate(RestSettings.address()).before(stream(1), BIAS, 1.1, 1.6)).isEmpty();
  }
}
