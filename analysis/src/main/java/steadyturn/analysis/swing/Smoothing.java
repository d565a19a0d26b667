package steadyturn.analysis.swing;

/** Centred means over time: no delay, uneven sampling allowed. */
final class Smoothing {

  private Smoothing() {}

  /** Mean of the values within halfWidthS of each instant; narrower at the ends, still centred. */
  static double[] centred(double[] timeS, double[] values, double halfWidthS) {
    int n = values.length;
    double[] sums = new double[n + 1];
    for (int i = 0; i < n; i++) {
      sums[i + 1] = sums[i] + values[i];
    }
    double[] out = new double[n];
    int from = 0;
    int to = 0;
    for (int i = 0; i < n; i++) {
      while (timeS[from] < timeS[i] - halfWidthS) {
        from++;
      }
      while (to < n && timeS[to] <= timeS[i] + halfWidthS) {
        to++;
      }
      int reach = Math.min(i - from, to - 1 - i);
      out[i] = (sums[i + reach + 1] - sums[i - reach]) / (2 * reach + 1);
    }
    return out;
  }

  /** Instant at which the line through samples i-1 and i meets a level, s. */
  static double crossingS(double[] timeS, double[] values, int i, double level) {
    double part = (level - values[i - 1]) / (values[i] - values[i - 1]);
    return timeS[i - 1] + part * (timeS[i] - timeS[i - 1]);
  }
}
