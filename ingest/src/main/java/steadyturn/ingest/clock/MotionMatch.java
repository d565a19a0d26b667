package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.List;
import steadyturn.ingest.sample.UnitStream;

/**
 * Pairs without shocks: forearm and hand turn mostly together, so the lag at which their rates
 * agree best shows the difference of their clocks, once every few seconds of movement. The wrist's
 * own movement makes each single lag uncertain by some milliseconds.
 */
final class MotionMatch {

  private static final double WINDOW_S = 4;
  private static final double RATE_HZ = 200;
  private static final int MOST_LAG = (int) (0.12 * RATE_HZ);
  private static final double MOVING_RAD_PER_S = Math.toRadians(30);

  /** What one window is worth at best (our choice: the wrist moves too), s. */
  private static final double PAIR_SD_S = 0.006;

  private static final double LEAST_CORRELATION = 0.8;

  private MotionMatch() {}

  /** One pair for each window in which both move and agree. */
  static List<TimePair> of(UnitStream unit, UnitStream other) {
    List<TimePair> pairs = new ArrayList<>();
    if (unit.size() < 2 || other.size() < 2) {
      return pairs;
    }
    double fromS = Math.max(unit.timeS(0), other.timeS(0));
    double toS = Math.min(unit.timeS(unit.size() - 1), other.timeS(other.size() - 1));
    int window = (int) (WINDOW_S * RATE_HZ);
    for (double startS = fromS; startS + WINDOW_S <= toS; startS += WINDOW_S) {
      double[] a = rates(unit, startS, window);
      double[] b = rates(other, startS, window);
      double lag = bestLag(a, b);
      if (!Double.isNaN(lag)) {
        pairs.add(new TimePair(startS + WINDOW_S / 2, lag / RATE_HZ, PAIR_SD_S));
      }
    }
    return pairs;
  }

  private static double[] rates(UnitStream unit, double startS, int n) {
    UnitStream part = unit.between(startS - 0.1, startS + n / RATE_HZ + 0.1);
    UnitStream even = CommonGrid.resample(part, startS, RATE_HZ, n, 0.05);
    double[] rates = new double[n];
    for (int i = 0; i < n; i++) {
      rates[i] = even.gyroNormRadPerS(i);
    }
    return rates;
  }

  /** How many samples b comes later than a; NaN where they do not move, agree or have gaps. */
  private static double bestLag(double[] a, double[] b) {
    double[] at = new double[2 * MOST_LAG + 1];
    int best = 0;
    for (int lag = -MOST_LAG; lag <= MOST_LAG; lag++) {
      at[lag + MOST_LAG] = correlation(a, b, lag);
      best = at[lag + MOST_LAG] > at[best] ? lag + MOST_LAG : best;
    }
    boolean isPeak = best > 0 && best < at.length - 1 && at[best] > LEAST_CORRELATION;
    if (!isPeak) {
      return Double.NaN;
    }
    double curve = at[best - 1] - 2 * at[best] + at[best + 1];
    return best - MOST_LAG + 0.5 * (at[best - 1] - at[best + 1]) / curve;
  }

  private static double correlation(double[] a, double[] b, int lag) {
    int from = MOST_LAG;
    int to = a.length - MOST_LAG;
    int n = to - from;
    double meanA = 0;
    double meanB = 0;
    for (int i = from; i < to; i++) {
      meanA += a[i] / n;
      meanB += b[i + lag] / n;
    }
    double product = 0;
    double squareA = 0;
    double squareB = 0;
    for (int i = from; i < to; i++) {
      product += (a[i] - meanA) * (b[i + lag] - meanB);
      squareA += (a[i] - meanA) * (a[i] - meanA);
      squareB += (b[i + lag] - meanB) * (b[i + lag] - meanB);
    }
    boolean moves = Math.sqrt(Math.min(squareA, squareB) / n) > 0.5 * MOVING_RAD_PER_S;
    return moves ? product / Math.sqrt(squareA * squareB) : Double.NaN;
  }
}
