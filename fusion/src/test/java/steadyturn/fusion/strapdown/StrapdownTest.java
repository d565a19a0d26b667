package steadyturn.fusion.strapdown;

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

  private static Strapdown run(UnitStream samples, UnitState state, double gravityMps2) {
    return Strapdown.run(StrapdownSamples.of(samples), state, gravityMps2);
  }

  private static UnitState still() {
    return UnitState.start(Quaternion.IDENTITY, Vector3.ZERO, 0);
  }

  @Test
  void aPerfectUnitIsFollowedToTheMillimetre() {
    // Given: exact samples of a turn and slide at 500 Hz, no unit error. Expect: the path itself.
    // Within 0.2 mm: trapezoid and 0.1 ms differences; a wrong sign costs centimetres.
    UnitStream samples = TURN_AND_SLIDE.samples(500, 3, Vector3.ZERO, Vector3.ZERO);
    Strapdown pass = run(samples, still(), Ride.GRAVITY_MPS2);
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
    UnitState tilted = UnitState.start(Quaternion.aboutY(Math.toRadians(1)), Vector3.ZERO, 0);
    Strapdown pass = run(samples, tilted, Ride.GRAVITY_MPS2);
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
    Strapdown pass = run(samples, still(), Ride.GRAVITY_MPS2);
    assertThat(1e3 * Math.abs(pass.positionM(pass.size() - 1).x())).isCloseTo(3.80, within(0.02));
  }
}
