package steadyturn.fusion.displace;

import java.util.Collections;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import steadyturn.fusion.rest.RestGate;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.strapdown.Sensitivities;
import steadyturn.fusion.strapdown.Strapdown;
import steadyturn.fusion.strapdown.UnitState;

/** Turns anchors and stance bounds of one swing into {@link Rows}, seen from one strapdown pass. */
final class Knowledge {

  private static final double STEP_S = 0.1;

  /** A sample speaks for the instants this near to it, s. */
  private static final double SEEN_WITHIN_S = 0.05;

  private final SwingSpan span;
  private final Strapdown pass;
  private final UnitState state;
  private final Optional<Sensitivities> sensitivities;
  private final Rows rows = new Rows();

  private Knowledge(SwingSpan span, UnitState state, double gravityMps2, boolean derived) {
    this.span = span;
    this.pass = Strapdown.run(span.samples(), state, gravityMps2);
    this.state = state;
    this.sensitivities = derived ? Optional.of(sensitivities()) : Optional.empty();
  }

  private Sensitivities sensitivities() {
    int[] asked = DoubleStream.of(instantsS(span)).mapToInt(pass::indexAt).toArray();
    return Sensitivities.at(pass, asked);
  }

  static Rows of(SwingSpan span, UnitState state, double gravityMps2) {
    return new Knowledge(span, state, gravityMps2, true).all();
  }

  /** The same rows from a state nearby, with the derivatives of before: they hardly change. */
  static Rows again(SwingSpan span, UnitState state, double gravityMps2, Rows before) {
    return new Knowledge(span, state, gravityMps2, false).all().withDerivativesOf(before);
  }

  private Rows all() {
    for (Anchor anchor : span.anchors()) {
      zeroVelocity(anchor);
      zeroRate(anchor);
    }
    span.stance().forEach(this::place);
    return rows;
  }

  /** Derivatives of a sample by all parameters, by none where they are not asked for. */
  private double[][] derivatives(int k) {
    return sensitivities.map(s -> s.of(k)).orElseGet(() -> new double[Sensitivities.ROWS][0]);
  }

  private static double[] instantsS(SwingSpan span) {
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
   * anchor drifts. Instants that fall on one sample, as beside a gap, count once, those inside one
   * not at all.
   */
  private void zeroVelocity(Anchor anchor) {
    int[] at =
        DoubleStream.of(instantsS(anchor))
            .filter(s -> Math.abs(pass.timeS(pass.indexAt(s)) - s) < SEEN_WITHIN_S)
            .mapToInt(pass::indexAt)
            .distinct()
            .toArray();
    int m = at.length;
    if (m == 0) {
      return;
    }
    DMatrixRMaj level = sway(anchor, at, anchor.velocitySdMps());
    DMatrixRMaj upAndDown = sway(anchor, at, anchor.upSdMps());
    double[][] residual = new double[3][m];
    double[][][] derivative = new double[3][m][];
    for (int i = 0; i < m; i++) {
      double[][] derivatives = derivatives(at[i]);
      for (int axis = 0; axis < 3; axis++) {
        residual[axis][i] = -pass.velocityMps(at[i]).get(axis);
        derivative[axis][i] = derivatives[3 + axis];
      }
    }
    for (int axis = 0; axis < 3; axis++) {
      rows.addTied(residual[axis], derivative[axis], axis == 2 ? upAndDown : level);
    }
    if (anchor.equals(stillest())) {
      rows.endWithSway(m, anchor, level);
    }
  }

  /** The address: no other rest is as still. */
  private Anchor stillest() {
    return Collections.min(
        span.anchors(), Comparator.comparingDouble(a -> a.velocitySdMps() + a.driftSdMps()));
  }

  private DMatrixRMaj sway(Anchor anchor, int[] at, double sdMps) {
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
  private void zeroRate(Anchor anchor) {
    if (!RestGate.isSeen(span.stream(), anchor.startS(), anchor.endS())) {
      return;
    }
    Vector3 mean = RestGate.meanRateRadPerS(span.stream(), anchor.startS(), anchor.endS());
    double effective =
        Math.max(1, (anchor.endS() - anchor.startS()) / (2 * Anchor.SWAY_CORRELATION_S));
    for (int axis = 0; axis < 3; axis++) {
      double[] derivative = new double[state.size()];
      derivative[UnitState.GYRO_BIAS + axis] = 1;
      rows.add(
          mean.get(axis) - state.gyroBiasRadPerS().get(axis),
          derivative,
          anchor.rateSdRadPerS() / Math.sqrt(effective));
    }
  }

  /** The carried point moves by the unit's way plus the turning of the lever arm. */
  private void place(StanceBound bound) {
    int k = pass.indexAt(bound.timeS());
    int from = pass.indexAt(bound.fromS());
    double[][] now = derivatives(k);
    double[][] then = derivatives(from);
    Vector3 armNow = pass.qLevelUnit(k).rotate(bound.leverArmUnitM());
    Vector3 armThen = pass.qLevelUnit(from).rotate(bound.leverArmUnitM());
    Vector3 expected = pass.qLevelUnit(from).rotate(bound.expectedUnitM());
    Vector3 reach = armThen.plus(expected);
    Vector3 place = pass.positionM(k).plus(armNow).minus(pass.positionM(from)).minus(reach);
    for (int axis = 0; axis < 3; axis++) {
      double[] derivative = new double[now[axis].length];
      for (int p = 0; p < derivative.length; p++) {
        derivative[p] =
            now[6 + axis][p]
                - then[6 + axis][p]
                + turned(now, p, armNow).get(axis)
                - turned(then, p, reach).get(axis);
      }
      rows.add(-place.get(axis), derivative, bound.sdM());
    }
  }

  private static Vector3 turned(double[][] derivatives, int parameter, Vector3 armLevel) {
    return new Vector3(
            derivatives[0][parameter], derivatives[1][parameter], derivatives[2][parameter])
        .cross(armLevel);
  }
}
