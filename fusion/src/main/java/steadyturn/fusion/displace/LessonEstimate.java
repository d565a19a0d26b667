package steadyturn.fusion.displace;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import steadyturn.fusion.rest.RestGate;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.strapdown.UnitState;

/**
 * The most probable motion of one unit in all swings of a lesson together. Attitude, velocity and
 * small drifts of the biases belong to each swing; biases, gyro matrix and accelerometer scale
 * belong to the unit and are shared. Gauss-Newton; in each round the swings' own parameters are
 * eliminated (Schur complement), the shared ones solved, the own ones put back. One swing alone is
 * the lesson of one. A swing that contradicts the others is solved on its own and does not teach
 * the shared parameters. Method: maximum a posteriori, e.g. Barfoot 2017, State Estimation for
 * Robotics, ch. 4 (from memory).
 *
 * @param rounds so many at most
 * @param smallStep the rounds end when no parameter moved more than so many of its sigmas; nor is a
 *     swing that moved no more integrated anew
 * @param farStep beyond so many sigmas of its own a swing's derivatives are looked at anew
 */
public record LessonEstimate(
    UnitPriors priors, double gravityMps2, int rounds, double smallStep, double farStep) {

  private static final int SHARED = SwingEquations.SHARED;
  private static final int SHARED_FROM = UnitState.GYRO_BIAS;

  /**
   * A tenth of a sigma: each round leaves about a hundredth of the step before it, so what is left
   * is a thousandth of a sigma (measured on 270 simulated swings: at most 0.0005).
   */
  private static final double SMALL_STEP = 0.1;

  private static final double ROUGH_STEP = 0.5;

  /** Steps up to this many sigmas leave the derivatives as they are (our choice, not measured). */
  private static final double FAR_STEP = 1;

  /**
   * Swings beyond this are set aside before the first step; those below it move the others so
   * little that they can be set aside later (our choice).
   */
  private static final double BEYOND_ANY_UNIT = 300;

  public LessonEstimate(UnitPriors priors, double gravityMps2) {
    this(priors, gravityMps2, 4, SMALL_STEP, FAR_STEP);
  }

  /**
   * The same estimate in two rounds at most, with the derivatives of the first: near enough to tell
   * by the costs which of two accounts of a swing is the better one.
   */
  public LessonEstimate rough() {
    return new LessonEstimate(priors, gravityMps2, 2, ROUGH_STEP, Double.POSITIVE_INFINITY);
  }

  /**
   * Estimates all swings of one unit together.
   *
   * @param gyroBiasRadPerS first guess of the bias, unit axes, rad/s, to which the prior holds
   */
  public List<SwingFit> fit(List<SwingSpan> swings, Vector3 gyroBiasRadPerS) {
    Vector3 bias = biasKnown() ? gyroBiasRadPerS : meanRateOfRests(swings);
    List<SwingEquations> own = new ArrayList<>();
    for (SwingSpan swing : swings) {
      UnitState start = start(swing, bias);
      own.add(new SwingEquations(swing, start, priors, gravityMps2, smallStep, farStep));
    }
    double[] shared = new double[SHARED];
    setAsideWhatContradictsItself(own);
    DMatrixRMaj covariance = rounds(own, shared, rounds);
    for (int i = 0; i < (own.size() - 1) / 2 && setWorstAside(own); i++) {
      covariance = rounds(own, shared, rounds);
    }
    DMatrixRMaj sharedCovariance = covariance;
    return own.stream().map(swing -> swing.result(sharedCovariance)).toList();
  }

  private DMatrixRMaj rounds(List<SwingEquations> own, double[] shared, int count) {
    DMatrixRMaj sharedCovariance = new DMatrixRMaj(SHARED, SHARED);
    double largestStep = Double.POSITIVE_INFINITY;
    for (int round = 0; round < count && largestStep > smallStep; round++) {
      largestStep = round(own, shared, sharedCovariance);
    }
    own.parallelStream().forEach(SwingEquations::rows);
    return sharedCovariance;
  }

  /**
   * The swing farthest off the others keeps its own estimate but teaches no shared parameter. One
   * at a time, as a bad swing makes its good neighbours look bad.
   */
  private static boolean setWorstAside(List<SwingEquations> own) {
    double worst = SwingFit.OUTLIER;
    Optional<SwingEquations> found = Optional.empty();
    for (SwingEquations swing : own) {
      double excess = swing.excess();
      if (swing.teaches() && excess > worst) {
        worst = excess;
        found = Optional.of(swing);
      }
    }
    found.ifPresent(SwingEquations::setAside);
    return found.isPresent();
  }

  /**
   * A swing whose own rests no unit could show, as where it was moved between them unseen, would
   * carry the first step so far off that all others follow it.
   */
  private void setAsideWhatContradictsItself(List<SwingEquations> own) {
    double[] sd = sharedSd();
    own.parallelStream().forEach(SwingEquations::linearise);
    own.stream()
        .filter(swing -> swing.excessAlone(sd) > BEYOND_ANY_UNIT)
        .forEach(SwingEquations::setAside);
  }

  private boolean biasKnown() {
    return priors.gyroBiasRadPerS() < Math.toRadians(1);
  }

  /** Where no table rest gave the bias, the rests of all swings give the first guess of it. */
  private static Vector3 meanRateOfRests(List<SwingSpan> swings) {
    Vector3 sum = Vector3.ZERO;
    for (SwingSpan swing : swings) {
      Anchor first = swing.anchors().get(0);
      sum = sum.plus(RestGate.meanRateRadPerS(swing.stream(), first.startS(), first.endS()));
    }
    return sum.times(1.0 / swings.size());
  }

  private static UnitState start(SwingSpan swing, Vector3 gyroBiasRadPerS) {
    Anchor first = swing.anchors().get(0);
    Vector3 up = RestGate.meanAccelMps2(swing.stream(), first.startS(), first.endS());
    return UnitState.start(Quaternion.levelling(up), gyroBiasRadPerS, swing.bridges().size());
  }

  /** One round; answers the largest step of any parameter, in its sigmas. */
  private double round(List<SwingEquations> swings, double[] shared, DMatrixRMaj sharedCovariance) {
    double[] right = new double[SHARED];
    double[] sd = sharedSd();
    DMatrixRMaj information = Normal.prior(sd);
    for (int i = 0; i < SHARED; i++) {
      right[i] = -shared[i] / (sd[i] * sd[i]);
    }
    // swings do not see one another here; sums below keep their order, so results do not change
    swings.parallelStream().forEach(SwingEquations::linearise);
    for (SwingEquations swing : swings) {
      if (swing.teaches()) {
        swing.reduceInto(information, right);
      }
    }
    sharedCovariance.setTo(Normal.inverse(information));
    double[] step = Normal.multiply(sharedCovariance, right);
    for (int i = 0; i < SHARED; i++) {
      shared[i] += step[i];
    }
    double sharedSigmas = Normal.inSigmas(step, sharedCovariance);
    double largest = sharedSigmas;
    for (SwingEquations swing : swings) {
      largest = Math.max(largest, swing.move(step, sharedSigmas));
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
}
