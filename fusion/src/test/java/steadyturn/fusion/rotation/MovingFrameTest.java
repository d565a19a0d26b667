package steadyturn.fusion.rotation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.fusion.rotation.MovingFrame.FixedTurn;

class MovingFrameTest {

  private static final double STEP_S = 1e-4;

  /** A chain with every kind of link moving at once. */
  private static MovingFrame chain(double t) {
    MovingFrame f = new MovingFrame();
    f.setGround();
    f.slide(0, 0.2 * t * t, 0.4 * t, 0.4);
    f.turnZ(Math.sin(2 * t), 2 * Math.cos(2 * t), -4 * Math.sin(2 * t));
    f.shift(0.3, -0.1, 0.2);
    f.turnX(t * t, 2 * t, 2);
    f.slide(1, Math.cos(t), -Math.sin(t), -Math.cos(t));
    f.turnFixed(FixedTurn.of(Quaternion.fromRotationVector(new Vector3(0.2, 0.3, -0.4))));
    f.turnY(t * t * t, 3 * t * t, 6 * t);
    f.slide(2, 0.5 * t * t, t, 1);
    f.shift(0.4, 0.5, 0.6);
    return f;
  }

  @Test
  void velocityIsTheSlopeOfThePlaceInAChainOfAllLinks() {
    // Given: a chain in which all links move, at 0.7 s. Expect: central difference of its place.
    // Within 1e-6 m/s: third derivatives of order 50 leave 50 h^2/6 = 1e-7.
    Vector3 slope =
        chain(0.7 + STEP_S).placeM().minus(chain(0.7 - STEP_S).placeM()).times(0.5 / STEP_S);
    assertThat(chain(0.7).velocityMps().minus(slope).norm()).isLessThan(1e-6);
  }

  @Test
  void specificForceIsTheSlopeOfTheVelocityPlusGravityInOwnAxes() {
    // Within 1e-5 m/s^2: as above with fourth derivatives of order 1000.
    Vector3 slope =
        chain(0.7 + STEP_S)
            .velocityMps()
            .minus(chain(0.7 - STEP_S).velocityMps())
            .times(0.5 / STEP_S);
    Vector3 expected =
        chain(0.7).qGroundFrame().conjugate().rotate(slope.plus(new Vector3(0, 0, 9.8)));
    double[] felt = new double[3];
    chain(0.7).specificForceMps2(9.8, felt);
    assertThat(new Vector3(felt[0], felt[1], felt[2]).minus(expected).norm()).isLessThan(1e-5);
  }

  @Test
  void rateIsTheSmallTurnBetweenTwoInstants() {
    // Within 1e-5 rad/s: the same order of error as the place.
    Quaternion turn =
        chain(0.7 - STEP_S).qGroundFrame().conjugate().times(chain(0.7 + STEP_S).qGroundFrame());
    Vector3 expected = turn.rotationVector().times(0.5 / STEP_S);
    double[] rate = new double[3];
    chain(0.7).rateRadPerS(rate);
    for (int axis = 0; axis < 3; axis++) {
      assertThat(rate[axis]).isCloseTo(expected.get(axis), within(1e-5));
    }
  }

  @Test
  void turnsFollowTheRightHandRule() {
    // Given: quarter turns. Expect: about z takes x to y, about x takes y to z, about y takes z to
    // x, as the quaternions of this room do. Within 1e-12: a few roundings.
    MovingFrame f = new MovingFrame();
    f.setGround();
    f.turnZ(0.3, 0, 0);
    f.turnX(-0.4, 0, 0);
    f.turnY(0.5, 0, 0);
    Quaternion expected =
        Quaternion.aboutZ(0.3).times(Quaternion.aboutX(-0.4)).times(Quaternion.aboutY(0.5));
    Quaternion difference = expected.conjugate().times(f.qGroundFrame());
    assertThat(difference.rotationVector().norm()).isLessThan(1e-12);
  }

