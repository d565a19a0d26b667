package steadyturn.fusion.filter.kalman;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import steadyturn.fusion.filter.SampleGuard;
import steadyturn.fusion.filter.SampleLimits;
import steadyturn.fusion.rotation.MutableQuaternion;

class LivelinessTest {

  private static final double G = 9.80665;
  private static final double USUAL = 0.25;

  /** Forty seconds of swinging to and fro along x, peak of acceleration as given, once a second. */
  private static Liveliness swinging(double peakMps2, double upMps2, double tiltVariance) {
    Liveliness liveliness = new Liveliness();
    SampleGuard guard = new SampleGuard(SampleLimits.unlimited());
    BlockSums sums = new BlockSums();
    MutableQuaternion level = new MutableQuaternion();
    for (int i = 0; i < 4000; i++) {
      guard.take(0, 0, 0, 0, 0, G, 0.01);
      double x = peakMps2 * Math.sin(2 * Math.PI * 0.01 * i);
      sums.add(level, guard, new double[3], x, 0, upMps2);
      if (i % 10 == 9) {
        liveliness.take(sums, tiltVariance);
        sums.clear();
      }
    }
    return liveliness;
  }

  @Test
  void aSlowMovementKeepsTheUsualBounds() {
    // Given: peaks of 1 m/s^2: 0.16 m/s, 25 mm. Expect: no more room than usual.
    Liveliness slow = swinging(1, G, 0);
    assertThat(slow.speedRoom(USUAL)).isEqualTo(1);
    assertThat(slow.placeRoom(USUAL)).isEqualTo(1);
  }

  @Test
  void aLivelyMovementGetsRoomWithItsSquare() {
    // Given: peaks of 60 and 120 m/s^2 once a second: 9.5 m/s and twice that. Expect: one axis of
    // three swings with mean square 9.5^2/2, so room 15/0.25 = 61; the memory of one second takes a
    // part of it: between half and all. Twice the peak: four times, within 1e-9: all is linear.
    Liveliness lively = swinging(60, G, 0);
    double speed = lively.speedRoom(USUAL);
    assertThat(speed).isBetween(30.0, 61.0);
    assertThat(swinging(120, G, 0).speedRoom(USUAL)).isCloseTo(4 * speed, within(1e-9 * speed));
    assertThat(lively.placeRoom(USUAL)).isGreaterThan(10);
  }

  @Test
  void whatAnUncertainTiltWouldFeignIsNoMovement() {
    // Given: the same with a tilt of 1 rad sigma: feigns 2 (9.8 m/s)^2, more than is seen. Expect:
    // usual bounds.
    assertThat(swinging(60, G, 1).speedRoom(USUAL)).isEqualTo(1);
  }

  @Test
  void aForceThatPointsDownForSecondsSaysThatUpIsWrong() {
    assertThat(swinging(60, G, 0).upsideDown()).isFalse();
    assertThat(swinging(60, -G, 0).upsideDown()).isTrue();
  }
}
