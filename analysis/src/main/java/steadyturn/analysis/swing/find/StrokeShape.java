package steadyturn.analysis.swing.find;

import java.util.Optional;

/**
 * Back, turn round, fast forward: the one shape every swing has, in the in-plane rate of an arm or
 * the turn rate of the pelvis (negative back, positive forward).
 *
 * @param takeaway index of the last sample before the way back
 * @param half index of a sample half way back
 * @param top index of the first sample after the last change from back to forward
 * @param topS instant of that change, s
 * @param peak index of the fastest sample forward
 * @param end index of the first sample after the peak at which the movement forward has ended
 * @param backRad angle from takeaway to top, positive
 */
record StrokeShape(
    int takeaway, int half, int top, double topS, int peak, int end, double backRad) {

  // our choice: a movement forward by more than this ends the way back; loops at the top, a dip on
  // the way and sway are smaller, and a waggle that is smaller lies well before half the way
  private static final double REWIND_RAD = Math.toRadians(25);

  // our choices: a hurried and a slow way back, with a pause at the top; the same of the way down
  static final double LONGEST_BACK_S = 2.2;
  static final double LONGEST_DOWN_S = 1.0;
  private static final double SHORTEST_BACK_S = 0.35;
  private static final double SHORTEST_DOWN_S = 0.04;

  /**
   * Reads the shape around a peak.
   *
   * @param rate rad/s
   * @param peak a sample of the movement forward
   * @param slowRadPerS what is slower is not on its way back yet
   */
  static Optional<StrokeShape> around(double[] timeS, double[] rate, int peak, double slowRadPerS) {
    int top = Crossing.lastBelow(rate, peak, 0) + 1;
    if (top < 2 || top > peak) {
      return Optional.empty();
    }
    int half = halfWay(timeS, rate, top);
    int takeaway = half;
    while (takeaway >= 0 && rate[takeaway] <= -slowRadPerS) {
      takeaway--;
    }
    if (takeaway < 0 || takeaway == half) {
      return Optional.empty();
    }
    int end = peak;
    int fastest = top;
    while (end < rate.length && rate[end] > 0) {
      end++;
    }
    for (int i = top; i < end; i++) {
      fastest = rate[i] > rate[fastest] ? i : fastest;
    }
    return Optional.of(
        new StrokeShape(
            takeaway,
            half,
            top,
            Crossing.atS(timeS, rate, top, 0),
            fastest,
            end,
            -angle(timeS, rate, takeaway, top)));
  }

  /** Whether it takes as long as a full swing does. */
  boolean hasTempo(double[] timeS) {
    double backS = topS - timeS[takeaway];
    double downS = timeS[peak] - topS;
    return backS >= SHORTEST_BACK_S
        && backS <= LONGEST_BACK_S
        && downS >= SHORTEST_DOWN_S
        && downS <= LONGEST_DOWN_S;
  }

  /** Angle forward from the top to the end of the movement, rad. */
  double forwardRad(double[] timeS, double[] rate) {
    return angle(timeS, rate, top, Math.min(end, rate.length - 1));
  }

  /** Last sample, seen from the top, before which half of the way back was still to come. */
  private static int halfWay(double[] timeS, double[] rate, int top) {
    double[] back = new double[top + 1];
    double most = 0;
    int i = top;
    while (i > 0 && timeS[i] > timeS[top] - LONGEST_BACK_S && back[i] > most - REWIND_RAD) {
      back[i - 1] = back[i] - (rate[i] + rate[i - 1]) / 2 * (timeS[i] - timeS[i - 1]);
      i--;
      most = Math.max(most, back[i]);
    }
    int half = top;
    while (half > i && back[half] < most / 2) {
      half--;
    }
    return half;
  }

  /** Integral of the rate from sample {@code from} to sample {@code to}, rad. */
  private static double angle(double[] timeS, double[] rate, int from, int to) {
    double sum = 0;
    for (int i = from + 1; i <= to; i++) {
      sum += (rate[i] + rate[i - 1]) / 2 * (timeS[i] - timeS[i - 1]);
    }
    return sum;
  }
}
