package steadyturn.fusion.rotation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

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
    f.turnFixed(Quaternion.fromRotationVector(new Vector3(0.2, 0.3, -0.4)));
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
}
