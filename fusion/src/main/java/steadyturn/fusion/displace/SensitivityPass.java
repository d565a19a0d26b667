package steadyturn.fusion.displace;

import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * Carries the derivatives of attitude, velocity and place by the 24 parameters of {@link UnitState}
 * along a strapdown pass, from sample to sample, in place. Nine rows of {@link UnitState#SIZE}
 * columns: 0..2 small rotation in the level frame, 3..5 velocity, 6..8 place. Columns that stay as
 * they are (attitude by first attitude, velocity by first velocity, attitude by the accelerometer's
 * errors) are passed over.
 */
final class SensitivityPass {

  private static final int P = UnitState.SIZE;
  private static final int VELOCITY_ROWS = 3 * P;
  private static final int PLACE_ROWS = 6 * P;

  private final double[] now = new double[9 * P];
  private double[] turning = new double[3 * P];
  private double[] turningBefore = new double[3 * P];
  private double[] pushing = new double[3 * P];
  private double[] pushingBefore = new double[3 * P];
  private final Vector3[] axes = new Vector3[3];

  /** What one sample shows, and where its unit points. */
  record Sample(
      Quaternion qLevelUnit, Vector3 gyroLessBias, Vector3 accelLessBias, Vector3 force) {}

  /** Begins at the first sample. */
  SensitivityPass(Sample first) {
    for (int axis = 0; axis < 3; axis++) {
      now[axis * P + UnitState.ATTITUDE + axis] = 1;
      now[VELOCITY_ROWS + axis * P + UnitState.VELOCITY + axis] = 1;
    }
    look(first);
    setTurning(first.gyroLessBias);
    setPushing(first);
  }

  private void look(Sample sample) {
    axes[0] = sample.qLevelUnit.rotate(Vector3.X);
    axes[1] = sample.qLevelUnit.rotate(Vector3.Y);
    axes[2] = sample.qLevelUnit.rotate(Vector3.Z);
  }

  /** Goes on to the next sample, dt s later; trapezoid throughout. */
  void advance(Sample next, double dt) {
    double[] spare = turningBefore;
    turningBefore = turning;
    turning = spare;
    spare = pushingBefore;
    pushingBefore = pushing;
    pushing = spare;
    look(next);
    setTurning(next.gyroLessBias);
    for (int row = 0; row < 3 * P; row += P) {
      carryRotation(row + UnitState.GYRO_BIAS, 3, dt / 2);
      carryRotation(row + UnitState.GYRO_MATRIX, 9, dt / 2);
    }
    setPushing(next);
    carryMotion(dt / 2);
  }

  private void carryRotation(int from, int count, double halfDt) {
    for (int c = from; c < from + count; c++) {
      now[c] += halfDt * (turningBefore[c] + turning[c]);
    }
  }

  private void carryMotion(double halfDt) {
    for (int c = 0; c < 3 * P; c++) {
      double before = now[VELOCITY_ROWS + c];
      double after = before + halfDt * (pushingBefore[c] + pushing[c]);
      now[VELOCITY_ROWS + c] = after;
      now[PLACE_ROWS + c] += halfDt * (before + after);
    }
  }

  /** R d(rate)/d(bias, matrix). */
  private void setTurning(Vector3 u) {
    for (int unitAxis = 0; unitAxis < 3; unitAxis++) {
      setTurning(unitAxis, 0, axes[unitAxis].x(), u);
      setTurning(unitAxis, P, axes[unitAxis].y(), u);
      setTurning(unitAxis, 2 * P, axes[unitAxis].z(), u);
    }
  }

  private void setTurning(int unitAxis, int row, double r, Vector3 u) {
    turning[row + UnitState.GYRO_BIAS + unitAxis] = -r;
    int matrixRow = row + UnitState.GYRO_MATRIX + 3 * unitAxis;
    turning[matrixRow] = r * u.x();
    turning[matrixRow + 1] = r * u.y();
    turning[matrixRow + 2] = r * u.z();
  }

  /** d(force in level axes): the rotation error turns it, bias and scale change it. */
  private void setPushing(Sample sample) {
    turnForce(UnitState.ATTITUDE, 3, sample.force);
    turnForce(UnitState.GYRO_BIAS, 3, sample.force);
    turnForce(UnitState.GYRO_MATRIX, 9, sample.force);
    Vector3 u = sample.accelLessBias;
    for (int unitAxis = 0; unitAxis < 3; unitAxis++) {
      double shown = u.get(unitAxis);
      Vector3 axis = axes[unitAxis];
      pushing[UnitState.ACCEL_BIAS + unitAxis] = -axis.x();
      pushing[P + UnitState.ACCEL_BIAS + unitAxis] = -axis.y();
      pushing[2 * P + UnitState.ACCEL_BIAS + unitAxis] = -axis.z();
      pushing[UnitState.ACCEL_SCALE + unitAxis] = axis.x() * shown;
      pushing[P + UnitState.ACCEL_SCALE + unitAxis] = axis.y() * shown;
      pushing[2 * P + UnitState.ACCEL_SCALE + unitAxis] = axis.z() * shown;
    }
  }

  private void turnForce(int from, int count, Vector3 force) {
    double fx = force.x();
    double fy = force.y();
    double fz = force.z();
    for (int c = from; c < from + count; c++) {
      double rx = now[c];
      double ry = now[P + c];
      double rz = now[2 * P + c];
      pushing[c] = ry * fz - rz * fy;
      pushing[P + c] = rz * fx - rx * fz;
      pushing[2 * P + c] = rx * fy - ry * fx;
    }
  }

  /** The derivatives at the present sample: 9 rows of P columns, a copy. */
  double[] rows() {
    return now.clone();
  }
}
