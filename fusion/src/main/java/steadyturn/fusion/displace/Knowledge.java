package steadyturn.fusion.displace;

import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import steadyturn.fusion.rest.RestGate;
import steadyturn.fusion.rotation.Vector3;

/** Turns anchors and stance bounds of one swing into {@link Rows}, seen from one strapdown pass. */
final class Knowledge {

  private static final double STEP_S = 0.1;
  private static final int P = UnitState.SIZE;

  private Knowledge() {}

  static Rows of(SwingSpan span, Strapdown pass, UnitState state) {
    Rows rows = new Rows();
    for (Anchor anchor : span.anchors()) {
      zeroVelocity(rows, anchor, pass);
      zeroRate(rows, anchor, span, state);
    }
    for (StanceBound bound : span.stance()) {
      place(rows, bound, pass);
    }
    return rows;
  }

  /** The instants at which {@link #of} asks for derivatives, s. */
  static double[] instantsS(SwingSpan span) {
    DoubleStream rests =
        span.anchors().stream().flatMapToDouble(a -> DoubleStream.of(instantsS(a)));
    DoubleStream places =
        span.stance().stream().flatMapToDouble(b -> DoubleStream.of(b.fromS(), b.timeS()));
    return DoubleStream.concat(rests, places).toArray();
  }

  private static double[] instantsS(Anchor anchor) {
    double lengthS = anchor.endS() - anchor.startS();
    int m = Math.max(2, (int) Math.round(lengthS / STEP_S) + 1);
    return IntStream.range(0, m)
        .mapToDouble(i -> anchor.startS() + lengthS * i / (m - 1))
        .toArray();
  }

  /**
   * Velocity is sway: a first-order process sampled every 0.1 s, plus a steady part where the
   * anchor drifts.
   */
  private static void zeroVelocity(Rows rows, Anchor anchor, Strapdown pass) {
    int[] at = DoubleStream.of(instantsS(anchor)).mapToInt(pass::indexAt).toArray();
    int m = at.length;
    DMatrixRMaj level = sway(anchor, pass, at, anchor.velocitySdMps());
    DMatrixRMaj upAndDown = sway(anchor, pass, at, anchor.upSdMps());
    for (int axis = 0; axis < 3; axis++) {
      double[] residual = new double[m];
      double[][] derivative = new double[m][P];
      for (int i = 0; i < m; i++) {
        residual[i] = -pass.velocityMps(at[i]).get(axis);
        for (int p = 0; p < P; p++) {
          derivative[i][p] = pass.sensitivity(at[i], 3 + axis, p);
        }
      }
      rows.addTied(residual, derivative, axis == 2 ? upAndDown : level);
    }
  }

  private static DMatrixRMaj sway(Anchor anchor, Strapdown pass, int[] at, double sdMps) {
    DMatrixRMaj covariance = new DMatrixRMaj(at.length, at.length);
    // a body that drifts goes up and down less, by as much as it sways less
    double driftMps = anchor.driftSdMps() * sdMps / anchor.velocitySdMps();
    double drift2 = driftMps * driftMps;
    for (int i = 0; i < at.length; i++) {
      for (int j = 0; j < at.length; j++) {
        double apart = Math.abs(pass.timeS(at[i]) - pass.timeS(at[j]));
        covariance.set(i, j, sdMps * sdMps * Math.exp(-apart / Anchor.SWAY_CORRELATION_S) + drift2);
      }
      covariance.add(i, i, 1e-8); // 0.1 mm/s of its own, so that near neighbours stay apart
    }
    return covariance;
  }

  /** The mean rate of a rest is the bias, but for the sway that does not average out. */
  private static void zeroRate(Rows rows, Anchor anchor, SwingSpan span, UnitState state) {
    Vector3 mean = RestGate.meanRateRadPerS(span.samples(), anchor.startS(), anchor.endS());
    double effective =
        Math.max(1, (anchor.endS() - anchor.startS()) / (2 * Anchor.SWAY_CORRELATION_S));
    for (int axis = 0; axis < 3; axis++) {
      double[] derivative = new double[P];
      derivative[UnitState.GYRO_BIAS + axis] = 1;
      rows.add(
          mean.get(axis) - state.gyroBiasRadPerS().get(axis),
          derivative,
          anchor.rateSdRadPerS() / Math.sqrt(effective));
    }
  }

  /** The carried point moves by the unit's way plus the turning of the lever arm. */
  private static void place(Rows rows, StanceBound bound, Strapdown pass) {
    int k = pass.indexAt(bound.timeS());
    int from = pass.indexAt(bound.fromS());
    Vector3 armThen = pass.qLevelUnit(k).rotate(bound.leverArmUnitM());
    Vector3 armFirst = pass.qLevelUnit(from).rotate(bound.leverArmUnitM());
    Vector3 place = pass.positionM(k).plus(armThen).minus(pass.positionM(from)).minus(armFirst);
    for (int axis = 0; axis < 3; axis++) {
      double[] derivative = new double[P];
      for (int p = 0; p < P; p++) {
        derivative[p] =
            pass.sensitivity(k, 6 + axis, p)
                - pass.sensitivity(from, 6 + axis, p)
                + turned(pass, k, p, armThen).get(axis)
                - turned(pass, from, p, armFirst).get(axis);
      }
      rows.add(-place.get(axis), derivative, bound.sdM());
    }
  }

  private static Vector3 turned(Strapdown pass, int k, int parameter, Vector3 armLevel) {
    return new Vector3(
            pass.sensitivity(k, 0, parameter),
            pass.sensitivity(k, 1, parameter),
            pass.sensitivity(k, 2, parameter))
        .cross(armLevel);
  }
}
