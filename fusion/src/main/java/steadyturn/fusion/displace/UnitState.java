package steadyturn.fusion.displace;

import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * The 24 numbers that turn samples into motion: attitude and velocity of the first sample, and the
 * unit's errors. True rate = (I + M)(measured - gyro bias); true force = (I + diag s)(measured -
 * accel bias).
 *
 * @param gyroMatrix M, 9 values row by row
 */
record UnitState(
    Quaternion qLevelUnit,
    Vector3 velocityMps,
    Vector3 gyroBiasRadPerS,
    Vector3 accelBiasMps2,
    double[] gyroMatrix,
    Vector3 accelScale) {

  /** Number of parameters. */
  static final int SIZE = 24;

  static final int ATTITUDE = 0;
  static final int VELOCITY = 3;
  static final int GYRO_BIAS = 6;
  static final int ACCEL_BIAS = 9;
  static final int GYRO_MATRIX = 12;
  static final int ACCEL_SCALE = 21;

  static UnitState start(Quaternion qLevelUnit, Vector3 gyroBiasRadPerS) {
    return new UnitState(
        qLevelUnit, Vector3.ZERO, gyroBiasRadPerS, Vector3.ZERO, new double[9], Vector3.ZERO);
  }

  /** The state moved by 24 small steps; the attitude turns about the level axes. */
  UnitState plus(double[] step) {
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
        accelScale.plus(at(step, ACCEL_SCALE)));
  }

  private static Vector3 at(double[] step, int from) {
    return new Vector3(step[from], step[from + 1], step[from + 2]);
  }

  /** Rate after correction, unit axes, rad/s. */
  Vector3 rate(Vector3 measured) {
    Vector3 u = measured.minus(gyroBiasRadPerS);
    double[] m = gyroMatrix;
    return new Vector3(
        u.x() + m[0] * u.x() + m[1] * u.y() + m[2] * u.z(),
        u.y() + m[3] * u.x() + m[4] * u.y() + m[5] * u.z(),
        u.z() + m[6] * u.x() + m[7] * u.y() + m[8] * u.z());
  }

  /** Specific force after correction, unit axes, m/s^2. */
  Vector3 force(Vector3 measured) {
    Vector3 u = measured.minus(accelBiasMps2);
    return new Vector3(
        u.x() * (1 + accelScale.x()), u.y() * (1 + accelScale.y()), u.z() * (1 + accelScale.z()));
  }
}
