package steadyturn.fusion.strapdown;

import org.apache.commons.math3.stat.regression.SimpleRegression;
import steadyturn.fusion.rotation.Vector3;

/**
 * How a body moves beside a gap, and what a straight line over the gap may miss of that: the
 * largest rate and the height of the force's waves near it, each axis taken as a sine of that size;
 * and the bend of the rate that its slopes on both sides ask for. The latter tells a backswing,
 * which goes on as it was, from the change of direction at the top.
 *
 * @param rateRadPerS height of the rate's sine along each axis
 * @param quickeningRadPerS2 slopes of the rate on both sides together, along each axis
 * @param forceMps2 height of the force's sine along each axis
 */
record Pace(double rateRadPerS, double quickeningRadPerS2, double forceMps2) {

  /** How far to both sides the pace is looked for (our choice), s. */
  private static final double WITHIN_S = 0.1;

  /** And how far the slope of the rate (our choice), s. */
  private static final double SLOPE_S = 0.04;

  /** The slope itself may change wholly within this (our choice); within less, in part, s. */
  private static final double CHANGES_S = 0.1;

  /**
   * A swinging body changes its rate and its force about as sines of 1.3 and 3 Hz: the pelvis
   * quickens and slows again within about 0.4 s, half a period of the former (our choice; tried
   * against simulated swings).
   */
  private static final double RATE_PACE = 2 * Math.PI * 1.3;

  private static final double FORCE_PACE = 2 * Math.PI * 3;

  /** What the calmest body may change by, rad/s and m/s^2. */
  private static final double LEAST_RATE = Math.toRadians(1);

  private static final double LEAST_FORCE = 0.1;

  /**
   * Of the body beside a gap.
   *
   * @param before last sample before the gap
   * @param after first sample behind it
   */
  static Pace beside(StrapdownSamples samples, Strapdown pass, int before, int after) {
    int from = pass.indexAt(samples.timeS[before] - WITHIN_S);
    int to = pass.indexAt(samples.timeS[after] + WITHIN_S);
    double fastest = LEAST_RATE;
    double[] sum = new double[3];
    double[] squares = new double[3];
    for (int k = from; k <= to; k++) {
      double square = 0;
      for (int axis = 0; axis < 3; axis++) {
        double rate = samples.gyroRadPerS[axis][k];
        double force = pass.force[axis][k];
        square += rate * rate;
        sum[axis] += force;
        squares[axis] += force * force;
      }
      fastest = Math.max(fastest, Math.sqrt(square));
    }
    double variance = 0;
    int n = to - from + 1;
    for (int axis = 0; axis < 3; axis++) {
      double mean = sum[axis] / n;
      variance += Math.max(0, squares[axis] / n - mean * mean) / 3;
    }
    Vector3 first = slope(samples, pass.indexAt(samples.timeS[before] - SLOPE_S), before);
    Vector3 second = slope(samples, after, pass.indexAt(samples.timeS[after] + SLOPE_S));
    double differ = second.minus(first).norm();
    double wholly = Math.min(1, (samples.timeS[after] - samples.timeS[before]) / CHANGES_S);
    return new Pace(
        fastest / Math.sqrt(3),
        (differ + wholly * (first.norm() + second.norm() - differ)) / Math.sqrt(3),
        Math.max(LEAST_FORCE, Math.sqrt(2 * variance))); // height of a sine
  }

  /** The rate's slope over some samples, by least squares, rad/s^2; none of less than two. */
  private static Vector3 slope(StrapdownSamples samples, int from, int to) {
    if (to <= from) {
      return Vector3.ZERO;
    }
    double[] slopes = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      SimpleRegression line = new SimpleRegression();
      for (int k = from; k <= to; k++) {
        line.addData(samples.timeS[k] - samples.timeS[from], samples.gyroRadPerS[axis][k]);
      }
      slopes[axis] = line.getSlope();
    }
    return new Vector3(slopes[0], slopes[1], slopes[2]);
  }

  /**
   * What a line may miss of the turn over a time: the most of a sine, at the worst phase, as 1.5
   * SD; and the area between a line and a cubic that has the slopes seen, where these add up.
   */
  double turnRad(double t) {
    double wave = rateRadPerS * Math.min(RATE_PACE * RATE_PACE * t * t * t / 12, t) / 1.5;
    return Math.hypot(wave, quickeningRadPerS2 * t * t / 12);
  }

  double velocityMps(double t) {
    return forceMps2 * Math.min(FORCE_PACE * FORCE_PACE * t * t * t / 12, t) / 1.5;
  }

  double placeM(double t) {
    double square = t * t;
    return forceMps2 * Math.min(FORCE_PACE * FORCE_PACE * square * square / 24, square / 2) / 1.5;
  }
}
