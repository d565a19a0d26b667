package steadyturn.fusion.filter.kalman;

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
 */
public final class ErrorStateKalmanFilter implements OrientationFilter {

  /** Levelling in movement takes so long, s: then 1 m/s more speed tilts the mean force by 0.1. */
  private static final double MOVING_LEVEL_S = 1;

  private final double blockS;
  private final SigmaFloor floor;
  private final SampleGuard guard;
  private final RestDetector rest;
  private final BlockCorrection correction;
  private final BlockSums sums = new BlockSums();
  private final RateFollower follower = new RateFollower();
  private final MutableQuaternion levelling = new MutableQuaternion();
  private boolean started;
  private boolean levelled;

  public ErrorStateKalmanFilter(KalmanSettings settings, SampleLimits limits) {
    this(settings, limits, BlockListener.NONE);
  }

  public ErrorStateKalmanFilter(
      KalmanSettings settings, SampleLimits limits, BlockListener listener) {
    blockS = settings.blockS();
    correction = new BlockCorrection(KalmanCoefficients.of(settings), listener);
    floor = settings.floor();
    guard = new SampleGuard(limits);
    rest = new RestDetector(settings.rest());
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
    follower.follow(guard, accelX, accelY, accelZ, sums);
    watchRest(gyroX, gyroY, gyroZ, accelX, accelY, accelZ);
    if (!levelled) {
      relevel();
    }
    if (sums.lengthS >= blockS - 1e-6 && (levelled || levelFound())) {
      endBlock();
    }
  }

  private boolean start(double accelX, double accelY, double accelZ) {
    double squared = accelX * accelX + accelY * accelY + accelZ * accelZ;
    if (!guard.accelSeen || !(squared > 0)) {
      return false;
    }
    follower.qEarthUnit.setShortestToZ(accelX, accelY, accelZ);
    started = true;
    guard.forgetStep();
    return true;
  }

  private void watchRest(double gx, double gy, double gz, double ax, double ay, double az) {
    if (guard.rateGood && guard.accelGood) {
      double doubt = correction.biasDoubt();
      rest.take(gx, gy, gz, ax, ay, az, guard.stepS, follower.bias, doubt);
    } else {
      rest.takeBad(guard.stepS, guard.clipped);
    }
    boolean atRest = rest.atRest();
    sums.atRest &= atRest;
    correction.watch(guard, atRest);
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
    boolean moving = !still && sums.lengthS >= MOVING_LEVEL_S;
    if (moving) {
      correction.levelledMoving(sums);
    }
    return still || moving;
  }

  private void endBlock() {
    if (levelled && correction.lost(sums)) {
      // level anew in the next block
      correction.release(sums);
      levelled = false;
      levelling.set(1, 0, 0, 0);
    } else if (levelled) {
      correction.correct(sums, follower);
    } else {
      follower.qEarthUnit.multiplyLeft(levelling);
      levelled = true;
    }
    sums.clear();
  }

  @Override
  public void copyQEarthUnit(MutableQuaternion out) {
    out.set(follower.qEarthUnit);
    if (!levelled) {
      out.multiplyLeft(levelling);
    }
  }

  /** The attitude before the levelling of the first block: for the smoother. */
  public void copyUnlevelled(MutableQuaternion out) {
    out.set(follower.qEarthUnit);
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
    return Math.sqrt(correction.tiltVariance() + floorVariance() + unseenTiltVariance());
  }

  /** How far the accelerometer's errors, as its rests showed them, move the floor, rad^2. */
  public double unseenTiltVariance() {
    return correction.unseenTiltVariance(floor.alignmentRad() * floor.alignmentRad());
  }

  @Override
  public double headingSigmaRad() {
    return Math.sqrt(correction.headingVariance() + floorVariance());
  }

  private double floorVariance() {
    return floor.variance(follower.rate[0], follower.rate[1], follower.rate[2]);
  }

  @Override
  public Vector3 gyroBiasRadPerS() {
    return new Vector3(follower.bias[0], follower.bias[1], follower.bias[2]);
  }

  @Override
  public boolean atRest() {
    return rest.atRest();
  }
}
