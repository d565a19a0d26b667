package steadyturn.analysis.pelvis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class TurnCentreTest {

  @Test
  void aQuarterTurnFromOneZeroToTwoThreeIsAboutZeroTwo() {
    // Given: a point at (1, 0) carried to (2, 3) by +90 deg. Expect: pole (0, 2), so (-1, 2) from
    // the point (Reuleaux's
    // construction, midpoint plus half the way times cot(45 deg); recomputed by hand). Within
    // 1e-12: arithmetic.
    double[] pole = TurnCentre.pole(1, 3, Math.PI / 2);
    assertThat(1 + pole[0]).isCloseTo(0, within(1e-12));
    assertThat(0 + pole[1]).isCloseTo(2, within(1e-12));
  }

  @Test
  void fiftyMillimetresWithTenDegreesTurnAboutAFarPoint() {
    // Given: slide 50 mm, turn 10 deg. Expect: pole 286.8 mm away (50 / (2 sin 5 deg)). Within 0.1
    // mm.
    double[] pole = TurnCentre.pole(50, 0, Math.toRadians(10));
    assertThat(Math.hypot(pole[0], pole[1])).isCloseTo(286.8, within(0.1));
  }

  @Test
  void aPureTurnOfTheUnitIsNoSlideOfMidHip() {
    // Given: a unit 0.11 m behind the turn axis, turn of 45 deg. Expect: the unit itself moves 77.8
    // mm towards the target
    // and 32.2 mm towards the ball (r sin, r (1 - cos)), 84.19 mm in all (2 r sin(a/2)); the pole
    // of that motion is the
    // axis, 110 mm ahead. Within 0.05 mm: rounding of the table.
    double r = 110;
    double a = Math.toRadians(45);
    double along = r * Math.sin(a);
    double across = r * (1 - Math.cos(a));
    assertThat(along).isCloseTo(77.8, within(0.05));
    assertThat(across).isCloseTo(32.2, within(0.05));
    assertThat(Math.hypot(along, across)).isCloseTo(84.19, within(0.05));
    // frame: x along the way out, y ahead; turning the other way round about z
    double[] pole = TurnCentre.pole(along, across, -a);
    assertThat(Math.hypot(pole[0], pole[1])).isCloseTo(r, within(1e-9));
  }

  @Test
  void theCircleThatHoldsASquareGoesThroughItsCorners() {
    // Given: corners of a unit square, and a point inside. Expect: half the diagonal. Within 1e-12.
    double radius =
        SmallestCircle.radius(new double[] {0, 1, 1, 0, 0.3}, new double[] {0, 0, 1, 1, 0.6});
    assertThat(radius).isCloseTo(Math.sqrt(0.5), within(1e-12));
  }

  @Test
  void theCircleThatHoldsAnObtuseTriangleIsThatOfItsLongSide() {
    // Given: (0,0), (10,0), (5,1). Expect: radius 5. Within 1e-12.
    assertThat(SmallestCircle.radius(new double[] {0, 10, 5}, new double[] {0, 0, 1}))
        .isCloseTo(5, within(1e-12));
  }
}
