package steadyturn.fusion.filter;

/** Tells rest from movement by the distance of rate and acceleration from their running means. */
public final class RestDetector {

  /** Rest goes on over losses up to this, s (our choice: too short to go anywhere and stop). */
  private static final double LONGEST_LOSS_S = 0.1;

  /** Shakes shorter than this are smoothed away before anything is compared, s (our choice). */
  private static final double SHAKE_S = 0.05;

  /** One sample moves the smoothed value as if it were off by this many thresholds at most. */
  private static final double WILD = 5;

  /** A moving sample costs this many still ones: taps only interrupt a rest, movement ends it. */
  private static final double PRICE = 20;

  /** Rest is remembered for no longer than it takes to notice that it is over, s. */
  private static final double MEMORY_S = 0.05;

  private final RestDetectorSettings settings;
  private final double gyroSquared;
  private final double accelSquared;
  private final double[] meanGyro = new double[3];
  private final double[] meanAccel = new double[3];
  private final double[] calmGyro = new double[3];
  private final double[] calmAccel = new double[3];
  private boolean started;
  private double stillS;
  private boolean wildRate;
  private double badS;

  public RestDetector(RestDetectorSettings settings) {
    this.settings = settings;
    gyroSquared = settings.gyroRadPerS() * settings.gyroRadPerS();
    accelSquared = settings.accelMps2() * settings.accelMps2();
  }

  /**
   * Takes a sample that was measured in full.
   *
   * @param bias the bias taken off the rates, rad/s
   * @param biasSigma its one sigma per axis, rad/s: while it is unknown a larger mean is allowed
   */
  public void take(
      double gx,
      double gy,
      double gz,
      double ax,
      double ay,
      double az,
      double dtS,
      double[] bias,
      double biasSigma) {
    if (!started) {
      started = true;
      set(meanGyro, gx, gy, gz);
      set(meanAccel, ax, ay, az);
      set(calmGyro, gx, gy, gz);
      set(calmAccel, ax, ay, az);
    }
    double gain = dtS / (dtS + settings.smoothS());
    double calm = dtS / (dtS + SHAKE_S);
    calmDown(calmGyro, calm, WILD * settings.gyroRadPerS(), gx, gy, gz);
    calmDown(calmAccel, calm, WILD * settings.accelMps2(), ax, ay, az);
    double gyroOff = follow(meanGyro, gain, calmGyro[0], calmGyro[1], calmGyro[2]);
    double accelOff = follow(meanAccel, gain, calmAccel[0], calmAccel[1], calmAccel[2]);
    double wild = WILD * settings.gyroRadPerS();
    wildRate =
        Math.abs(gx - meanGyro[0]) > wild
            || Math.abs(gy - meanGyro[1]) > wild
            || Math.abs(gz - meanGyro[2]) > wild;
    double largest = settings.largestRateRadPerS() + 2 * biasSigma;
    boolean still =
        gyroOff <= gyroSquared
            && accelOff <= accelSquared
            && Math.abs(meanGyro[0] - bias[0]) <= largest
            && Math.abs(meanGyro[1] - bias[1]) <= largest
            && Math.abs(meanGyro[2] - bias[2]) <= largest;
    stillS =
        still
            ? Math.min(settings.holdS() + MEMORY_S, stillS + dtS)
            : Math.max(0, stillS - PRICE * dtS);
    badS = 0;
  }

  /** A lost sample cannot show rest, but a few of them do not end it either; a clipped one does. */
  public void takeBad(double dtS, boolean clipped) {
    badS += dtS;
    if (clipped || badS > LONGEST_LOSS_S) {
      stillS = 0;
    }
  }

  /** How long the unit has been still, s; rest is this for long enough. */
  public double stillS() {
    return stillS;
  }

  /** Whether this very sample is one of a rest: the first one of a brisk movement is not. */
  public boolean atRest() {
    return started && !wildRate && stillS >= settings.holdS() && stillS > 0;
  }

  private static void set(double[] v, double x, double y, double z) {
    v[0] = x;
    v[1] = y;
    v[2] = z;
  }

  /** Moves the value towards the sample, by a bounded step, so that a tap hardly shows. */
  private static void calmDown(
      double[] value, double gain, double limit, double x, double y, double z) {
    value[0] += gain * Math.max(-limit, Math.min(limit, x - value[0]));
    value[1] += gain * Math.max(-limit, Math.min(limit, y - value[1]));
    value[2] += gain * Math.max(-limit, Math.min(limit, z - value[2]));
  }

  /** Moves the mean towards the value and gives the squared distance left. */
  private static double follow(double[] mean, double gain, double x, double y, double z) {
    mean[0] += gain * (x - mean[0]);
    mean[1] += gain * (y - mean[1]);
    mean[2] += gain * (z - mean[2]);
    double dx = x - mean[0];
    double dy = y - mean[1];
    double dz = z - mean[2];
    return dx * dx + dy * dy + dz * dz;
  }
}
