package steadyturn.analysis.swing.find;

/** Where a sampled quantity meets a level. */
final class Crossing {

  // our choice: no moment is known worse, else it was not found at all
  private static final double LONGEST_SD_S = 0.5;

  // three only where a floor keeps them from what stands still
  private static final int FEW_DOUBTS = 2;
  private static final int MOST_DOUBTS = 3;

  /** So many times as far as in even steps is another moment (our choice). */
  private static final double COMES_BACK = 3;

  private Crossing() {}

  /** Instant at which the line through samples i-1 and i meets a level, s. */
  static double atS(double[] timeS, double[] values, int i, double level) {
    double part = (level - values[i - 1]) / (values[i] - values[i - 1]);
    return timeS[i - 1] + part * (timeS[i] - timeS[i - 1]);
  }

  /** Index of the last sample up to {@code from} below the level; -1 when there is none. */
  static int lastBelow(double[] values, int from, double level) {
    int i = from;
    while (i >= 0 && values[i] >= level) {
      i--;
    }
    return i;
  }

  /**
   * The last moment before sample {@code from} at which the values pass the level upwards, with the
   * spread that the doubt of the values gives it: what one and two doubts above or below the level
   * would have given instead. Where the values creep or come back, that spread is wide.
   *
   * @param doubt standard deviation of the values around there
   */
  static Instant last(double[] timeS, double[] values, int from, double level, double doubt) {
    return last(timeS, values, from, level, doubt, Double.NEGATIVE_INFINITY);
  }

  /**
   * The same of values that no doubt makes less, asked up to three doubts off.
   *
   * @param least what the values reach where nothing moves, whatever the doubt of those that do
   */
  static Instant last(
      double[] timeS, double[] values, int from, double level, double doubt, double least) {
    double atS = lastS(timeS, values, from, level);
    double oneS = 0;
    double sdS = 0;
    int most = Double.isInfinite(least) ? FEW_DOUBTS : MOST_DOUBTS;
    for (int k = 1; k <= most; k++) {
      double lower = Math.max(least, level - k * doubt);
      double beforeS = atS - lastS(timeS, values, from, lower);
      double awayS = Math.max(beforeS, lastS(timeS, values, from, level + k * doubt) - atS);
      oneS = k == 1 ? awayS : oneS;
      // where the values come back to the level there are two moments: the range reaches the other
      sdS = Math.max(sdS, awayS > COMES_BACK * k * oneS ? awayS / 2 : awayS / k);
    }
    return new Instant(atS, Math.min(sdS, LONGEST_SD_S));
  }

  private static double lastS(double[] timeS, double[] values, int from, double level) {
    int i = lastBelow(values, from, level);
    return i < 0 || i == from ? timeS[Math.max(0, i)] : atS(timeS, values, i + 1, level);
  }
}
