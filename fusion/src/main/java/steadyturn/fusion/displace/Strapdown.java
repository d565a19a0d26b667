package steadyturn.fusion.displace;

import java.util.Arrays;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

/**
 * One pass of strapdown integration over a swing: attitude, velocity and place of every sample,
 * each with its derivative by the 24 parameters of {@link UnitState}. Rotation increments by the
 * trapezoid with the coning term of a rate that changes linearly, w1 x w2 dt^2 / 12 (Savage 1998, J
 * Guidance Control Dynamics 21:19-28, from memory); velocity and place by the trapezoid in the
 * level frame. Samples with a lost value are stepped over.
 */
final class Strapdown {

  private static final int P = UnitState.SIZE;
  private static final int BLOCK = 9 * P;

  private final double gravityMps2;
  private final double[] timeS;
  private final Quaternion[] qLevelUnit;
  private final Vector3[] velocityMps;
  private final Vector3[] positionM;
  private final Vector3[] rateRadPerS;

  /** Per sample 9 rows (rotation, velocity, place) of P columns. */
  private final double[] sensitivity;

  private Strapdown(int n, double gravityMps2) {
    this.gravityMps2 = gravityMps2;
    timeS = new double[n];
    qLevelUnit = new Quaternion[n];
    velocityMps = new Vector3[n];
    positionM = new Vector3[n];
    rateRadPerS = new Vector3[n];
    sensitivity = new double[n * BLOCK];
  }

  static Strapdown run(UnitStream samples, UnitState state, double gravityMps2) {
    int[] whole = wholeSamples(samples);
    Strapdown pass = new Strapdown(whole.length, gravityMps2);
    Step before = pass.first(samples, state, whole[0]);
    for (int k = 1; k < whole.length; k++) {
      before = pass.advance(samples, state, whole[k], k, before);
    }
    return pass;
  }

  private static int[] wholeSamples(UnitStream samples) {
    int[] whole = new int[samples.size()];
    int n = 0;
    for (int i = 0; i < whole.length; i++) {
      if (!Double.isNaN(samples.gyroNormRadPerS(i) + samples.accelNormMps2(i))) {
        whole[n++] = i;
      }
    }
    return Arrays.copyOf(whole, n);
  }

  /**
   * What one sample adds per second: its force in the level frame and the derivatives of rates by
   * parameters.
   */
  private record Step(
      Vector3 rateRadPerS, Vector3 forceLevelMps2, double[] rotationRate, double[] forceRate) {}

  private Step first(UnitStream samples, UnitState state, int i) {
    timeS[0] = samples.timeS(i);
    qLevelUnit[0] = state.qLevelUnit();
    velocityMps[0] = state.velocityMps();
    positionM[0] = Vector3.ZERO;
    for (int axis = 0; axis < 3; axis++) {
      sensitivity[axis * P + UnitState.ATTITUDE + axis] = 1;
      sensitivity[(3 + axis) * P + UnitState.VELOCITY + axis] = 1;
    }
    Step step = step(samples, state, i, 0);
    rateRadPerS[0] = step.rateRadPerS();
    return step;
  }

  private Step advance(UnitStream samples, UnitState state, int i, int k, Step before) {
    double dt = samples.timeS(i) - timeS[k - 1];
    timeS[k] = samples.timeS(i);
    Vector3 rate = state.rate(gyro(samples, i));
    Vector3 turned =
        before
            .rateRadPerS()
            .plus(rate)
            .times(dt / 2)
            .plus(before.rateRadPerS().cross(rate).times(dt * dt / 12));
    qLevelUnit[k] = qLevelUnit[k - 1].times(Quaternion.fromRotationVector(turned)).normalized();
    rateRadPerS[k] = rate;
    carryRotation(k, dt, before, state, gyro(samples, i));
    Step after = step(samples, state, i, k);
    Vector3 accel = before.forceLevelMps2().plus(after.forceLevelMps2()).times(0.5);
    Vector3 accelBegin = before.forceLevelMps2().minus(new Vector3(0, 0, gravityMps2));
    Vector3 accelMean = accel.minus(new Vector3(0, 0, gravityMps2));
    velocityMps[k] = velocityMps[k - 1].plus(accelMean.times(dt));
    // place under an acceleration that changes linearly: v dt + (2 a0 + a1) dt^2 / 6
    positionM[k] =
        positionM[k - 1]
            .plus(velocityMps[k - 1].times(dt))
            .plus(accelBegin.plus(accelMean.times(2)).times(dt * dt / 6));
    carryMotion(k, dt, before, after);
    return after;
  }

