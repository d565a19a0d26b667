package steadyturn.fusion.filter.kalman;

import static steadyturn.fusion.filter.kalman.BlockModel.BIAS;
import static steadyturn.fusion.filter.kalman.BlockModel.ERRORS;
import static steadyturn.fusion.filter.kalman.BlockModel.MATRIX;
import static steadyturn.fusion.filter.kalman.BlockModel.PLACE;
import static steadyturn.fusion.filter.kalman.BlockModel.VELOCITY;

import java.util.Arrays;
import steadyturn.fusion.filter.OrientationFilter;
import steadyturn.fusion.filter.RestDetector;
import steadyturn.fusion.filter.SampleGuard;
import steadyturn.fusion.filter.SampleLimits;
import steadyturn.fusion.filter.SigmaFloor;
import steadyturn.fusion.rotation.MutableQuaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * Error-state Kalman filter with gyroscope bias and gyroscope matrix. The rates are followed sample
 * by sample; once a block the specific force, summed up in the followed frame, says how far the
 * vertical is off: a unit on a body stays slow and near, so what does not average out is tilt. That
 * is the pseudo-measurement of bounded velocity and place; the size of the acceleration is never
 * used to weight it. At rest velocity and rate are known to be small, which gives the bias.
 *
 * <p>Each rate and each specific force stands for the step that ends at its instant, so the force
 * is turned by the attitude in the middle of the step.
 */
public final class ErrorStateKalmanFilter implements OrientationFilter {

  /** Tilt variance from which on the small-angle model is left: 0.5 rad squared (our choice). */
  private static final double LOST_VARIANCE = 0.25;

  /** Levelling in movement takes so long, s: then 1 m/s more speed tilts the mean force by 0.1. */
  private static final double MOVING_LEVEL_S = 1;

  private final KalmanCoefficients coefficients;
  private final SigmaFloor floor;
  private final SampleGuard guard;
  private final RestDetector rest;
  private final BlockListener listener;
  private final BlockModel model = new BlockModel();
  private final BlockSums sums = new BlockSums();
  private final Covariance covariance = new Covariance();
  private final MutableQuaternion qEarthUnit = new MutableQuaternion();
  private final MutableQuaternion levelling = new MutableQuaternion();
  private final double[] rate = new double[3];
  private final double[] bias = new double[3];
  private final double[] matrix = new double[9];
  private final double[] velocityMps = new double[2];
  private final double[] placeM = new double[2];
  private final double[] correction = new double[ERRORS];
  private boolean started;
  private boolean levelled;

  public ErrorStateKalmanFilter(KalmanSettings settings, SampleLimits limits) {
    this(settings, limits, BlockListener.NONE);
  }

  public ErrorStateKalmanFilter(
      KalmanSettings settings, SampleLimits limits, BlockListener listener) {
    coefficients = KalmanCoefficients.of(settings);
    floor = settings.floor();
    guard = new SampleGuard(limits);
    rest = new RestDetector(settings.rest());
    this.listener = listener;
    covariance.start(coefficients);
  }

  /** With the standard settings, for a unit that states no full scales. */
  public static ErrorStateKalmanFilter withDefaults() {
    return new ErrorStateKalmanFilter(KalmanSettings.standard(), SampleLimits.unlimited());
  }

  @Override
  public void update(
      double gyroX,
      double gyroY,
      double gyroZ,
      double accelX,
      double accelY,
      double accelZ,
      double dtS) {
    double stepS = started ? dtS : 1e-9;
    if (!guard.take(gyroX, gyroY, gyroZ, accelX, accelY, accelZ, stepS)) {
      return;
    }
    if (!started && !start(accelX, accelY, accelZ)) {
      return;
    }
    follow(accelX, accelY, accelZ);
    watchRest(gyroX, gyroY, gyroZ, accelX, accelY, accelZ);
    if (!levelled) {
      relevel();
    }
    if (sums.lengthS >= coefficients.blockS() - 1e-6 && (levelled || levelFound())) {
      endBlock();
    }
  }

  private boolean start(double accelX, double accelY, double accelZ) {
    double squared = accelX * accelX + accelY * accelY + accelZ * accelZ;
    if (!guard.accelSeen || !(squared > 0)) {
      return false;
    }
    qEarthUnit.setShortestToZ(accelX, accelY, accelZ);
    started = true;
    guard.forgetStep();
    return true;
  }

  /** One step of the strapdown: half a turn, the force in the middle, the other half. */
  private void follow(double accelX, double accelY, double accelZ) {
    double wx = guard.rateX - bias[0];
    double wy = guard.rateY - bias[1];
    double wz = guard.rateZ - bias[2];
    rate[0] = wx - matrix[0] * wx - matrix[1] * wy - matrix[2] * wz;
    rate[1] = wy - matrix[3] * wx - matrix[4] * wy - matrix[5] * wz;
    rate[2] = wz - matrix[6] * wx - matrix[7] * wy - matrix[8] * wz;
    double half = 0.5 * guard.stepS;
    qEarthUnit.turnRight(half * rate[0], half * rate[1], half * rate[2]);
    sums.add(qEarthUnit, guard, rate, accelX, accelY, accelZ);
    qEarthUnit.turnRight(half * rate[0], half * rate[1], half * rate[2]).normalize();
  }

