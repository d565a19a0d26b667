package steadyturn.fusion.filter.lowpass;

import java.util.Arrays;
import steadyturn.fusion.filter.OrientationFilter;
import steadyturn.fusion.filter.RestDetector;
import steadyturn.fusion.filter.SampleGuard;
import steadyturn.fusion.filter.SampleLimits;
import steadyturn.fusion.filter.kalman.ErrorStateKalmanFilter;
import steadyturn.fusion.rotation.MutableQuaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.StandardGravity;

/**
 * Low-pass of the specific force in an almost-inertial frame. The rates alone give an attitude in a
 * frame that drifts slowly; turned into that frame, the force is gravity plus movement that
 * averages out, so a slow low-pass finds the vertical there, and one more rotation levels the
 * frame. How fast that rotation changes, seen through the equally low-passed attitude, is gyroscope
 * bias; at rest the bias is the mean rate. The general idea is that of Laidig and Seel 2023, "VQF:
 * Highly accurate IMU orientation estimation with bias estimation and magnetic disturbance
 * rejection", Information Fusion 91:187-204; realised here in our own way. It shares no estimate
 * with {@link ErrorStateKalmanFilter}, so the two check each other.
 */
public final class LowPassFilter implements OrientationFilter {

  /**
   * The bias is judged once in such a time, s (our choice: far under the force's time constant).
   */
  private static final double BIAS_BLOCK_S = 0.1;

  /** What is known of the vertical when all is well, rad^2: 1 deg (our choice). */
  private static final double USUAL_VARIANCE = Math.toRadians(1) * Math.toRadians(1);

  private final LowPassSettings settings;
  private final SampleGuard guard;
  private final RestDetector rest;
  private final BiasEstimate bias;
  private final TwoStageMean force;
  private final TwoStageMean attitude;
  private final MutableQuaternion qDriftUnit = new MutableQuaternion();
  private final MutableQuaternion qEarthDrift = new MutableQuaternion();
  private final double[] turned = new double[9];
  private final double[] h = new double[3];
  private final double[] restRateSum = new double[3];
  private final double[] tiltRad = new double[2];
  private double blockS;
  private boolean blockAtRest = true;
  private boolean blockSeen = true;
  private boolean started;
  private double elapsedS;
  private double unseenVariance;
  private double headingVariance;

  public LowPassFilter(LowPassSettings settings, SampleLimits limits) {
    this.settings = settings;
    guard = new SampleGuard(limits);
    rest = new RestDetector(settings.rest());
    bias = new BiasEstimate(settings.startBiasRadPerS(), settings.biasWalkRadPerSSqrtS());
    force = new TwoStageMean(settings.forceTimeS(), 3);
    attitude = new TwoStageMean(settings.forceTimeS(), 9);
  }

  /** With the standard settings, for a unit that states no full scales. */
  public static LowPassFilter withDefaults() {
    return new LowPassFilter(LowPassSettings.standard(), SampleLimits.unlimited());
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
    double squared = accelX * accelX + accelY * accelY + accelZ * accelZ;
    if (!started && !(guard.accelSeen && squared > 0)) {
      return;
    }
    if (!started) {
      started = true;
      guard.forgetStep();
    }
    follow(accelX, accelY, accelZ);
    level();
    watchRest(gyroX, gyroY, gyroZ, accelX, accelY, accelZ);
    if (blockS >= BIAS_BLOCK_S - 1e-6) {
      judgeBias();
    }
  }

  /** One step in the drifting frame, with the force and the attitude in its middle. */
  private void follow(double ax, double ay, double az) {
    elapsedS += guard.stepS;
    double half = 0.5 * guard.stepS;
    double rx = half * (guard.rateX - bias.get(0));
    double ry = half * (guard.rateY - bias.get(1));
    double rz = half * (guard.rateZ - bias.get(2));
    MutableQuaternion q = qDriftUnit;
    q.turnRight(rx, ry, rz);
    attitude.step(guard.stepS);
    q.matrix(turned);
    for (int k = 0; k < turned.length; k++) {
      attitude.add(k, turned[k]);
    }
    if (guard.accelSeen) {
      force.step(guard.stepS);
      force.add(0, q.rotatedX(ax, ay, az));
      force.add(1, q.rotatedY(ax, ay, az));
      force.add(2, q.rotatedZ(ax, ay, az));
    }
    q.turnRight(rx, ry, rz).normalize();
    loseTrust();
  }

  /** What was not seen (gaps, clipping) makes the old vertical worth less. */
  private void loseTrust() {
    double v = guard.angleVariance;
    if (v > 0) {
      force.trust(USUAL_VARIANCE / (USUAL_VARIANCE + v));
      unseenVariance += v;
      headingVariance += v;
    }
    unseenVariance *= 1 - guard.stepS / (guard.stepS + settings.forceTimeS());
  }