  /** One turn about own axis 0, 1 or 2 of a frame that already stands and turns in any way. */
  private static MovingFrame turned(int axis, double t) {
    MovingFrame f = new MovingFrame();
    f.setGround();
    f.turnX(0.7 + 0.3 * t, 0.3, 0);
    f.turnY(-0.5 + t * t, 2 * t, 2);
    f.turnZ(1.1 - 0.6 * t, -0.6, 0);
    switch (axis) {
      case 0 -> f.turnX(0.4 * t * t, 0.8 * t, 0.8);
      case 1 -> f.turnY(0.4 * t * t, 0.8 * t, 0.8);
      default -> f.turnZ(0.4 * t * t, 0.8 * t, 0.8);
    }
    f.shift(0.4, -0.5, 0.6);
    return f;
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2})
  void aTurnOfAFrameThatStandsInAnyWayIsTheProductOfQuaternions(int axis) {
    // Given: three turns about x, y, z, then one more. Expect: the quaternions' product, and rate
    // and force by central differences. Within 1e-12 (roundings) and 1e-5 (third derivatives).
    double t = 0.8;
    Quaternion more =
        Quaternion.fromRotationVector(
            new Vector3[] {Vector3.X, Vector3.Y, Vector3.Z}[axis].times(0.4 * t * t));
    Quaternion expected =
        Quaternion.aboutX(0.7 + 0.3 * t)
            .times(Quaternion.aboutY(-0.5 + t * t))
            .times(Quaternion.aboutZ(1.1 - 0.6 * t))
            .times(more);
    MovingFrame now = turned(axis, t);
    assertThat(expected.conjugate().times(now.qGroundFrame()).rotationVector().norm())
        .isLessThan(1e-12);
    assertThat(now.xAxis().minus(expected.rotate(Vector3.X)).norm()).isLessThan(1e-12);
    assertThat(now.placeM().minus(expected.rotate(new Vector3(0.4, -0.5, 0.6))).norm())
        .isLessThan(1e-12);
    MovingFrame before = turned(axis, t - STEP_S);
    MovingFrame after = turned(axis, t + STEP_S);
    Vector3 velocity = after.placeM().minus(before.placeM()).times(0.5 / STEP_S);
    assertThat(now.velocityMps().minus(velocity).norm()).isLessThan(1e-5);
    Vector3 pull = after.velocityMps().minus(before.velocityMps()).times(0.5 / STEP_S);
    double[] felt = new double[3];
    now.specificForceMps2(0, felt);
    assertThat(now.qGroundFrame().rotate(new Vector3(felt[0], felt[1], felt[2])).minus(pull).norm())
        .isLessThan(1e-5);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2})
  void aSlideGoesAlongTheFramesOwnAxis(int axis) {
    // Given: a frame stands in any way. Expect: the place moves along that axis of it alone.
    MovingFrame f = new MovingFrame();
    f.setGround();
    Quaternion stands = Quaternion.fromRotationVector(new Vector3(0.6, -0.9, 0.4));
    f.turnFixed(FixedTurn.of(stands));
    f.turnFixed(FixedTurn.of(Quaternion.aboutX(0.3))); // a second one turns on from the first
    f.slide(axis, 0.7, 0.5, -0.3);
    Quaternion q = stands.times(Quaternion.aboutX(0.3));
    Vector3 along = q.rotate(new Vector3[] {Vector3.X, Vector3.Y, Vector3.Z}[axis]);
    assertThat(f.placeM().minus(along.times(0.7)).norm()).isLessThan(1e-12);
    assertThat(f.velocityMps().minus(along.times(0.5)).norm()).isLessThan(1e-12);
    double[] felt = new double[3];
    f.specificForceMps2(0, felt);
    assertThat(felt[axis]).isCloseTo(-0.3, within(1e-12));
  }

  @Test
  void aPlaceIsTakenOverWithoutTheTurn() {
    // Given: a chain whose place a used frame takes. Expect: the place to the digit, its own turn.
    MovingFrame first = chain(0.7);
    MovingFrame placed = chain(0.3);
    Quaternion stood = placed.qGroundFrame();
    placed.setPlace(first);
    assertThat(placed.placeM()).isEqualTo(first.placeM());
    assertThat(placed.velocityMps()).isEqualTo(first.velocityMps());
    assertThat(placed.qGroundFrame()).isEqualTo(stood);
    placed.setGround();
    MovingFrame fresh = new MovingFrame();
    fresh.setGround();
    assertSame(fresh, placed);
  }

  private static void assertSame(MovingFrame one, MovingFrame other) {
    double[] a = new double[3];
    double[] b = new double[3];
    assertThat(other.placeM()).isEqualTo(one.placeM());
    assertThat(other.velocityMps()).isEqualTo(one.velocityMps());
    assertThat(other.qGroundFrame()).isEqualTo(one.qGroundFrame());
    one.rateRadPerS(a);
    other.rateRadPerS(b);
    assertThat(b).containsExactly(a);
    one.specificForceMps2(9.8, a);
    other.specificForceMps2(9.8, b);
    assertThat(b).containsExactly(a);
  }
}
