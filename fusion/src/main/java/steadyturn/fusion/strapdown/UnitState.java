package steadyturn.fusion.strapdown;

import java.util.Arrays;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * The numbers that turn samples into motion: attitude and velocity of the first sample, the unit's
 * errors, and nine for each bridge. True rate = (I + M)(measured - gyro bias); true force = (I +
 * diag s)(measured - accel bias).
 *
 * @param gyroMatrix M, 9 values row by row
 * @param jumps behind each bridge: a turn about the level axes, a velocity, a place
 */
public record UnitState(
    Quaternion qLevelUnit,
    Vector3 velocityMps,
    Vector3 gyroBiasRadPerS,
    Vector3 accelBiasMps2,
    double[] gyroMatrix,
    Vector3 accelScale,
    double[] jumps) {

  /** Number of parameters but for the jumps, which follow. */
  public static final int SIZE = 24;

  public static final int ATTITUDE = 0;
  public static final int VELOCITY = 3;
  public static final int GYRO_BIAS = 6;
  public static final int ACCEL_BIAS = 9;
  public static final int GYRO_MATRIX = 12;
  public static final int ACCEL_SCALE = 21;

  /** A body at rest and a unit whose gyro bias alone is known, before so many bridges. */
  public static UnitState start(Quaternion qLevelUnit, Vector3 gyroBiasRadPerS, int bridges) {
    return new UnitState(
        qLevelUnit,
        Vector3.ZERO,
        gyroBiasRadPerS,
        Vector3.ZERO,
        new double[9],
        Vector3.ZERO,
        new double[Bridge.SIZE * bridges]);
  }

  /** Number of parameters, jumps and all. */
  public int size() {
    return SIZE + jumps.length;
  }

  /** The state moved by small steps; turns are about the level axes. */
  public UnitState plus(double[] step) {
    double[] matrix = gyroMatrix.clone();
    for (int i = 0; i < 9; i++) {
      matrix[i] += step[GYRO_MATRIX + i];
    }
    return new UnitState(
        Quaternion.fromRotationVector(at(step, ATTITUDE)).times(qLevelUnit).normalized(),
        velocityMps.plus(at(step, VELOCITY)),
        gyroBiasRadPerS.plus(at(step, GYRO_BIAS)),
        accelBiasMps2.plus(at(step, ACCEL_BIAS)),
        matrix,
        accelScale.plus(at(step, ACCEL_SCALE)),
        jumpsPlus(step));
  }

  private double[] jumpsPlus(double[] step) {
    double[] out = Arrays.copyOf(jumps, jumps.length);
    for (int i = 0; i < out.length; i++) {
      out[i] += step[SIZE + i];
    }
    for (int from = 0; from < out.length; from += Bridge.SIZE) {
      Quaternion turned =
          Quaternion.fromRotationVector(at(step, SIZE + from))
              .times(Quaternion.fromRotationVector(at(jumps, from)));
      Vector3 turn = turned.rotationVector();
      for (int axis = 0; axis < 3; axis++) {
        out[from + axis] = turn.get(axis);
      }
    }
    return out;
  }

  /** Turn behind a bridge, rad about the level axes. */
  Vector3 turnBehind(int bridge) {
    return at(jumps, Bridge.SIZE * bridge);
  }

  private static Vector3 at(double[] step, int from) {
    return new Vector3(step[from], step[from + 1], step[from + 2]);
  }
}
