package steadyturn.fusion.attitude;

/** Smoothing by the centred mean over a stretch of time: no delay, uneven sampling allowed. */
public final class CentredMean {

  private CentredMean() {}

  /** Mean of the values within halfWidthS of each instant; narrower at the ends, still centred. */
  public static double[] of(double[] timeS, double[] values, double halfWidthS) {
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
}
