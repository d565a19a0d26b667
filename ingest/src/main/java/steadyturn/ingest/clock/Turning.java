package steadyturn.ingest.clock;

/**
 * How well two units turn together at a lag. What one turns is expressed by a fixed 3 x 3 map of
 * what the other turns: two units on one chain (forearm and hand) share most of their turning
 * whatever way they are mounted, and only at the right lag.
 */
final class Turning {

  /** Who turns less than this (RMS) says nothing, rad/s. */
  private static final double LEAST_RAD_PER_S = 0.2;

  /** Keeps the map finite where one axis does not turn. */
  private static final double RIDGE = 1e-3;

  private final TurnGrid unit;
  private final TurnGrid other;

  Turning(TurnGrid unit, TurnGrid other) {
    this.unit = unit;
    this.other = other;
  }

  /**
   * The part of the other's turning that the unit's explains when the other comes so many steps
   * later; NaN where one is not seen or hardly turns.
   */
  double shared(int from, int to, int lag) {
    if (from < 0 || to > unit.size() || from + lag < 0 || to + lag > other.size()) {
      return Double.NaN;
    }
    double[][] own = new double[3][3];
    double[][] cross = new double[3][3];
    double others = 0;
    for (int a = 0; a < 3; a++) {
      double[] theirs = other.rates()[a];
      for (int i = from; i < to; i++) {
        others += theirs[i + lag] * theirs[i + lag];
      }
      for (int b = 0; b < 3; b++) {
        double[] ours = unit.rates()[b];
        double[] second = unit.rates()[a];
        double sum = 0;
        double square = 0;
        for (int i = from; i < to; i++) {
          sum += theirs[i + lag] * ours[i];
          square += second[i] * ours[i];
        }
        cross[a][b] = sum;
        own[a][b] = square;
      }
    }
    double trace = own[0][0] + own[1][1] + own[2][2];
    double least = LEAST_RAD_PER_S * LEAST_RAD_PER_S * (to - from);
    return trace > least && others > least ? explained(own, cross, trace) / others : Double.NaN;
  }

  /** Sum of c' own^-1 c over the rows c of the cross products, by Cholesky's factor. */
  private static double explained(double[][] own, double[][] cross, double trace) {
    double[][] l = new double[3][3];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j <= i; j++) {
        double rest = own[i][j] + (i == j ? RIDGE * trace : 0);
        for (int k = 0; k < j; k++) {
          rest -= l[i][k] * l[j][k];
        }
        l[i][j] = i == j ? Math.sqrt(rest) : rest / l[j][j];
      }
    }
    double sum = 0;
    for (double[] row : cross) {
      double[] y = new double[3];
      for (int i = 0; i < 3; i++) {
        double rest = row[i];
        for (int k = 0; k < i; k++) {
          rest -= l[i][k] * y[k];
        }
        y[i] = rest / l[i][i];
        sum += y[i] * y[i];
      }
    }
    return sum;
  }
}
