package steadyturn.fusion.displace;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import steadyturn.fusion.rest.RestGate;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * The most probable motion of one unit in all swings of a lesson together. Attitude, velocity and
 * small drifts of the biases belong to each swing; biases, gyro matrix and accelerometer scale
 * belong to the unit and are shared. Gauss- Newton; in each round the swings' own parameters are
 * eliminated (Schur complement), the shared ones solved, the own ones put back. One swing alone is
 * the lesson of one. A swing that contradicts the others is solved on its own and does not teach
 * the shared parameters. Method: maximum a posteriori, e.g. Barfoot 2017, State Estimation for
 * Robotics, ch. 4 (from memory).
 */
public final class LessonEstimate {

  /** Parameters of a swing of its own: attitude, velocity, bias drifts. */
  private static final int OWN = 12;

  /** Parameters of the unit: biases, gyro matrix, accelerometer scale. */
  private static final int SHARED = 18;

  private static final int SHARED_FROM = UnitState.GYRO_BIAS;
  private static final double HEADING_SD_RAD = 1e-6;

  /**
   * A cost this many standard deviations of a chi-square above its expectation sets a swing aside.
   */
  private static final double OUTLIER = 6;

  /**
   * A tenth of a sigma: each round leaves about a hundredth of the step before it, so what is left
   * is a thousandth of a sigma (measured on 270 simulated swings: at most 0.0005).
   */
  private static final double SMALL_STEP = 0.1;

  private final UnitPriors priors;
  private final double gravityMps2;
  private final int rounds;
  private final double smallStep;

  public LessonEstimate(UnitPriors priors, double gravityMps2) {
    this(priors, gravityMps2, 4, SMALL_STEP);
  }

  /**
   * With so many rounds at most.
   *
   * @param smallStep the rounds end when no parameter moved more than so many of its sigmas
   */
  LessonEstimate(UnitPriors priors, double gravityMps2, int rounds, double smallStep) {
    this.priors = priors;
    this.gravityMps2 = gravityMps2;
    this.rounds = rounds;
    this.smallStep = smallStep;
  }

  /**
   * Estimates all swings of one unit together.
   *
   * @param gyroBiasRadPerS first guess of the bias, unit axes, rad/s, to which the prior holds
   */
  public LessonFit fit(List<SwingSpan> swings, Vector3 gyroBiasRadPerS) {
    Vector3 bias = biasKnown() ? gyroBiasRadPerS : meanRateOfRests(swings);
    List<SwingEstimate> own = new ArrayList<>();
    for (SwingSpan swing : swings) {
      own.add(new SwingEstimate(swing, start(swing, bias)));
    }
    double[] shared = new double[SHARED];
    DMatrixRMaj sharedCovariance = rounds(own, shared, rounds);
    for (int i = 0; i < (own.size() - 1) / 2 && setWorstAside(own); i++) {
      sharedCovariance = rounds(own, shared, rounds);
    }
    List<SwingFit> fits = new ArrayList<>();
    for (SwingEstimate swing : own) {
      fits.add(swing.result(sharedCovariance));
    }
    return new LessonFit(fits);
  }

  private DMatrixRMaj rounds(List<SwingEstimate> own, double[] shared, int count) {
    DMatrixRMaj sharedCovariance = new DMatrixRMaj(SHARED, SHARED);
    double largestStep = Double.POSITIVE_INFINITY;
    for (int round = 0; round < count && largestStep > smallStep; round++) {
      largestStep = round(own, shared, sharedCovariance);
    }
    own.parallelStream().forEach(SwingEstimate::rows);
    return sharedCovariance;
  }

  /**
   * The swing farthest off the others keeps its own estimate but teaches no shared parameter. One
   * at a time, as a bad swing makes its good neighbours look bad.
   */
  private static boolean setWorstAside(List<SwingEstimate> own) {
    double worst = OUTLIER;
    Optional<SwingEstimate> found = Optional.empty();
    for (SwingEstimate swing : own) {
      Rows rows = swing.rows();
      double excess = (rows.cost() - rows.size()) / Math.sqrt(2.0 * rows.size());
      if (swing.teaches && excess > worst) {
        worst = excess;
        found = Optional.of(swing);
      }
    }
    found.ifPresent(swing -> swing.teaches = false);
    return found.isPresent();
  }

  private boolean biasKnown() {
    return priors.gyroBiasRadPerS() < Math.toRadians(1);
  }

  /** Where no table rest gave the bias, the rests of all swings give the first guess of it. */
  private static Vector3 meanRateOfRests(List<SwingSpan> swings) {
    Vector3 sum = Vector3.ZERO;
    for (SwingSpan swing : swings) {
      Anchor first = swing.anchors().get(0);
      sum = sum.plus(RestGate.meanRateRadPerS(swing.samples(), first.startS(), first.endS()));
    }
    return sum.times(1.0 / swings.size());
  }

