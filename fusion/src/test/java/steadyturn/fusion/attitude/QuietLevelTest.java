package steadyturn.fusion.attitude;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * The level of an arm that swings about a fixed shoulder, 0.55 m from it: a pendulum whose force is
 * exact (centripetal, tangential and gravity). The takeaway is at 0 s.
 */
class QuietLevelTest {

  private static final double ARM_M = 0.55;
  private static final double G = 9.80665;
  private static final double HZ = 200;
  private static final double STEP_S = 1e-4;

  /** Still until 2.4 s before, then a waggle of 14 deg that runs on. */
  private static double waggleRad(double t) {
    return t < -2.4 ? 0 : 0.25 * (1 - Math.cos(2 * Math.PI * 0.8 * (t + 2.4))) / 2;
  }

  private static UnitStream stream(DoubleUnaryOperator angleRad) {
    int n = (int) (4 * HZ);
    double[] time = new double[n];
    double[][] force = new double[3][n];
    double[][] rate = new double[3][n];
    for (int i = 0; i < n; i++) {
      double t = -3.5 + i / HZ;
      time[i] = t;
      double a = angleRad.applyAsDouble(t);
      double before = angleRad.applyAsDouble(t - STEP_S);
      double after = angleRad.applyAsDouble(t + STEP_S);
      double speed = (after - before) / (2 * STEP_S);
      double slope = (after - 2 * a + before) / (STEP_S * STEP_S);
      // unit x along the arm, z ahead of it, y the axis of turning
      force[0][i] = -ARM_M * speed * speed - G * Math.cos(a);
      force[2][i] = ARM_M * slope + G * Math.sin(a);
      rate[1][i] = -speed;
    }
    return new UnitStream(UnitFacts.plain(BodyPoint.LEAD_FOREARM, HZ), time, force, rate);
  }

  private static double errorRad(GyroTrack level, DoubleUnaryOperator angleRad) {
    return Math.acos(-level.qTrackUnit(600).rotate(Vector3.X).z())
        - Math.abs(angleRad.applyAsDouble(level.timeS(600)));
  }

  @Test
  void anArmThatWagglesIsLevelledOverALongerTime() {
    // Given: a waggle that runs into the takeaway, seen exactly. Expect: the mean force of the last
    // moments (0.75 to 0.15 s before) leans by the speed gained in them, 0.55 m x 0.56 rad/s over
    // 0.6 s of 9.8 m/s^2 = 3 deg; between moments without speed nothing is left but the sampling.
    // Within 0.3 deg. The spread says that little was to be feared, and more than nothing.
    GyroTrack raw = GyroTrack.of(stream(QuietLevelTest::waggleRad), Vector3.ZERO);
    GyroTrack usual = raw.levelled(raw.indexAt(-0.75), raw.indexAt(-0.15));
    assertThat(Math.abs(errorRad(usual, QuietLevelTest::waggleRad)))
        .isGreaterThan(Math.toRadians(1.5));
    QuietLevel level = QuietLevel.before(raw, 0).orElseThrow();
    assertThat(errorRad(level.track(), QuietLevelTest::waggleRad))
        .isCloseTo(0, within(Math.toRadians(0.3)));
    assertThat(level.pushRad()).isBetween(0.0, Math.toRadians(0.3));
  }

  @Test
  void aSteadyTurnSaysWhatItMayTilt() {
    // Given: an arm that turns at 0.2 rad/s all the time, so that no moment is better than another.
    // Expect: the usual moments, and 0.55 m x 0.2 rad/s at both ends over the usual 0.6 s and 9.8
    // m/s^2: sqrt(2) x 0.11 / 5.88 = 1.52 deg, or a longer time's less where that is half of it.
    // Here 2.6 s, the longest, is: sqrt(2) x 0.11 / (2.6 x 9.81) = 0.35 deg. Within 0.02 deg: grid.
    GyroTrack raw = GyroTrack.of(stream(t -> 0.2 * (t + 1.5)), Vector3.ZERO);
    QuietLevel level = QuietLevel.before(raw, 0).orElseThrow();
    assertThat(level.pushRad()).isCloseTo(Math.toRadians(0.35), within(Math.toRadians(0.02)));
  }

  @Test
  void aStandingArmIsLevelledWhereItAlwaysWas() {
    // Given: an arm that never moves. Expect: the usual moments; no push.
    GyroTrack raw = GyroTrack.of(stream(t -> 0.1), Vector3.ZERO);
    QuietLevel level = QuietLevel.before(raw, 0).orElseThrow();
    assertThat(level.pushRad()).isZero();
    assertThat(errorRad(level.track(), t -> 0.1)).isCloseTo(0, within(1e-6));
  }

  @Test
  void withoutForceBeforeTheTakeawayThereIsNoLevel() {
    // Given: the force is lost from 0.9 s before the takeaway on. Expect: none.
    UnitStream whole = stream(t -> 0.1);
    double[][] force = new double[3][];
    double[][] rate = new double[3][];
    for (int axis = 0; axis < 3; axis++) {
      force[axis] = whole.accelColumnMps2(axis).clone();
      rate[axis] = whole.gyroColumnRadPerS(axis);
      Arrays.fill(force[axis], whole.indexAt(-0.9), whole.size(), Double.NaN);
    }
    UnitStream lost = new UnitStream(whole.facts(), whole.timeColumnS(), force, rate);
    assertThat(QuietLevel.before(GyroTrack.of(lost, Vector3.ZERO), 0)).isEmpty();
  }
}
