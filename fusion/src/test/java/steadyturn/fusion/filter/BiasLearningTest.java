package steadyturn.fusion.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.Supplier;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.fusion.filter.kalman.ErrorStateKalmanFilter;
import steadyturn.fusion.filter.lowpass.LowPassFilter;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/** What both bias-learning filters make of a bias of its own size and sign on each axis. */
class BiasLearningTest {

  private static final double G = 9.80665;
  private static final Vector3 BIAS =
      new Vector3(Math.toRadians(0.6), Math.toRadians(-0.4), Math.toRadians(0.9));

  private static OrientationFilter filter(String kind) {
    Supplier<OrientationFilter> low = LowPassFilter::withDefaults;
    Supplier<OrientationFilter> kalman = ErrorStateKalmanFilter::withDefaults;
    return (kind.equals("low-pass") ? low : kalman).get();
  }

  private static Quaternion wobbling(double t, double size, Quaternion start) {
    return start.times(
        Quaternion.fromRotationVector(
            new Vector3(
                    0.9 * Math.sin(1.9 * t), 0.7 * Math.sin(1.3 * t + 1), 1.1 * Math.sin(2.3 * t))
                .times(size)));
  }

  /** Feeds a unit that wobbles on the spot (size 0: lies) for so long, and gives its attitude. */
  private static Quaternion feed(
      OrientationFilter filter, double lengthS, double size, Quaternion start) {
    double dt = 0.01;
    Quaternion before = wobbling(0, size, start);
    for (int i = 1; i <= Math.round(lengthS / dt); i++) {
      Quaternion now = wobbling(i * dt, size, start);
      Vector3 turn = before.conjugate().times(now).rotationVector();
      Quaternion middle = before.times(Quaternion.fromRotationVector(turn.times(0.5)));
      Vector3 force = middle.conjugate().rotate(new Vector3(0, 0, G));
      Vector3 shown = turn.times(1 / dt).plus(BIAS);
      filter.update(shown.x(), shown.y(), shown.z(), force.x(), force.y(), force.z(), dt);
      before = now;
    }
    return before;
  }

  private static double tiltDeg(OrientationFilter filter, Quaternion truth) {
    Vector3 up = filter.qEarthUnit().times(truth.conjugate()).rotate(Vector3.Z);
    return Math.toDegrees(Math.acos(Math.min(1, up.z())));
  }

  @ParameterizedTest
  @CsvSource({"low-pass,0,0", "kalman,0,0", "low-pass,0.7,-0.4", "kalman,0.7,-0.4"})
  void aRestGivesTheBiasOfEveryAxis(String kind, double roll, double pitch) {
    // Given: 10 s at rest in some attitude. Expect: the bias. Within 3 %: the first 0.7 s tell rest
    // from movement, and levelling has turned a little meanwhile. At rest, level within 0.05 deg.
    OrientationFilter filter = filter(kind);
    Quaternion start = Quaternion.aboutX(roll).times(Quaternion.aboutY(pitch));
    Quaternion truth = feed(filter, 10, 0, start);
    assertThat(filter.gyroBiasRadPerS().minus(BIAS).norm()).isLessThan(0.03 * BIAS.norm());
    assertThat(filter.atRest()).isTrue();
    assertThat(tiltDeg(filter, truth)).isLessThan(0.05);
  }

  @ParameterizedTest
  @CsvSource({"low-pass,0.35", "kalman,0.1"})
  void movementAloneGivesTheBiasInTime(String kind, double part) {
    // Given: 120 s of wobbling about all axes, never at rest. Expect: the bias to a part of its
    // size, and the vertical within 1 deg: a sign turned anywhere drives both away.
    OrientationFilter filter = filter(kind);
    Quaternion truth = feed(filter, 120, 1, Quaternion.aboutX(0.3));
    assertThat(filter.atRest()).isFalse();
    assertThat(filter.gyroBiasRadPerS().minus(BIAS).norm()).isLessThan(part * BIAS.norm());
    assertThat(tiltDeg(filter, truth)).isLessThan(1);
  }

  @ParameterizedTest
  @CsvSource({"low-pass, 0.25", "kalman, 0.1767"})
  void sigmasShrinkAtRestAndTheHeadingsGrowsInMovement(String kind, double floorDeg) {
    // Expect: after a rest the inclination known to the floor of 0.25 deg and little more (Kalman:
    // the force of this perfect unit is gravity at rest, which counts as much as the floor assumed:
    // 0.25 deg / sqrt 2); a minute of movement later the heading is known less well than after the
    // rest.
    OrientationFilter filter = filter(kind);
    feed(filter, 10, 0, Quaternion.IDENTITY);
    double heading = filter.headingSigmaRad();
    assertThat(Math.toDegrees(filter.inclinationSigmaRad())).isBetween(floorDeg, 0.8);
    feed(filter, 60, 1, Quaternion.IDENTITY);
    assertThat(filter.headingSigmaRad()).isGreaterThan(heading);
    assertThat(Math.toDegrees(filter.headingSigmaRad())).isCloseTo(2.5, within(2.4));
  }
}
