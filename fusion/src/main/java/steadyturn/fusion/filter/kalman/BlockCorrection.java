package steadyturn.fusion.filter.kalman;

import static steadyturn.fusion.filter.kalman.BlockModel.BIAS;
import static steadyturn.fusion.filter.kalman.BlockModel.ERRORS;
import static steadyturn.fusion.filter.kalman.BlockModel.PLACE;
import static steadyturn.fusion.filter.kalman.BlockModel.VELOCITY;

import java.util.Arrays;
import steadyturn.fusion.filter.SampleGuard;

/**
 * The Kalman step at the end of a block: carries the errors over it, folds in that velocity and
 * place stay within the bounds of the movement of late, and at rest that velocity and rate are
 * small, and turns the follower by what comes out.
 */
final class BlockCorrection {

  /** Tilt variance from which on the small-angle model is left: 0.5 rad squared (our choice). */
  private static final double LOST_VARIANCE = 0.25;

  /** Up to this integral of the squared rate nothing was learnt of the gyroscope's matrix. */
  private static final double UNTURNED_RAD2_PER_S = 0.1;

  private final BlockListener listener;
  private final BlockModel model = new BlockModel();
  private final Covariance covariance = new Covariance();
  private final Liveliness liveliness = new Liveliness();
  private final ChipGrade grade = new ChipGrade();
  private final double[] velocityMps = new double[2];
  private final double[] placeM = new double[2];
  private final double[] correction = new double[ERRORS];
  private KalmanCoefficients coefficients;
  private boolean graded;
  private double turnedRad2PerS;

  BlockCorrection(KalmanCoefficients coefficients, BlockListener listener) {
    this.coefficients = coefficients;
    this.listener = listener;
    covariance.start(coefficients);
  }

  double tiltVariance() {
    return 0.5 * (covariance.variance(0) + covariance.variance(1));
  }

  double headingVariance() {
    return covariance.variance(2);
  }

  /** See {@link ChipGrade#tiltVarianceOff}. */
  double unseenTiltVariance(double assumed) {
    return grade.tiltVarianceOff(assumed);
  }

  /** How far out the bias may lie, rad/s: until a first rest it has the long tails of turn-on. */
  double biasDoubt() {
    double variance = covariance.variance(BIAS);
    double tails = variance > 0.5 * coefficients.startBiasVariance() ? 2 : 1;
    return tails * Math.sqrt(variance);
  }

  /** Takes each step: those of a rest show the unit's noise. */
  void watch(SampleGuard step, boolean atRest) {
    if (!graded && atRest && step.rateGood) {
      grade.take(step);
    } else {
      grade.leave();
    }
  }

  /** The level was found as the mean force of a movement. */
  void levelledMoving(BlockSums sums) {
    liveliness.start(sums, covariance, coefficients);
  }

  boolean lost(BlockSums sums) {
    return tiltVariance() + sums.angleVariance > LOST_VARIANCE || liveliness.upsideDown();
  }

  /** After a loss beyond what small angles can repair. */
  void release(BlockSums sums) {
    covariance.release(coefficients, sums.angleVariance);
    Arrays.fill(velocityMps, 0);
    Arrays.fill(placeM, 0);
    liveliness.forget();
    listener.released();
  }

  void correct(BlockSums sums, RateFollower follower) {
    predict(sums);
    learnUnit(sums);
    liveliness.take(sums, tiltVariance());
    Arrays.fill(correction, 0);
    double stepS = sums.lengthS;
    double speedVariance =
        sums.atRest
            ? coefficients.restSpeedVariance()
            : coefficients.speedVarianceOver(stepS)
                * liveliness.speedRoom(coefficients.speedVariance());
    observe(VELOCITY, -velocityMps[0], speedVariance);
    observe(VELOCITY + 1, -velocityMps[1], speedVariance);
    double placeVariance =
        coefficients.placeVarianceOver(stepS) * liveliness.placeRoom(coefficients.placeVariance());
    observe(PLACE, -placeM[0], placeVariance);
    observe(PLACE + 1, -placeM[1], placeVariance);
    if (sums.atRest) {
      double rateVariance = coefficients.restRateDensity() / stepS;
      for (int axis = 0; axis < 3; axis++) {
        double off = sums.angleRad[axis] / stepS - follower.bias[axis];
        observe(BIAS + axis, off, rateVariance);
      }
    }
    listener.corrected(correction, covariance.p);
    apply(follower);
  }

  private void predict(BlockSums sums) {
    model.set(sums);
    covariance.predict(model, sums, coefficients);
    listener.predicted(sums);
    for (int axis = 0; axis < 2; axis++) {
      placeM[axis] += velocityMps[axis] * sums.lengthS + sums.placeM[axis];
      velocityMps[axis] += sums.velocityMps[axis];
    }
  }

  /** Once the unit's own noise is known, it says what to expect of its other errors. */
  private void learnUnit(BlockSums sums) {
    if (sums.atRest) {
      grade.takeRest(sums);
    }
    turnedRad2PerS += sums.rateSquared;
    if (!graded && grade.noiseKnown()) {
      graded = true;
      coefficients = coefficients.forNoise(grade.noiseRatio());
      if (turnedRad2PerS < UNTURNED_RAD2_PER_S) {
        covariance.startMatrix(coefficients);
      }
    }
  }

  private void observe(int error, double off, double variance) {
    double innovation = off - correction[error];
    double innovationVariance = covariance.observe(error, variance);
    for (int i = 0; i < ERRORS; i++) {
      correction[i] += covariance.gain[i] * innovation;
    }
    listener.observed(error, covariance.gain, innovationVariance, innovation);
  }

  private void apply(RateFollower follower) {
    follower.correct(correction);
    for (int axis = 0; axis < 2; axis++) {
      velocityMps[axis] += correction[VELOCITY + axis];
      placeM[axis] += correction[PLACE + axis];
    }
  }
}
