package steadyturn.fusion.displace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

class StrapdownTest {

  private static final Ride TURN_AND_SLIDE =
      new Ride(
          t -> 0.1 * Ride.step(t, 1, 1.8),
          t -> -0.8 * Ride.step(t, 1, 1.8) + 1.5 * Ride.step(t, 1.8, 2.4),
          new Vector3(-0.11, 0, 0.08));

  private static UnitState still() {
    return UnitState.start(Quaternion.IDENTITY, Vector3.ZERO);
  }

  @Test
  void aPerfectUnitIsFollowedToTheMillimetre() {
    // Given: exact samples of a turn and slide at 500 Hz, no unit error. Expect: the path itself.
    // Within 0.2 mm: trapezoid and 0.1 ms differences; a wrong sign costs centimetres.
    UnitStream samples = TURN_AND_SLIDE.samples(500, 3, Vector3.ZERO, Vector3.ZERO);
    Strapdown pass = Strapdown.run(samples, still(), Ride.GRAVITY_MPS2);
    Vector3 moved = TURN_AND_SLIDE.positionM(3).minus(TURN_AND_SLIDE.positionM(0));
    Vector3 found = pass.positionM(pass.size() - 1);
    assertThat(found.minus(moved).norm()).isLessThan(2e-4);
    assertThat(pass.qLevelUnit(pass.size() - 1).twistAboutZRad()).isCloseTo(0.7, within(1e-6));
  }

  @Test
  void aTiltOfOneDegreeDriftsByHalfTheAccelerationTimesTimeSquared() {
    // Given: a still unit, first attitude wrong by 1 deg, 1.1 s. Expect: 0.5 g sin(1 deg) T^2 =
    // 103.5 mm
    // (closed form, constant acceleration error). Within 0.1 mm: rounding of T to whole samples.
    Ride still = new Ride(t -> 0, t -> 0, Vector3.ZERO);
    UnitStream samples = still.samples(1000, 1.1, Vector3.ZERO, Vector3.ZERO);
    UnitState tilted = UnitState.start(Quaternion.aboutY(Math.toRadians(1)), Vector3.ZERO);
    Strapdown pass = Strapdown.run(samples, tilted, Ride.GRAVITY_MPS2);
    assertThat(1e3 * Math.abs(pass.positionM(pass.size() - 1).x())).isCloseTo(103.55, within(0.1));
  }

  @Test
  void aTiltThatGrowsDriftsWithTheCubeOfTime() {
    // Given: a still unit with a gyro bias of 0.1 deg/s, 1.1 s. Expect: g w T^3 / 6 = 3.80 mm
    // (closed form).
    // Within 0.02 mm: sine against angle.
    Ride still = new Ride(t -> 0, t -> 0, Vector3.ZERO);
    UnitStream samples =
        still.samples(1000, 1.1, Vector3.ZERO, new Vector3(0, Math.toRadians(0.1), 0));
    Strapdown pass = Strapdown.run(samples, still(), Ride.GRAVITY_MPS2);
    assertThat(1e3 * Math.abs(pass.positionM(pass.size() - 1).x())).isCloseTo(3.80, within(0.02));
  }

  @Test
  void everySensitivityIsTheDifferenceOfTwoPasses() {
    // Given: a turn and slide. Expect: analytic derivatives = central differences of two whole
    // passes.
    // Within 1 % of the largest entry of that row: second-order terms of a step of 1e-4.
    UnitStream samples = TURN_AND_SLIDE.samples(200, 2.5, Vector3.ZERO, Vector3.ZERO);
    Strapdown pass = Strapdown.run(samples, still(), Ride.GRAVITY_MPS2);
    int k = pass.size() - 1;
    for (int p = 0; p < UnitState.SIZE; p++) {
      double[] step = new double[UnitState.SIZE];
      step[p] = 1e-4;
      Strapdown plus = Strapdown.run(samples, still().plus(step), Ride.GRAVITY_MPS2);
      step[p] = -1e-4;
      Strapdown minus = Strapdown.run(samples, still().plus(step), Ride.GRAVITY_MPS2);
      Vector3 turn =
          plus.qLevelUnit(k).times(minus.qLevelUnit(k).conjugate()).rotationVector().times(5e3);
      Vector3 velocity = plus.velocityMps(k).minus(minus.velocityMps(k)).times(5e3);
      Vector3 place = plus.positionM(k).minus(minus.positionM(k)).times(5e3);
      for (int axis = 0; axis < 3; axis++) {
        assertThat(pass.sensitivity(k, axis, p))
            .as("rotation %d by %d", axis, p)
            .isCloseTo(turn.get(axis), within(0.01 * Math.max(1, turn.norm())));
        assertThat(pass.sensitivity(k, 3 + axis, p))
            .as("velocity %d by %d", axis, p)
            .isCloseTo(velocity.get(axis), within(0.01 * Math.max(1, velocity.norm())));
        assertThat(pass.sensitivity(k, 6 + axis, p))
            .as("place %d by %d", axis, p)
            .isCloseTo(place.get(axis), within(0.01 * Math.max(1, place.norm())));
      }
    }
  }

  @Test
  void aLostValueIsSteppedOver() {
    // Given: the same samples with one gyro value lost in the fastest part. Expect: the same end.
    // Within 1 mm: one trapezoid of 4 ms instead of two of 2 ms.
    UnitStream samples = TURN_AND_SLIDE.samples(500, 3, Vector3.ZERO, Vector3.ZERO);
    samples.gyroColumnRadPerS(2)[700] = Double.NaN;
    Strapdown pass = Strapdown.run(samples, still(), Ride.GRAVITY_MPS2);
    Vector3 moved = TURN_AND_SLIDE.positionM(3).minus(TURN_AND_SLIDE.positionM(0));
    assertThat(pass.size()).isEqualTo(samples.size() - 1);
    assertThat(pass.positionM(pass.size() - 1).minus(moved).norm()).isLessThan(1e-3);
  }
}
