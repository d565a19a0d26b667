package steadyturn.fusion.displace;

import java.util.Arrays;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

/**
 * One pass of strapdown integration over a swing: attitude, velocity and place of every sample, and
 * at the samples asked for their derivatives by the 24 parameters of {@link UnitState}. Rotation
 * increments by the trapezoid with the coning term of a rate that changes linearly, w1 x w2 dt^2 /
 * 12 (Savage 1998, J Guidance Control Dynamics 21:19-28, from memory); velocity and place by the
 * trapezoid in the level frame. Samples with a lost value are stepped over.
 */
final class Strapdown {

  private static final int P = UnitState.SIZE;

  private final double gravityMps2;
  private final double[] timeS;
  private final Quaternion[] qLevelUnit;
  private final Vector3[] velocityMps;
  private final Vector3[] positionM;
  private final Vector3[] rateRadPerS;

  /** Per sample 9 rows (rotation, velocity, place) of P columns; empty where not asked for. */
  private final double[][] sensitivity;

  private Strapdown(double[] timeS, double gravityMps2) {
    int n = timeS.length;
    this.gravityMps2 = gravityMps2;
    this.timeS = timeS;
    qLevelUnit = new Quaternion[n];
    velocityMps = new Vector3[n];
    positionM = new Vector3[n];
    rateRadPerS = new Vector3[n];
    sensitivity = new double[n][];
  }

  /** With the derivatives of every sample. */
  static Strapdown run(UnitStream samples, UnitState state, double gravityMps2) {
    int[] whole = wholeSamples(samples);
    boolean[] wanted = new boolean[whole.length];
    Arrays.fill(wanted, true);
    return run(samples, state, gravityMps2, whole, wanted);
  }

  /** With the derivatives of the samples that {@link #indexAt} gives for these instants, s. */
  static Strapdown run(UnitStream samples, UnitState state, double gravityMps2, double[] instants) {
    int[] whole = wholeSamples(samples);
    double[] timeS = times(samples, whole);
    boolean[] wanted = new boolean[whole.length];
    for (double instantS : instants) {
      wanted[indexAt(timeS, instantS)] = true;
    }
    return run(samples, state, gravityMps2, whole, wanted);
  }

  private static Strapdown run(
      UnitStream samples, UnitState state, double gravityMps2, int[] whole, boolean[] wanted) {
    Strapdown pass = new Strapdown(times(samples, whole), gravityMps2);
    SensitivityPass.Sample before = pass.first(samples, state, whole[0]);
    SensitivityPass carried = new SensitivityPass(before);
    for (int k = 0; k < whole.length; k++) {
      if (k > 0) {
        SensitivityPass.Sample now = pass.advance(samples, state, whole[k], k, before);
        carried.advance(now, pass.timeS[k] - pass.timeS[k - 1]);
        before = now;
      }
      pass.sensitivity[k] = wanted[k] ? carried.rows() : NOT_ASKED_FOR;
    }
    return pass;
  }

  private static final double[] NOT_ASKED_FOR = {};

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

  private static double[] times(UnitStream samples, int[] whole) {
    return Arrays.stream(whole).mapToDouble(samples::timeS).toArray();
  }

  private SensitivityPass.Sample first(UnitStream samples, UnitState state, int i) {
    qLevelUnit[0] = state.qLevelUnit();
    velocityMps[0] = state.velocityMps();
    positionM[0] = Vector3.ZERO;
    rateRadPerS[0] = state.rate(gyro(samples, i));
    return sample(samples, state, i, 0);
  }

  private SensitivityPass.Sample advance(
      UnitStream samples, UnitState state, int i, int k, SensitivityPass.Sample before) {
    double dt = timeS[k] - timeS[k - 1];
    Vector3 rateBefore = rateRadPerS[k - 1];
    Vector3 rate = state.rate(gyro(samples, i));
    Vector3 turned =
        rateBefore.plus(rate).times(dt / 2).plus(rateBefore.cross(rate).times(dt * dt / 12));
    qLevelUnit[k] = qLevelUnit[k - 1].times(Quaternion.fromRotationVector(turned)).normalized();
    rateRadPerS[k] = rate;
    SensitivityPass.Sample now = sample(samples, state, i, k);
    Vector3 accel = before.force().plus(now.force()).times(0.5);
    Vector3 accelBegin = before.force().minus(new Vector3(0, 0, gravityMps2));
    Vector3 accelMean = accel.minus(new Vector3(0, 0, gravityMps2));
    velocityMps[k] = velocityMps[k - 1].plus(accelMean.times(dt));
    // place under an acceleration that changes linearly: v dt + (2 a0 + a1) dt^2 / 6
    positionM[k] =
        positionM[k - 1]
            .plus(velocityMps[k - 1].times(dt))
            .plus(accelBegin.plus(accelMean.times(2)).times(dt * dt / 6));
    return now;
  }

  private SensitivityPass.Sample sample(UnitStream samples, UnitState state, int i, int k) {
    Vector3 shown =
        new Vector3(samples.accelMps2(0, i), samples.accelMps2(1, i), samples.accelMps2(2, i));
    return new SensitivityPass.Sample(
        qLevelUnit[k],
        gyro(samples, i).minus(state.gyroBiasRadPerS()),
        shown.minus(state.accelBiasMps2()),
        qLevelUnit[k].rotate(state.force(shown)));
  }

  private static Vector3 gyro(UnitStream samples, int i) {
    return new Vector3(
        samples.gyroRadPerS(0, i), samples.gyroRadPerS(1, i), samples.gyroRadPerS(2, i));
  }

  int size() {
    return timeS.length;
  }

  double timeS(int k) {
    return timeS[k];
  }

  int indexAt(double instantS) {
    return indexAt(timeS, instantS);
  }

  private static int indexAt(double[] timeS, double instantS) {
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

  /**
   * One derivative of a sample asked for: row 0..8 (rotation, velocity, place), parameter 0..23.
   */
  double sensitivity(int k, int row, int parameter) {
    return sensitivity[k][row * P + parameter];
  }
}
