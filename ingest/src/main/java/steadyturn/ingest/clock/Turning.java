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
    return from < 0 || to > unit.size() ? Double.NaN : span(from, to).shared(lag);
  }

  /** A stretch of the unit, to be tried at many lags. */
  Span span(int from, int to) {
    double[][] own = new double[3][3];
    for (int a = 0; a < 3; a++) {
      for (int b = 0; b < 3; b++) {
        double[] first = unit.rates()[a];
        double[] second = unit.rates()[b];
        for (int i = from; i < to; i++) {
          own[a][b] += first[i] * second[i];
        }
      }
    }
    return new Span(from, to, own);
  }

  /** The products of a stretch's own rates, which are the same at every lag. */
  final class Span {
    private final int from;
    private final int to;
    private final double[][] own;

    private Span(int from, int to, double[][] own) {
      this.from = from;
      this.to = to;
      this.own = own;
    }

    /** As {@link Turning#shared}. */
    double shared(int lag) {
      if (from + lag < 0 || to + lag > other.size()) {
        return Double.NaN;
      }
      double[][] cross = new double[3][3];
      double others = 0;
      double[] x = unit.rates()[0];
      double[] y = unit.rates()[1];
      double[] z = unit.rates()[2];
      for (int a = 0; a < 3; a++) {
        double[] theirs = other.rates()[a];
        double withX = 0;
        double withY = 0;
        double withZ = 0;
        for (int i = from; i < to; i++) {
          double rate = theirs[i + lag];
          others += rate * rate;
          withX += rate * x[i];
          withY += rate * y[i];
          withZ += rate * z[i];
        }
        cross[a][0] = withX;
        cross[a][1] = withY;
        cross[a][2] = withZ;
      }
      double trace = own[0][0] + own[1][1] + own[2][2];
      double least = LEAST_RAD_PER_S * LEAST_RAD_PER_S * (to - from);
      return trace > least && others > least ? explained(own, cross, trace) / others : Double.NaN;
    }
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