  /** Turns the drifting frame on so that the low-passed force points up. */
  private void level() {
    double fx = force.get(0);
    double fy = force.get(1);
    double fz = force.get(2);
    MutableQuaternion c = qEarthDrift;
    double ex = c.rotatedX(fx, fy, fz);
    double ey = c.rotatedY(fx, fy, fz);
    double ez = c.rotatedZ(fx, fy, fz);
    double across = ex * ex + ey * ey;
    double norm = Math.sqrt(across + ez * ez);
    if (!(norm > 0)) {
      return;
    }
    if (ez > 0 && across < 1e-4 * norm * norm) {
      // small turn (ey, -ex, 0) / norm: exact to 1e-6 rad here, and without a root
      double inverse = 1 / norm;
      c.turnLeft(ey * inverse, -ex * inverse, 0).normalize();
      tiltRad[0] += ey * inverse;
      tiltRad[1] -= ex * inverse;
    } else {
      levelFar(ex, ey, ez);
    }
  }

  private void levelFar(double ex, double ey, double ez) {
    MutableQuaternion step = new MutableQuaternion().setShortestToZ(ex, ey, ez);
    qEarthDrift.multiplyLeft(step).normalize();
    tiltRad[0] += 2 * step.x();
    tiltRad[1] += 2 * step.y();
  }

  private void watchRest(double gx, double gy, double gz, double ax, double ay, double az) {
    if (guard.rateGood && guard.accelGood) {
      rest.take(gx, gy, gz, ax, ay, az, guard.stepS, bias.values(), bias.sigmaRadPerS());
    } else {
      rest.takeBad(guard.stepS, guard.clipped);
    }
    blockAtRest &= rest.atRest();
    blockSeen &= guard.angleVariance == 0;
    blockS += guard.stepS;
    restRateSum[0] += guard.rateX * guard.stepS;
    restRateSum[1] += guard.rateY * guard.stepS;
    restRateSum[2] += guard.rateZ * guard.stepS;
  }

  private void judgeBias() {
    bias.walk(blockS);
    if (blockAtRest) {
      double sigma = settings.rest().rateSigmaRadPerSqrtS();
      double variance = sigma * sigma / blockS;
      for (int axis = 0; axis < 3; axis++) {
        Arrays.fill(h, 0);
        h[axis] = 1;
        bias.observe(h, restRateSum[axis] / blockS - bias.get(axis), variance);
      }
    } else if (blockSeen && force.settled()) {
      double sigma = settings.movingRateRadPerSqrtS();
      observeTilt(tiltRad[0] / blockS, tiltRad[1] / blockS, sigma * sigma / blockS);
    }
    double yawRate = bias.sigmaRadPerS();
    headingVariance += yawRate * yawRate * blockS * Math.max(blockS, elapsedS);
    clearBlock();
  }

  /** Levelling turns against the drift that a wrong bias makes: tilt rate = R (true - bias). */
  private void observeTilt(double rateX, double rateY, double variance) {
    double limit = settings.largestTiltRateRadPerS();
    for (int c = 0; c < 3; c++) {
      h[c] = -qEarthDrift.rotatedX(attitude.get(c), attitude.get(3 + c), attitude.get(6 + c));
    }
    bias.observe(h, Math.max(-limit, Math.min(limit, rateX)), variance);
    for (int c = 0; c < 3; c++) {
      h[c] = -qEarthDrift.rotatedY(attitude.get(c), attitude.get(3 + c), attitude.get(6 + c));
    }
    bias.observe(h, Math.max(-limit, Math.min(limit, rateY)), variance);
  }

  private void clearBlock() {
    blockS = 0;
    blockAtRest = true;
    blockSeen = true;
    Arrays.fill(restRateSum, 0);
    Arrays.fill(tiltRad, 0);
  }

  @Override
  public void copyQEarthUnit(MutableQuaternion out) {
    out.set(qDriftUnit);
    out.multiplyLeft(qEarthDrift);
  }

  /** From what the two stages disagree by, from the bias still unknown, and from losses. */
  @Override
  public double inclinationSigmaRad() {
    MutableQuaternion c = qEarthDrift;
    double lx = c.rotatedX(force.lag(0), force.lag(1), force.lag(2)) / StandardGravity.MPS2;
    double ly = c.rotatedY(force.lag(0), force.lag(1), force.lag(2)) / StandardGravity.MPS2;
    double drift = bias.sigmaRadPerS() * Math.min(elapsedS, settings.forceTimeS());
    // the second stage takes off most of what the first still lags by: a tenth of it, our choice
    double own = 0.05 * (lx * lx + ly * ly) + drift * drift + unseenVariance;
    return Math.sqrt(own + floorVariance());
  }

  @Override
  public double headingSigmaRad() {
    return Math.sqrt(headingVariance + floorVariance());
  }

  private double floorVariance() {
    return settings.floor().variance(guard.rateX, guard.rateY, guard.rateZ);
  }

  @Override
  public Vector3 gyroBiasRadPerS() {
    return new Vector3(bias.get(0), bias.get(1), bias.get(2));
  }

  @Override
  public boolean atRest() {
    return rest.atRest();
  }
}
