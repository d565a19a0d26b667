package steadyturn.fusion.filter;

/**
 * Stands before every filter: bridges lost rates and gaps, notes clipped values, and says how much
 * variance each of them adds. After {@link #take} its fields describe the step to make.
 */
public final class SampleGuard {

  /** Correlation time of the unknown movement in a loss, s (our choice: a tenth of a stride). */
  private static final double LOSS_CORRELATION_S = 0.1;

  /** Usual size of movement accelerations, m/s^2, where the accelerometer is blind. */
  private static final double UNSEEN_ACCEL_MPS2 = 3;

  private static final double LARGEST_ANGLE_VARIANCE = 1;

  private final SampleLimits limits;

  /** Rate to turn by over the step, rad/s. */
  public double rateX;

  public double rateY;
  public double rateZ;

  /** Length of the step, s. */
  public double stepS;

  /** Whether the rate is measured in full (not lost, not bridged, not clipped). */
  public boolean rateGood;

  /** Whether there is an acceleration at all. */
  public boolean accelSeen;

  /** Whether it is measured in full: seen and not clipped. */
  public boolean accelGood;

  /** Whether a value stood at full scale. */
  public boolean clipped;

  /** Variance of angle that the step adds for what was not seen, rad^2. */
  public double angleVariance;

  /** Variance of velocity that the step adds for what was not seen, m^2/s^2. */
  public double velocityVariance;

  private double lastX;
  private double lastY;
  private double lastZ;
  private double lostS;
  private double usualStepS;

  public SampleGuard(SampleLimits limits) {
    this.limits = limits;
  }

  /** Prepares the step that ends with this sample; false when there is nothing to do. */
  public boolean take(
      double gx, double gy, double gz, double ax, double ay, double az, double dtS) {
    if (!(dtS > 0 && dtS < Double.POSITIVE_INFINITY)) {
      return false;
    }
    stepS = dtS;
    angleVariance = 0;
    velocityVariance = 0;
    clipped = false;
    if (usualStepS == 0) {
      usualStepS = dtS;
    }
    takeRate(gx, gy, gz);
    takeAccel(ax, ay, az);
    usualStepS += 0.05 * (Math.min(dtS, 1.5 * usualStepS) - usualStepS);
    return true;
  }

  private void takeRate(double gx, double gy, double gz) {
    // NaN - NaN and infinity - infinity are NaN: one test for three values
    boolean seen = gx + gy + gz - (gx + gy + gz) == 0;
    rateGood = seen;
    if (!seen) {
      lostS += stepS;
      double hold = lostS <= limits.bridgeS() ? 1 : 0;
      setRate(hold * lastX, hold * lastY, hold * lastZ);
      angleVariance = unseenAngleVariance(lostS) - unseenAngleVariance(lostS - stepS);
      return;
    }
    lostS = 0;
    if (stepS > 1.5 * usualStepS) {
      bridge(gx, gy, gz);
    } else {
      setRate(gx, gy, gz);
    }
    if (limits.gyroClipped(gx, gy, gz)) {
      rateGood = false;
      clipped = true;
      // beyond full scale nothing is known but the sign: half the scale over 20 ms, our choice
      double unseen = 0.5 * limits.gyroFullScaleRadPerS();
      angleVariance += unseen * unseen * stepS * 0.02;
    }
    lastX = gx;
    lastY = gy;
    lastZ = gz;
  }

  /** A gap: this sample speaks for its own usual step, the mean of both ends for the rest. */
  private void bridge(double gx, double gy, double gz) {
    rateGood = false;
    double gapS = stepS - usualStepS;
    double bridgedS = Math.min(gapS, limits.bridgeS());
    double own = usualStepS / stepS;
    double mean = 0.5 * bridgedS / stepS;
    setRate(
        own * gx + mean * (gx + lastX),
        own * gy + mean * (gy + lastY),
        own * gz + mean * (gz + lastZ));
    double leftRad = 0.5 * Math.abs(gx + lastX) + 0.5 * Math.abs(gy + lastY);
    leftRad = (leftRad + 0.5 * Math.abs(gz + lastZ)) * (gapS - bridgedS);
    angleVariance = Math.min(LARGEST_ANGLE_VARIANCE, unseenAngleVariance(gapS) + leftRad * leftRad);
    double accel = UNSEEN_ACCEL_MPS2;
    velocityVariance = accel * accel * gapS * LOSS_CORRELATION_S;
  }

  /** Rate unknown for a time t with an angular acceleration alpha: angle within alpha t^2 / 12. */
  private double unseenAngleVariance(double lossS) {
    double angle = limits.angularAccelRadPerS2() * lossS * lossS / 12;
    return Math.min(LARGEST_ANGLE_VARIANCE, angle * angle);
  }

  private void takeAccel(double ax, double ay, double az) {
    accelSeen = ax + ay + az - (ax + ay + az) == 0;
    boolean accelClipped = accelSeen && limits.accelClipped(ax, ay, az);
    clipped |= accelClipped;
    accelGood = accelSeen && !accelClipped;
    if (!accelGood) {
      double unseen = UNSEEN_ACCEL_MPS2;
      velocityVariance += unseen * unseen * stepS * LOSS_CORRELATION_S;
    }
  }

  private void setRate(double x, double y, double z) {
    rateX = x;
    rateY = y;
    rateZ = z;
  }

  /** The first sample has no step before it: its usual length is not known yet. */
  public void forgetStep() {
    usualStepS = 0;
  }
}
