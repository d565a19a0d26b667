package steadyturn.fusion.strapdown;

import java.util.Arrays;
import java.util.List;
import steadyturn.fusion.rotation.Attitudes;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * One pass of strapdown integration: attitude, velocity and place of every sample. Turns by {@link
 * Attitudes#ofRates}; velocity and place under a force that changes in a straight line in the level
 * frame from sample to sample. Lost samples and lost forces are stepped over in one such line;
 * behind each {@link Bridge} the state's jump is added.
 */
public final class Strapdown {

  /** Over stretches from this on the ends of a line are means over so much of the samples, s. */
  private static final double LONG_S = 0.025;

  private static final double ENDS_S = 0.012;

  private static final double THIRD = 1.0 / 3;

  final StrapdownSamples samples;
  final UnitState state;
  final Attitudes attitudes;
  private final double gravityMps2;
  private final double[][] rateRadPerS;

  /** Force in level axes, m/s^2; its integral from the first sample, m/s; that one's, m. */
  final double[][] force;

  final double[][] impulse;
  final double[][] path;

  private Strapdown(StrapdownSamples samples, UnitState state, double gravityMps2) {
    this.samples = samples;
    this.state = state;
    this.gravityMps2 = gravityMps2;
    rateRadPerS = rates(samples, state);
    attitudes = Attitudes.ofRates(state.qLevelUnit(), samples.timeS, rateRadPerS);
    for (int b = 0; b < state.jumps().length / Bridge.SIZE; b++) {
      int after = samples.bridges().get(b).after();
      attitudes.turnFrom(after, Quaternion.fromRotationVector(state.turnBehind(b)));
    }
    force = forces(samples, state);
    attitudes.toLevel(force, force);
    bridgeForces();
    impulse = new double[3][samples.size()];
    path = new double[3][samples.size()];
    integrate();
  }

  /** One pass over samples of which there are two at least. */
  public static Strapdown run(StrapdownSamples samples, UnitState state, double gravityMps2) {
    return new Strapdown(samples, state, gravityMps2);
  }

  /** (I + M)(measured - bias). */
  private static double[][] rates(StrapdownSamples samples, UnitState state) {
    int n = samples.size();
    double[][] out = new double[3][n];
    double bx = state.gyroBiasRadPerS().x();
    double by = state.gyroBiasRadPerS().y();
    double bz = state.gyroBiasRadPerS().z();
    double[] m = state.gyroMatrix();
    double[] measuredX = samples.gyroRadPerS[0];
    double[] measuredY = samples.gyroRadPerS[1];
    double[] measuredZ = samples.gyroRadPerS[2];
    for (int axis = 0; axis < 3; axis++) {
      double mx = m[3 * axis];
      double my = m[3 * axis + 1];
      double mz = m[3 * axis + 2];
      double[] measured = samples.gyroRadPerS[axis];
      double bias = state.gyroBiasRadPerS().get(axis);
      double[] rate = out[axis];
      for (int i = 0; i < n; i++) {
        double ux = measuredX[i] - bx;
        double uy = measuredY[i] - by;
        double uz = measuredZ[i] - bz;
        rate[i] = measured[i] - bias + mx * ux + my * uy + mz * uz;
      }
    }
    return out;
  }

  /** (I + diag s)(measured - bias), unit axes. */
  private static double[][] forces(StrapdownSamples samples, UnitState state) {
    int n = samples.size();
    double[][] out = new double[3][n];
    for (int axis = 0; axis < 3; axis++) {
      double scale = 1 + state.accelScale().get(axis);
      double bias = state.accelBiasMps2().get(axis);
      double[] measured = samples.accelMps2[axis];
      double[] force = out[axis];
      for (int i = 0; i < n; i++) {
        force[i] = scale * (measured[i] - bias);
      }
    }
    return out;
  }

  /**
   * Force, level axes, at the end of a line over a stretch that is not seen: the mean over 12 ms
   * beside it where the stretch is long, as one sample may stand on a wobble or a shock.
   *
   * @param step -1 where the line begins at sample k, +1 where it ends there
   */
  double endMps2(int axis, int k, int step, double lineS) {
    if (lineS < LONG_S) {
      return force[axis][k];
    }
    double sum = 0;
    int n = 0;
    for (int i = k; i >= 0 && i < size() && Math.abs(timeS(i) - timeS(k)) < ENDS_S; i += step) {
      sum += samples.hasForce(i) ? force[axis][i] : 0;
      n += samples.hasForce(i) ? 1 : 0;
    }
    return n == 0 ? force[axis][k] : sum / n;
  }

  /** A lost force lies on the line between its neighbours in the level frame. */
  private void bridgeForces() {
    int last = -1;
    for (int i = 0; i <= samples.size(); i++) {
      if (i < samples.size() && !samples.hasForce(i)) {
        continue;
      }
      for (int j = last + 1; j < i; j++) {
        for (int axis = 0; axis < 3; axis++) {
          force[axis][j] = between(axis, last, j, i);
        }
      }
      last = i;
    }
  }

  private double between(int axis, int last, int j, int next) {
    if (last < 0 || next == samples.size()) {
      int only = last < 0 ? next : last;
      return only < samples.size() ? force[axis][only] : 0;
    }
    double lineS = samples.timeS[next] - samples.timeS[last];
    double part = (samples.timeS[j] - samples.timeS[last]) / lineS;
    double begin = endMps2(axis, last, -1, lineS);
    return begin + part * (endMps2(axis, next, 1, lineS) - begin);
  }

  private void integrate() {
    double[] time = samples.timeS;
    for (int axis = 0; axis < 3; axis++) {
      double[] f = force[axis];
      double[] v = impulse[axis];
      double[] p = path[axis];
      double speed = 0;
      double place = 0;
      for (int i = 1; i < f.length; i++) {
        double dt = time[i] - time[i - 1];
        double begin = dt < LONG_S ? f[i - 1] : endMps2(axis, i - 1, -1, dt);
        double end = dt < LONG_S ? f[i] : endMps2(axis, i, 1, dt);
        double half = 0.5 * dt;
        place += dt * (speed + half * (2 * begin + end) * THIRD);
        speed += half * (begin + end);
        v[i] = speed;
        p[i] = place;
      }
    }
  }

  public int size() {
    return samples.size();
  }

  public double timeS(int k) {
    return samples.timeS[k];
  }

  /** First sample at or after the instant; the last one where there is none. */
  public int indexAt(double instantS) {
    int found = Arrays.binarySearch(samples.timeS, instantS);
    return Math.min(size() - 1, found >= 0 ? found : -found - 1);
  }

  public Quaternion qLevelUnit(int k) {
    return attitudes.at(k);
  }

  /** Velocity of sample k, level axes, m/s. */
  public Vector3 velocityMps(int k) {
    double sinceS = timeS(k) - timeS(0);
    double[] v = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      v[axis] = state.velocityMps().get(axis) + impulse[axis][k];
    }
    v[2] -= gravityMps2 * sinceS;
    List<Bridge> bridges = samples.bridges();
    for (int b = 0; b < bridges.size() && bridges.get(b).after() <= k; b++) {
      for (int axis = 0; axis < 3; axis++) {
        v[axis] += state.jumps()[Bridge.SIZE * b + 3 + axis];
      }
    }
    return new Vector3(v[0], v[1], v[2]);
  }

  /** Place of sample k since the first one, level axes, m. */
  public Vector3 positionM(int k) {
    double sinceS = timeS(k) - timeS(0);
    double[] p = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      p[axis] = state.velocityMps().get(axis) * sinceS + path[axis][k];
    }
    p[2] -= gravityMps2 * sinceS * sinceS / 2;
    List<Bridge> bridges = samples.bridges();
    for (int b = 0; b < bridges.size() && bridges.get(b).after() <= k; b++) {
      double behindS = timeS(k) - timeS(bridges.get(b).after());
      for (int axis = 0; axis < 3; axis++) {
        int at = Bridge.SIZE * b + axis;
        p[axis] += state.jumps()[at + 3] * behindS + state.jumps()[at + 6];
      }
    }
    return new Vector3(p[0], p[1], p[2]);
  }

  /** Rate of sample k, corrected, unit axes, rad/s. */
  public Vector3 rateRadPerS(int k) {
    return new Vector3(rateRadPerS[0][k], rateRadPerS[1][k], rateRadPerS[2][k]);
  }
}
