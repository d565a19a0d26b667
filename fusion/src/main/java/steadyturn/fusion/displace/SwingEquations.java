package steadyturn.fusion.displace;

import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import steadyturn.fusion.strapdown.Bridge;
import steadyturn.fusion.strapdown.UnitState;

/**
 * One swing's part of the normal equations of a lesson. Its own parameters are attitude, velocity,
 * drifts of the biases and the jumps behind its gaps; biases, gyro matrix and accelerometer scale
 * are the unit's. A bias is the sum of both.
 */
final class SwingEquations {

  /** Parameters of the unit: biases, gyro matrix, accelerometer scale. */
  static final int SHARED = UnitState.SIZE - UnitState.GYRO_BIAS;

  private static final int SHARED_FROM = UnitState.GYRO_BIAS;

  /** Own parameters but for the jumps: attitude, velocity, drifts of both biases. */
  private static final int FIRST = 12;

  private static final double HEADING_SD_RAD = 1e-6;

  /** Stands for a jump that cannot be: small beside all others, and yet no division by zero. */
  private static final double NO_JUMP = 1e-7;

  private final SwingSpan span;
  private final double gravityMps2;
  private final double[] sd;
  private final int size;
  private UnitState state;
  private final double[] own;
  private final DMatrixRMaj ownCovariance;
  private final DMatrixRMaj cross;
  private final double[] ownRight;
  private final DMatrixRMaj sharedInformation = new DMatrixRMaj(SHARED, SHARED);
  private double[] sharedRight = new double[SHARED];
  private boolean teaches = true;
  private Optional<Rows> rows = Optional.empty();
  private Optional<Rows> derived = Optional.empty();
  private final double nearStep;
  private final double farStep;
  private double moved;
  private boolean movedFar;

  /**
   * Starts from a state.
   *
   * @param nearStep steps of so many sigmas together change what is known by the derivatives alone
   * @param farStep beyond a step of so many sigmas the derivatives are looked at anew
   */
  SwingEquations(
      SwingSpan span,
      UnitState start,
      UnitPriors priors,
      double gravityMps2,
      double nearStep,
      double farStep) {
    this.nearStep = nearStep;
    this.farStep = farStep;
    this.span = span;
    this.state = start;
    this.gravityMps2 = gravityMps2;
    this.sd = ownSd(span, priors);
    this.size = sd.length;
    own = new double[size];
    ownRight = new double[size];
    ownCovariance = new DMatrixRMaj(size, size);
    cross = new DMatrixRMaj(size, SHARED);
  }

  private static double[] ownSd(SwingSpan span, UnitPriors priors) {
    double[] sd = new double[FIRST + Bridge.SIZE * span.bridges().size()];
    for (int i = 0; i < 3; i++) {
      sd[UnitState.ATTITUDE + i] = i == 2 ? HEADING_SD_RAD : priors.tiltRad();
      sd[UnitState.VELOCITY + i] = priors.velocityMps();
      sd[UnitState.GYRO_BIAS + i] = priors.gyroBiasDriftRadPerS();
      sd[UnitState.ACCEL_BIAS + i] = priors.accelBiasDriftMps2();
    }
    for (int i = FIRST; i < sd.length; i++) {
      Bridge bridge = span.bridges().get((i - FIRST) / Bridge.SIZE);
      sd[i] = Math.max(NO_JUMP, bridge.sd((i - FIRST) % Bridge.SIZE));
    }
    return sd;
  }

  /** Column of an own parameter in the derivatives of a state. */
  private static int column(int ownIndex) {
    return ownIndex < FIRST ? ownIndex : ownIndex - FIRST + UnitState.SIZE;
  }

  boolean teaches() {
    return teaches;
  }

  void setAside() {
    teaches = false;
  }

  /** By how many standard deviations of a chi-square the cost exceeds its expectation. */
  double excess() {
    return SwingFit.excess(rows().cost(), rows().size());
  }

  /**
   * The same for what would be left of it if the unit's parameters were its own, as far as the
   * derivatives reach: by that it contradicts itself. Known once it is linearised.
   *
   * @param sharedSd what is known of the unit's parameters beforehand
   */
  double excessAlone(double[] sharedSd) {
    DMatrixRMaj information = Normal.prior(sharedSd);
    double[] right = new double[SHARED];
    reduceInto(information, right);
    double explained = Normal.squared(ownRight, ownCovariance);
    explained += Normal.squared(right, Normal.inverse(information));
    return SwingFit.excess(rows().cost() - explained, rows().size());
  }

  /** The right-hand sides and, where the derivatives were looked at anew, all that follows them. */
  void linearise() {
    boolean anew = derived.isEmpty() || movedFar;
    if (anew) {
      rows = Optional.of(Knowledge.of(span, state, gravityMps2));
      derived = rows;
      moved = 0;
      movedFar = false;
    }
    Rows known = rows();
    sumRight(known);
    if (anew) {
      sumInformation(known);
    }
  }

  private void sumRight(Rows known) {
    sharedRight = new double[SHARED];
    for (int i = 0; i < size; i++) {
      ownRight[i] = -own[i] / (sd[i] * sd[i]);
    }
    for (int row = 0; row < known.size(); row++) {
      double[] derivative = known.derivative(row);
      double residual = known.residual(row);
      for (int i = 0; i < size; i++) {
        ownRight[i] += derivative[column(i)] * residual;
      }
      for (int i = 0; i < SHARED; i++) {
        sharedRight[i] += derivative[SHARED_FROM + i] * residual;
      }
    }
  }