  private static UnitState start(SwingSpan swing, Vector3 gyroBiasRadPerS) {
    Anchor first = swing.anchors().get(0);
    Vector3 up = RestGate.meanAccelMps2(swing.samples(), first.startS(), first.endS());
    return UnitState.start(levelled(up), gyroBiasRadPerS);
  }

  /**
   * Attitude with the measured specific force upwards, and the unit's flattest axis at heading
   * zero.
   */
  static Quaternion levelled(Vector3 forceUnit) {
    Vector3 up = forceUnit.unit();
    Vector3 ahead = Math.abs(up.x()) < Math.cos(Math.toRadians(30)) ? Vector3.X : Vector3.Y;
    Vector3 x = ahead.minus(up.times(ahead.dot(up))).unit();
    // rows of the level axes in unit coordinates are the columns of qUnitLevel
    return Quaternion.fromAxes(x, up.cross(x), up).conjugate();
  }

  /** One round; answers the largest step of any parameter, in its sigmas. */
  private double round(List<SwingEstimate> swings, double[] shared, DMatrixRMaj sharedCovariance) {
    DMatrixRMaj information = new DMatrixRMaj(SHARED, SHARED);
    double[] right = new double[SHARED];
    double[] sd = sharedSd();
    for (int i = 0; i < SHARED; i++) {
      information.set(i, i, 1 / (sd[i] * sd[i]));
      right[i] = -shared[i] / (sd[i] * sd[i]);
    }
    // swings do not see one another here; sums below keep their order, so results do not change
    swings.parallelStream().forEach(SwingEstimate::linearise);
    for (SwingEstimate swing : swings) {
      if (swing.teaches) {
        swing.reduceInto(information, right);
      }
    }
    sharedCovariance.setTo(inverse(information));
    double[] step = multiply(sharedCovariance, right);
    for (int i = 0; i < SHARED; i++) {
      shared[i] += step[i];
    }
    double largest = inSigmas(step, sharedCovariance);
    for (SwingEstimate swing : swings) {
      largest = Math.max(largest, swing.move(step));
    }
    return largest;
  }

  private static double inSigmas(double[] step, DMatrixRMaj covariance) {
    double largest = 0;
    for (int i = 0; i < step.length; i++) {
      largest = Math.max(largest, Math.abs(step[i]) / Math.sqrt(covariance.get(i, i)));
    }
    return largest;
  }

  private double[] sharedSd() {
    double[] sd = new double[SHARED];
    for (int i = 0; i < 3; i++) {
      sd[UnitState.GYRO_BIAS - SHARED_FROM + i] = priors.gyroBiasRadPerS();
      sd[UnitState.ACCEL_BIAS - SHARED_FROM + i] = priors.accelBiasMps2();
      sd[UnitState.ACCEL_SCALE - SHARED_FROM + i] = priors.accelScale();
    }
    for (int i = 0; i < 9; i++) {
      sd[UnitState.GYRO_MATRIX - SHARED_FROM + i] = priors.gyroMatrix();
    }
    return sd;
  }

  private double[] ownSd() {
    double[] sd = new double[OWN];
    for (int i = 0; i < 3; i++) {
      sd[UnitState.ATTITUDE + i] = i == 2 ? HEADING_SD_RAD : priors.tiltRad();
      sd[UnitState.VELOCITY + i] = priors.velocityMps();
      sd[UnitState.GYRO_BIAS + i] = priors.gyroBiasDriftRadPerS();
      sd[UnitState.ACCEL_BIAS + i] = priors.accelBiasDriftMps2();
    }
    return sd;
  }

  private static DMatrixRMaj inverse(DMatrixRMaj symmetric) {
    DMatrixRMaj out = new DMatrixRMaj(symmetric.numRows, symmetric.numCols);
    if (!CommonOps_DDRM.invert(symmetric, out)) {
      throw new IllegalStateException("the swings do not determine the parameters");
    }
    return out;
  }

  private static double[] multiply(DMatrixRMaj a, double[] x) {
    double[] out = new double[a.numRows];
    for (int i = 0; i < a.numRows; i++) {
      for (int j = 0; j < a.numCols; j++) {
        out[i] += a.unsafe_get(i, j) * x[j];
      }
    }
    return out;
  }

  /** One swing's part of the normal equations. */
  private final class SwingEstimate {
    private final SwingSpan span;
    private UnitState state;
    private final double[] own = new double[OWN];
    private final DMatrixRMaj ownCovariance = new DMatrixRMaj(OWN, OWN);
    private final DMatrixRMaj cross = new DMatrixRMaj(OWN, SHARED);
    private double[] ownRight = new double[OWN];
    private boolean teaches = true;
    private Optional<Rows> rows = Optional.empty();

    SwingEstimate(SwingSpan span, UnitState state) {
      this.span = span;
      this.state = state;
    }

    private final DMatrixRMaj sharedInformation = new DMatrixRMaj(SHARED, SHARED);
    private double[] sharedRight = new double[SHARED];

