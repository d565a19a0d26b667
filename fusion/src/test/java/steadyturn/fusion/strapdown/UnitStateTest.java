package steadyturn.fusion.strapdown;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

class UnitStateTest {

  private static final Quaternion TILTED =
      Quaternion.fromRotationVector(new Vector3(0.5, -0.3, 0.8));

  /** 1, 2, 3 ... hundredths. */
  private static double[] counting(int n) {
    double[] out = new double[n];
    for (int i = 0; i < n; i++) {
      out[i] = 0.01 * (i + 1);
    }
    return out;
  }

  @Test
  void eachNumberOfAStepReachesItsOwnPlaceAndTwoStepsAddUp() {
    // Given: a start with a gyro bias, twice a step of 0.01, 0.02, ... 0.33. Expect: velocity,
    // biases, matrix, scales and the jump's velocity and place are start plus twice the step; the
    // attitude and the jump's turn are turned twice about one level axis, which is twice its angle.
    // Within rounding.
    UnitState start = UnitState.start(TILTED, new Vector3(0.1, -0.2, 0.3), 1);
    double[] step = counting(start.size());
    assertThat(step).hasSize(33);
    UnitState found = start.plus(step).plus(step);
    near(found.velocityMps(), new Vector3(0.08, 0.10, 0.12));
    near(found.gyroBiasRadPerS(), new Vector3(0.24, -0.04, 0.48));
    near(found.accelBiasMps2(), new Vector3(0.20, 0.22, 0.24));
    for (int i = 0; i < 9; i++) {
      assertThat(found.gyroMatrix()[i]).isCloseTo(0.02 * (13 + i), within(1e-12));
    }
    near(found.accelScale(), new Vector3(0.44, 0.46, 0.48));
    Quaternion turn = Quaternion.fromRotationVector(new Vector3(0.02, 0.04, 0.06));
    near(found.qLevelUnit().times(turn.times(TILTED).conjugate()).rotationVector(), Vector3.ZERO);
    near(found.turnBehind(0), new Vector3(0.50, 0.52, 0.54));
    for (int i = 3; i < 9; i++) {
      assertThat(found.jumps()[i]).isCloseTo(0.02 * (25 + i), within(1e-12));
    }
    assertThat(start.gyroMatrix()).as("the start itself stays").containsOnly(0);
  }

  @Test
  void aTurnBehindABridgeIsTurnedAboutTheLevelAxes() {
    // Given: of two bridges the second is turned by 90 deg about x, then by 90 deg about z. Expect:
    // 120 deg about (1, 1, 1) (the product of the two, z after x, by hand: a cube's corner). Within
    // rounding; the other order gives (1, -1, 1).
    double right = Math.PI / 2;
    UnitState state = UnitState.start(TILTED, Vector3.ZERO, 2);
    double[] aboutX = new double[state.size()];
    aboutX[UnitState.SIZE + Bridge.SIZE] = right;
    double[] aboutZ = new double[state.size()];
    aboutZ[UnitState.SIZE + Bridge.SIZE + 2] = right;
    UnitState found = state.plus(aboutX).plus(aboutZ);
    double each = Math.toRadians(120) / Math.sqrt(3);
    near(found.turnBehind(1), new Vector3(each, each, each));
    near(found.turnBehind(0), Vector3.ZERO);
  }

  private static void near(Vector3 found, Vector3 expect) {
    assertThat(found.minus(expect).norm()).as("%s, not %s", found, expect).isLessThan(1e-12);
  }
}