  /** Rotation rows: d/dt = R d(rate)/d(parameters); trapezoid. */
  private void carryRotation(int k, double dt, Step before, UnitState state, Vector3 measured) {
    double[] now = rotationRate(qLevelUnit[k], state, measured);
    int at = k * BLOCK;
    int from = at - BLOCK;
    for (int c = 0; c < 3 * P; c++) {
      sensitivity[at + c] = sensitivity[from + c] + dt / 2 * (before.rotationRate()[c] + now[c]);
    }
  }

  private void carryMotion(int k, double dt, Step before, Step after) {
    int at = k * BLOCK + 3 * P;
    int from = at - BLOCK;
    for (int c = 0; c < 3 * P; c++) {
      double v0 = sensitivity[from + c];
      double v1 = v0 + dt / 2 * (before.forceRate()[c] + after.forceRate()[c]);
      sensitivity[at + c] = v1;
      sensitivity[at + 3 * P + c] = sensitivity[from + 3 * P + c] + dt / 2 * (v0 + v1);
    }
  }

  private Step step(UnitStream samples, UnitState state, int i, int k) {
    Vector3 measuredForce =
        new Vector3(samples.accelMps2(0, i), samples.accelMps2(1, i), samples.accelMps2(2, i));
    Vector3 forceLevel = qLevelUnit[k].rotate(state.force(measuredForce));
    return new Step(
        state.rate(gyro(samples, i)),
        forceLevel,
        rotationRate(qLevelUnit[k], state, gyro(samples, i)),
        forceRate(k, state, measuredForce, forceLevel));
  }

  private static Vector3 gyro(UnitStream samples, int i) {
    return new Vector3(
        samples.gyroRadPerS(0, i), samples.gyroRadPerS(1, i), samples.gyroRadPerS(2, i));
  }

  /** R d(rate)/d(bias, matrix): 3 rows of P columns. */
  private static double[] rotationRate(Quaternion q, UnitState state, Vector3 measured) {
    double[] out = new double[3 * P];
    Vector3 u = measured.minus(state.gyroBiasRadPerS());
    Vector3[] axes = {q.rotate(Vector3.X), q.rotate(Vector3.Y), q.rotate(Vector3.Z)};
    for (int unitAxis = 0; unitAxis < 3; unitAxis++) {
      for (int row = 0; row < 3; row++) {
        double r = axes[unitAxis].get(row);
        out[row * P + UnitState.GYRO_BIAS + unitAxis] = -r;
        int matrixRow = row * P + UnitState.GYRO_MATRIX + 3 * unitAxis;
        out[matrixRow] = r * u.x();
        out[matrixRow + 1] = r * u.y();
        out[matrixRow + 2] = r * u.z();
      }
    }
    return out;
  }

  /**
   * d(force in level axes): the rotation error turns it, bias and scale change it. 3 rows of P
   * columns.
   */
  private double[] forceRate(int k, UnitState state, Vector3 measured, Vector3 forceLevel) {
    double[] out = new double[3 * P];
    int at = k * BLOCK;
    for (int c = 0; c < P; c++) {
      double rx = sensitivity[at + c];
      double ry = sensitivity[at + P + c];
      double rz = sensitivity[at + 2 * P + c];
      out[c] = ry * forceLevel.z() - rz * forceLevel.y();
      out[P + c] = rz * forceLevel.x() - rx * forceLevel.z();
      out[2 * P + c] = rx * forceLevel.y() - ry * forceLevel.x();
    }
    Vector3 u = measured.minus(state.accelBiasMps2());
    Quaternion q = qLevelUnit[k];
    Vector3[] axes = {q.rotate(Vector3.X), q.rotate(Vector3.Y), q.rotate(Vector3.Z)};
    for (int unitAxis = 0; unitAxis < 3; unitAxis++) {
      for (int row = 0; row < 3; row++) {
        double r = axes[unitAxis].get(row);
        out[row * P + UnitState.ACCEL_BIAS + unitAxis] -= r;
        out[row * P + UnitState.ACCEL_SCALE + unitAxis] += r * u.get(unitAxis);
      }
    }
    return out;
  }

  int size() {
    return timeS.length;
  }

  double timeS(int k) {
    return timeS[k];
  }

  int indexAt(double instantS) {
    int found = Arrays.binarySearch(timeS, instantS);
    return Math.min(timeS.length - 1, found >= 0 ? found : -found - 1);
  }

  Quaternion qLevelUnit(int k) {
    return qLevelUnit[k];
  }

  Vector3 velocityMps(int k) {
    return velocityMps[k];
  }

  Vector3 positionM(int k) {
    return positionM[k];
  }

  Vector3 rateRadPerS(int k) {
    return rateRadPerS[k];
  }

  /** One derivative: row 0..8 (rotation, velocity, place), parameter 0..23. */
  double sensitivity(int k, int row, int parameter) {
    return sensitivity[k * BLOCK + row * P + parameter];
  }
}
