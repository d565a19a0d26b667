package steadyturn.fusion.filter.kalman;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.MutableQuaternion;

/**
 * What an error of attitude does to a place found by integrating twice: the laws that say how good
 * an orientation must be. Exact: constant acceleration error b gives b T^2 / 2, a tilt growing at w
 * gives g w T^3 / 6; a velocity line through two still ends takes off the first and leaves -1/2 of
 * the second.
 */
class DriftLawTest {

  private static final double G = 9.80665;
  private static final double SWING_S = 1.1;
  private static final int STEPS = 11_000;

  /** Place of a still unit after the swing, as seen through a wrong attitude, m: raw, corrected. */
  private static double[] drift(double startTiltRad, double tiltRateRadPerS) {
    double dt = SWING_S / STEPS;
    double velocity = 0;
    double place = 0;
    double correction = 0;
    double[] velocities = new double[STEPS + 1];
    for (int i = 0; i < STEPS; i++) {
      double tilt = startTiltRad + tiltRateRadPerS * (i + 0.5) * dt;
      MutableQuaternion wrong = new MutableQuaternion().turnRight(0, tilt, 0);
      double accel = wrong.rotatedX(0, 0, G);
      place += (velocity + 0.5 * accel * dt) * dt;
      velocity += accel * dt;
      velocities[i + 1] = velocity;
    }
    for (int i = 0; i < STEPS; i++) {
      double line = velocity * (i + 0.5) / STEPS;
      correction += (0.5 * (velocities[i] + velocities[i + 1]) - line) * dt;
    }
    return new double[] {place, correction};
  }

  @Test
  void aTiltOfOneDegreeDriftsTenCentimetresInASwing() {
    // Expect: g sin(1 deg) T^2 / 2 = 0.1035 m; nothing after the still-to-still correction.
    // Within 0.1 mm (five digits of the source are 10.35 cm) and 1e-9 m (exact law, rounding).
    double[] drift = drift(Math.toRadians(1), 0);
    assertThat(drift[0]).isCloseTo(0.1035, within(1e-4));
    assertThat(drift[1]).isCloseTo(0, within(1e-9));
  }

  @Test
  void aTiltGrowingByATenthOfADegreePerSecondLeavesTwoMillimetres() {
    // Expect: 3.80 mm, and -1.90 mm after the still-to-still correction. Within 0.005 mm: the
    // digits of the source.
    double[] drift = drift(0, Math.toRadians(0.1));
    assertThat(1000 * drift[0]).isCloseTo(3.80, within(0.005));
    assertThat(1000 * drift[1]).isCloseTo(-1.90, within(0.005));
  }
}