  private void sumInformation(Rows known) {
    DMatrixRMaj information = Normal.prior(sd);
    cross.zero();
    sharedInformation.zero();
    double[] mine = new double[size];
    for (int row = 0; row < known.size(); row++) {
      double[] derivative = known.derivative(row);
      for (int i = 0; i < size; i++) {
        mine[i] = derivative[column(i)];
      }
      accumulate(mine, derivative, information.data);
    }
    CommonOps_DDRM.symmLowerToFull(information);
    CommonOps_DDRM.symmLowerToFull(sharedInformation);
    ownCovariance.setTo(Normal.inverse(information));
  }

  /** Adds one row to the lower halves of what is symmetric, and to the rest. */
  private void accumulate(double[] mine, double[] derivative, double[] information) {
    for (int i = 0; i < size; i++) {
      double d = mine[i];
      if (d != 0) {
        for (int j = 0; j <= i; j++) {
          information[i * size + j] += d * mine[j];
        }
        for (int j = 0; j < SHARED; j++) {
          cross.data[i * SHARED + j] += d * derivative[SHARED_FROM + j];
        }
      }
    }
    for (int i = 0; i < SHARED; i++) {
      double d = derivative[SHARED_FROM + i];
      for (int j = 0; j <= i && d != 0; j++) {
        sharedInformation.data[i * SHARED + j] += d * derivative[SHARED_FROM + j];
      }
    }
  }

  /** Adds what the swing knows of the unit once its own parameters are eliminated. */
  void reduceInto(DMatrixRMaj information, double[] right) {
    DMatrixRMaj gain = new DMatrixRMaj(size, SHARED);
    CommonOps_DDRM.mult(ownCovariance, cross, gain);
    DMatrixRMaj taken = new DMatrixRMaj(SHARED, SHARED);
    CommonOps_DDRM.multTransA(cross, gain, taken);
    CommonOps_DDRM.addEquals(information, sharedInformation);
    CommonOps_DDRM.subtractEquals(information, taken);
    for (int j = 0; j < SHARED; j++) {
      right[j] += sharedRight[j];
      for (int i = 0; i < size; i++) {
        right[j] -= gain.get(i, j) * ownRight[i];
      }
    }
  }

  /**
   * Takes its own step with the shared one; answers how large it was, in sigmas.
   *
   * @param sharedSigmas how large the shared one is
   */
  double move(double[] sharedStep, double sharedSigmas) {
    double[] right = ownRight.clone();
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < SHARED; j++) {
        right[i] -= cross.get(i, j) * sharedStep[j];
      }
    }
    double[] step = Normal.multiply(ownCovariance, right);
    double[] all = new double[state.size()];
    for (int i = 0; i < size; i++) {
      own[i] += step[i];
      all[column(i)] += step[i];
    }
    for (int j = 0; j < SHARED; j++) {
      all[SHARED_FROM + j] += sharedStep[j];
    }
    state = state.plus(all);
    double inSigmas = Normal.inSigmas(step, ownCovariance);
    movedFar |= inSigmas > farStep;
    moved += Math.max(inSigmas, sharedSigmas);
    rows = moved > nearStep ? Optional.empty() : rows.map(known -> known.moved(all));
    return inSigmas;
  }

  /** What is known of the swing, seen from its present state; looked at once a state. */
  Rows rows() {
    if (rows.isEmpty()) {
      moved = 0;
      rows =
          Optional.of(
              derived.isPresent()
                  ? Knowledge.again(span, state, gravityMps2, derived.get())
                  : Knowledge.of(span, state, gravityMps2));
    }
    return rows.get();
  }

  /**
   * The estimate. Where its own rests contradict one another so much that it was or would have been
   * set aside, its spreads are as much too small: they grow by that (the variance of unit weight).
   */
  SwingFit result(DMatrixRMaj sharedCovariance) {
    Rows known = rows();
    boolean holds = teaches && excess() <= SwingFit.OUTLIER;
    double times = holds ? 1 : Math.max(1, known.cost() / known.size());
    return new SwingFit(
        span,
        state,
        stateCovariance(sharedCovariance, times),
        gravityMps2,
        known.cost(),
        known.size(),
        teaches,
        known.sway());
  }

  /** Covariance of the state: own and shared parts, where a bias is the sum of both. */
  private double[][] stateCovariance(DMatrixRMaj sharedCovariance, double times) {
    DMatrixRMaj gain = new DMatrixRMaj(size, SHARED);
    CommonOps_DDRM.mult(-1, ownCovariance, cross, gain);
    int all = state.size();
    DMatrixRMaj map = new DMatrixRMaj(all, SHARED);
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < SHARED; j++) {
        map.add(column(i), j, gain.get(i, j));
      }
    }
    for (int j = 0; j < SHARED; j++) {
      map.add(SHARED_FROM + j, j, 1);
    }
    DMatrixRMaj half = new DMatrixRMaj(all, SHARED);
    CommonOps_DDRM.mult(map, sharedCovariance, half);
    DMatrixRMaj full = new DMatrixRMaj(all, all);
    CommonOps_DDRM.multTransB(half, map, full);
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < size; j++) {
        full.add(column(i), column(j), times * ownCovariance.get(i, j));
      }
    }
    return full.get2DData();
  }
}