    void linearise() {
      Rows rows = rows();
      DMatrixRMaj ownInformation = new DMatrixRMaj(OWN, OWN);
      ownRight = new double[OWN];
      sharedRight = new double[SHARED];
      cross.zero();
      sharedInformation.zero();
      double[] sd = ownSd();
      for (int i = 0; i < OWN; i++) {
        ownInformation.set(i, i, 1 / (sd[i] * sd[i]));
        ownRight[i] = -own[i] / (sd[i] * sd[i]);
      }
      for (int row = 0; row < rows.size(); row++) {
        accumulate(rows.derivative(row), rows.residual(row), ownInformation);
      }
      ownCovariance.setTo(inverse(ownInformation));
    }

    private void accumulate(double[] derivative, double residual, DMatrixRMaj ownInformation) {
      for (int i = 0; i < OWN; i++) {
        ownRight[i] += derivative[i] * residual;
        for (int j = 0; j < OWN; j++) {
          ownInformation.add(i, j, derivative[i] * derivative[j]);
        }
        for (int j = 0; j < SHARED; j++) {
          cross.add(i, j, derivative[i] * derivative[SHARED_FROM + j]);
        }
      }
      for (int i = 0; i < SHARED; i++) {
        sharedRight[i] += derivative[SHARED_FROM + i] * residual;
        for (int j = 0; j < SHARED; j++) {
          sharedInformation.add(i, j, derivative[SHARED_FROM + i] * derivative[SHARED_FROM + j]);
        }
      }
    }

    void reduceInto(DMatrixRMaj information, double[] right) {
      DMatrixRMaj gain = new DMatrixRMaj(OWN, SHARED);
      CommonOps_DDRM.mult(ownCovariance, cross, gain);
      DMatrixRMaj taken = new DMatrixRMaj(SHARED, SHARED);
      CommonOps_DDRM.multTransA(cross, gain, taken);
      CommonOps_DDRM.addEquals(information, sharedInformation);
      CommonOps_DDRM.subtractEquals(information, taken);
      for (int j = 0; j < SHARED; j++) {
        right[j] += sharedRight[j];
        for (int i = 0; i < OWN; i++) {
          right[j] -= gain.get(i, j) * ownRight[i];
        }
      }
    }

    /** Takes its own step with the shared one; answers how large it was, in sigmas. */
    double move(double[] sharedStep) {
      double[] right = ownRight.clone();
      for (int i = 0; i < OWN; i++) {
        for (int j = 0; j < SHARED; j++) {
          right[i] -= cross.get(i, j) * sharedStep[j];
        }
      }
      double[] step = multiply(ownCovariance, right);
      double[] all = new double[UnitState.SIZE];
      for (int i = 0; i < OWN; i++) {
        own[i] += step[i];
        all[i] += step[i];
      }
      for (int j = 0; j < SHARED; j++) {
        all[SHARED_FROM + j] += sharedStep[j];
      }
      state = state.plus(all);
      rows = Optional.empty();
      return inSigmas(step, ownCovariance);
    }

    /** What is known of the swing, seen from its present state; looked at once a state. */
    Rows rows() {
      if (rows.isEmpty()) {
        Strapdown pass =
            Strapdown.run(span.samples(), state, gravityMps2, Knowledge.instantsS(span));
        rows = Optional.of(Knowledge.of(span, pass, state));
      }
      return rows.get();
    }

    SwingFit result(DMatrixRMaj sharedCovariance) {
      Rows rows = rows();
      return new SwingFit(
          span.samples(),
          state,
          stateCovariance(sharedCovariance),
          gravityMps2,
          rows.cost(),
          rows.size(),
          teaches);
    }

    /** Covariance of the 24 numbers: own and shared parts, where a bias is the sum of both. */
    private double[][] stateCovariance(DMatrixRMaj sharedCovariance) {
      DMatrixRMaj gain = new DMatrixRMaj(OWN, SHARED);
      CommonOps_DDRM.mult(-1, ownCovariance, cross, gain);
      DMatrixRMaj map = new DMatrixRMaj(UnitState.SIZE, SHARED);
      for (int i = 0; i < OWN; i++) {
        for (int j = 0; j < SHARED; j++) {
          map.add(i, j, gain.get(i, j));
        }
      }
      for (int j = 0; j < SHARED; j++) {
        map.add(SHARED_FROM + j, j, 1);
      }
      DMatrixRMaj half = new DMatrixRMaj(UnitState.SIZE, SHARED);
      CommonOps_DDRM.mult(map, sharedCovariance, half);
      DMatrixRMaj full = new DMatrixRMaj(UnitState.SIZE, UnitState.SIZE);
      CommonOps_DDRM.multTransB(half, map, full);
      double[][] out = new double[UnitState.SIZE][UnitState.SIZE];
      for (int i = 0; i < UnitState.SIZE; i++) {
        for (int j = 0; j < UnitState.SIZE; j++) {
          out[i][j] = full.get(i, j) + (i < OWN && j < OWN ? ownCovariance.get(i, j) : 0);
        }
      }
      return out;
    }
  }
}
