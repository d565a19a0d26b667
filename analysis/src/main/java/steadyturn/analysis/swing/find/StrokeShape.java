package steadyturn.analysis.swing.find;

import java.util.Optional;

/**
 * Back, turn round, fast forward: the one shape every swing has, in the in-plane rate of an arm or
 * the turn rate of the pelvis (negative back, positive forward).
 *
 * @param takeaway index of the last sample before the movement back
 * @param takeawayS start of the movement back by back-extrapolation, s
 * @param takeawaySdS its standard deviation, s
 * @param takeawaySlope how fast the rate grows there, rad/s^2
 * @param top index of the first sample after the sign change
 * @param topS instant of the sign change, s
 * @param topSlope how fast the rate passes zero there, rad/s^2
 * @param peak index of the fastest sample forward
 * @param end index of the first sample after the peak at which the movement forward has ended
 * @param backRad angle from takeaway to top, positive
 */
record StrokeShape(
    int takeaway,
    double takeawayS,
    double takeawaySdS,
    double takeawaySlope,
    int top,
    double topS,
    double topSlope,
    int peak,
    int end,
    double backRad) {

  // the crossings whose line gives the start of the movement
  private static final double LOW_RAD_PER_S = Math.toRadians(8);
  private static final double HIGH_RAD_PER_S = Math.toRadians(25);
  // what is not the arm's own movement, in its plane: sway about other axes, gyro bias, skin that
  // begins to slip; the arm's own trembling belongs to the movement that is timed. Our assumption
  private static final double LEAK_RAD_PER_S = Math.toRadians(0.35);
  // averaging over 30 ms brings the crossings forward, the lean of the downswing's plane against
  // that of the takeaway puts them back, by about 1 ms each: worked out for swings of 0.6 to 1 s
  private static final double SHAPE_SD_S = 0.0008;
  // our choice: nobody trembles this fast at the top, and every movement back exceeds it
  private static final double PLAIN_RAD_PER_S = Math.toRadians(40);

  /**
   * Reads the shape around a peak.
   *
   * @param fine rate to find the top and the peak in, rad/s
   * @param peak a sample of the movement forward
   * @param coarse rate, more strongly smoothed, to find the takeaway in
   * @param longestBackS how far before the top the movement back may have started
   */
  static Optional<StrokeShape> around(
      double[] timeS, double[] fine, double[] coarse, int peak, double longestBackS) {
    int top = peak;
    while (top > 0 && fine[top - 1] > 0) {
      top--;
    }
    if (top < 2) {
      return Optional.empty();
    }
    int back = plainlyBack(timeS, coarse, top, longestBackS);
    int high = lastBefore(coarse, back, -HIGH_RAD_PER_S);
    int low = lastBefore(coarse, high < 0 ? -1 : high + 1, -LOW_RAD_PER_S);
    if (low < 0) {
      return Optional.empty();
    }
    double lowS = Crossing.atS(timeS, coarse, low + 1, -LOW_RAD_PER_S);
    double highS = Crossing.atS(timeS, coarse, high + 1, -HIGH_RAD_PER_S);
    // the straight line through both crossings, back to zero: the definition of the takeaway
    double startS = lowS - (highS - lowS) * LOW_RAD_PER_S / (HIGH_RAD_PER_S - LOW_RAD_PER_S);
    double slope = (HIGH_RAD_PER_S - LOW_RAD_PER_S) / (highS - lowS);
    int end = peak;
    int fastest = top;
    for (int i = top; i < peak; i++) {
      fastest = fine[i] > fine[fastest] ? i : fastest;
    }
    while (end < fine.length && fine[end] > 0) {
      fastest = fine[end] > fine[fastest] ? end : fastest;
      end++;
    }
    return Optional.of(
        new StrokeShape(
            low,
            startS,
            Math.hypot(SHAPE_SD_S, LEAK_RAD_PER_S / slope),
            slope,
            top,
            Crossing.atS(timeS, fine, top, 0),
            slope(timeS, fine, top),
            fastest,
            end,
            -angle(timeS, fine, low, top)));
  }

  /** Last sample before the top at which the movement back is plainly under way; -1 when none. */
  private static int plainlyBack(double[] timeS, double[] rate, int top, double longestBackS) {
    int i = top;
    while (i >= 0 && rate[i] > -PLAIN_RAD_PER_S) {
      i--;
    }
    return i < 0 || timeS[i] < timeS[top] - longestBackS ? -1 : i;
  }

  /** Last sample before {@code from} at which the rate back is below the level; -1 when none is. */
  private static int lastBefore(double[] rate, int from, double level) {
    int i = from;
    while (i >= 0 && rate[i] <= level) {
      i--;
    }
    return i;
  }

  private static double slope(double[] timeS, double[] rate, int i) {
    int from = Math.max(0, i - 3);
    int to = Math.min(rate.length - 1, i + 2);
    return (rate[to] - rate[from]) / (timeS[to] - timeS[from]);
  }

  /** Integral of the rate from sample {@code from} to sample {@code to}, rad. */
  static double angle(double[] timeS, double[] rate, int from, int to) {
    double sum = 0;
    for (int i = from + 1; i <= to; i++) {
      sum += (rate[i] + rate[i - 1]) / 2 * (timeS[i] - timeS[i - 1]);
    }
    return sum;
  }
}
