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

  /** Sums of the other's squares up to a step, and of its steps that were not seen. */
  private final double[] squares;

  private final int[] unseen;

  Turning(TurnGrid unit, TurnGrid other) {
    this.unit = unit;
    this.other = other;
    int n = other.size();
    squares = new double[n + 1];
    unseen = new int[n + 1];
    for (int i = 0; i < n; i++) {
      double x = other.rates()[0][i];
      double y = other.rates()[1][i];
      double z = other.rates()[2][i];
      double square = x * x + y * y + z * z;
      boolean isSeen = !Double.isNaN(square);
      squares[i + 1] = squares[i] + (isSeen ? square : 0);
      unseen[i + 1] = unseen[i] + (isSeen ? 0 : 1);
    }
  }

  /**
   * The part of the other's turning that the unit's explains when the other comes so many steps
   * later; NaN where one is not seen or hardly turns.
   */
  double shared(int from, int to, int lag) {
    return from < 0 || to > unit.size() ? Double.NaN : span(from, to).shared(lag);
  }

  /** Whether the other measured nothing in a part of the same steps. */
  boolean isUnseen(int from, int to) {
    return unseen[to] > unseen[from];
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
    double trace = own[0][0] + own[1][1] + own[2][2];
    return new Span(from, to, trace, lower(own, RIDGE * trace));
  }

  /** A stretch with the products of its own rates, which are the same at every lag. */
  final class Span {
    private final int from;
    private final int to;
    private final double trace;
    private final double[][] lower;

    private Span(int from, int to, double trace, double[][] lower) {
      this.from = from;
      this.to = to;
      this.trace = trace;
      this.lower = lower;
    }

    /** As {@link Turning#shared}. */
    double shared(int lag) {
      if (from + lag < 0 || to + lag > other.size() || unseen[to + lag] > unseen[from + lag]) {
        return Double.NaN;
      }
      double others = squares[to + lag] - squares[from + lag];
      double least = LEAST_RAD_PER_S * LEAST_RAD_PER_S * (to - from);
      return trace > least && others > least ? explained(lower, cross(lag)) / others : Double.NaN;
    }

    /** Products of the other's rates, row by row, with the unit's; all at once in one way along. */
    private double[][] cross(int lag) {
      double[] x = unit.rates()[0];
      double[] y = unit.rates()[1];
      double[] z = unit.rates()[2];
      double[] theirX = other.rates()[0];
      double[] theirY = other.rates()[1];
      double[] theirZ = other.rates()[2];
      double xx = 0;
      double xy = 0;
      double xz = 0;
      double yx = 0;
      double yy = 0;
      double yz = 0;
      double zx = 0;
      double zy = 0;
      double zz = 0;
      for (int i = from; i < to; i++) {
        double a = theirX[i + lag];
        double b = theirY[i + lag];
        double c = theirZ[i + lag];
        xx += a * x[i];
        xy += a * y[i];
        xz += a * z[i];
        yx += b * x[i];
        yy += b * y[i];
        yz += b * z[i];
        zx += c * x[i];
        zy += c * y[i];
        zz += c * z[i];
      }
      return new double[][] {{xx, xy, xz}, {yx, yy, yz}, {zx, zy, zz}};
    }
  }

  /** Cholesky's factor of the products, with a ridge on their diagonal. */
  private static double[][] lower(double[][] own, double ridge) {
    double[][] l = new double[3][3];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j <= i; j++) {
        double rest = own[i][j] + (i == j ? ridge : 0);
        for (int k = 0; k < j; k++) {
          rest -= l[i][k] * l[j][k];
        }
        l[i][j] = i == j ? Math.sqrt(rest) : rest / l[j][j];
      }
    }
    return l;
  }

  /** Sum of c' (l l')^-1 c over the rows c of the cross products. */
  private static double explained(double[][] l, double[][] cross) {
    double sum = 0;
    for (double[] c : cross) {
      double x = c[0] / l[0][0];
      double y = (c[1] - l[1][0] * x) / l[1][1];
      double z = (c[2] - l[2][0] * x - l[2][1] * y) / l[2][2];
      sum += x * x + y * y + z * z;
    }
    return sum;
  }
}