  private void watchRest(double gx, double gy, double gz, double ax, double ay, double az) {
    if (guard.rateGood && guard.accelGood) {
      double biasSigma = Math.sqrt(covariance.variance(BIAS));
      rest.take(gx, gy, gz, ax, ay, az, guard.stepS, bias, biasSigma);
    } else {
      rest.takeBad(guard.stepS, guard.clipped);
    }
    sums.atRest &= rest.atRest();
  }

  /** In the first block the level is that of the mean force so far. */
  private void relevel() {
    double[] v = sums.velocityMps;
    if (v[0] * v[0] + v[1] * v[1] + v[2] * v[2] > 0) {
      levelling.setShortestToZ(v[0], v[1], v[2]);
    }
  }

  private boolean levelFound() {
    boolean still = rest.stillS() >= 0.5 * sums.lengthS;
    return still || sums.lengthS >= MOVING_LEVEL_S;
  }

  private void endBlock() {
    if (levelled && lost()) {
      release();
    } else if (levelled) {
      correct();
    } else {
      qEarthUnit.multiplyLeft(levelling);
      levelled = true;
    }
    sums.clear();
  }

  private boolean lost() {
    double tilt = 0.5 * (covariance.variance(0) + covariance.variance(1));
    return tilt + sums.angleVariance > LOST_VARIANCE;
  }

  /** After a loss beyond what small angles can repair: level anew in the next block. */
  private void release() {
    covariance.release(coefficients, sums.angleVariance);
    Arrays.fill(velocityMps, 0);
    Arrays.fill(placeM, 0);
    levelled = false;
    levelling.set(1, 0, 0, 0);
    listener.released();
  }

  private void correct() {
    predict();
    Arrays.fill(correction, 0);
    double stepS = sums.lengthS;
    double speedVariance =
        sums.atRest ? coefficients.restSpeedVariance() : coefficients.speedVarianceOver(stepS);
    observe(VELOCITY, -velocityMps[0], speedVariance);
    observe(VELOCITY + 1, -velocityMps[1], speedVariance);
    double placeVariance = coefficients.placeVarianceOver(stepS);
    observe(PLACE, -placeM[0], placeVariance);
    observe(PLACE + 1, -placeM[1], placeVariance);
    if (sums.atRest) {
      double rateVariance = coefficients.restRateDensity() / stepS;
      for (int axis = 0; axis < 3; axis++) {
        observe(BIAS + axis, sums.angleRad[axis] / stepS - bias[axis], rateVariance);
      }
    }
    listener.corrected(correction, covariance.p);
    apply();
  }

  private void predict() {
    model.set(sums);
    covariance.predict(model, sums, coefficients);
    listener.predicted(sums);
    for (int axis = 0; axis < 2; axis++) {
      placeM[axis] += velocityMps[axis] * sums.lengthS + sums.placeM[axis];
      velocityMps[axis] += sums.velocityMps[axis];
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

  private void apply() {
    qEarthUnit.turnLeft(correction[0], correction[1], correction[2]).normalize();
    for (int axis = 0; axis < 2; axis++) {
      velocityMps[axis] += correction[VELOCITY + axis];
      placeM[axis] += correction[PLACE + axis];
    }
    for (int axis = 0; axis < 3; axis++) {
      bias[axis] += correction[BIAS + axis];
    }
    for (int k = 0; k < 9; k++) {
      matrix[k] += correction[MATRIX + k];
    }
  }

  @Override
  public void copyQEarthUnit(MutableQuaternion out) {
    out.set(qEarthUnit);
    if (!levelled) {
      out.multiplyLeft(levelling);
    }
  }

  /** The attitude before the levelling of the first block: for the smoother. */
  public void copyUnlevelled(MutableQuaternion out) {
    out.set(qEarthUnit);
  }

  /** What levels {@link #copyUnlevelled} in the first block. */
  public void copyLevelling(MutableQuaternion out) {
    out.set(levelling);
  }

  /** Whether the first block, which only finds the level, is over. */
  public boolean levelled() {
    return levelled;
  }

  /** Whether the last sample ended a block. */
  public boolean atBlockEnd() {
    return sums.lengthS == 0;
  }

  @Override
  public double inclinationSigmaRad() {
    double own = 0.5 * (covariance.variance(0) + covariance.variance(1));
    return Math.sqrt(own + floor.variance(rate[0], rate[1], rate[2]));
  }

  @Override
  public double headingSigmaRad() {
    return Math.sqrt(covariance.variance(2) + floor.variance(rate[0], rate[1], rate[2]));
  }

  @Override
  public Vector3 gyroBiasRadPerS() {
    return new Vector3(bias[0], bias[1], bias[2]);
  }

  @Override
  public boolean atRest() {
    return rest.atRest();
  }
}
