package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.List;
import steadyturn.ingest.sample.UnitStream;

/**
 * What each lag between two units has for it, window by window, from the turning that both share.
 *
 * @param gains one a window, of all lags from -{@link LagPath#MOST} steps on
 * @param timesS the windows' middles on the unit's clock, s
 * @param isLost whether the other measured nothing where it ought to show the window
 */
record LagGains(List<double[]> gains, List<Double> timesS, List<Boolean> isLost) {

  static final double WINDOW_S = 4;
  private static final int WINDOW = (int) Math.round(WINDOW_S / LagPath.STEP_S);

  /** What a window's likeness is worth: its steps are not independent (our choice). */
  private static final double WORTH = 10;

  /** In a long recording not every moment is looked at. */
  private static final int MOST_WINDOWS = 150;

  private static final double MOST_SHARED = 0.98;

  static LagGains of(UnitStream unit, UnitStream other) {
    List<double[]> gains = new ArrayList<>();
    List<Double> timesS = new ArrayList<>();
    List<Boolean> isLost = new ArrayList<>();
    if (unit.size() < 2 || other.size() < 2) {
      return new LagGains(gains, timesS, isLost);
    }
    double fromS = Math.min(unit.timeS(0), other.timeS(0));
    double toS = Math.max(unit.timeS(unit.size() - 1), other.timeS(other.size() - 1));
    TurnGrid grid = TurnGrid.of(unit, fromS, toS, LagPath.STEP_S);
    Turning turning = new Turning(grid, TurnGrid.of(other, fromS, toS, LagPath.STEP_S));
    int stride = Math.max(WINDOW, grid.size() / MOST_WINDOWS);
    for (int from = 0; from + WINDOW <= grid.size(); from += stride) {
      double[] gain = gain(turning, from);
      if (gain.length > 0) {
        gains.add(gain);
        timesS.add(fromS + (from + WINDOW / 2.0) * LagPath.STEP_S);
        isLost.add(turning.isUnseen(from, from + WINDOW));
      }
    }
    return new LagGains(gains, timesS, isLost);
  }

  /** What each lag has for it in a window; empty where nothing is to be seen. */
  private static double[] gain(Turning turning, int from) {
    double[] gain = new double[LagPath.STATES];
    double sum = 0;
    int seen = 0;
    Turning.Span span = turning.span(from, from + WINDOW);
    for (int s = 0; s < LagPath.STATES; s++) {
      double shared = span.shared(s - LagPath.MOST);
      gain[s] = -WORTH * Math.log(1 - Math.min(MOST_SHARED, shared));
      sum += Double.isNaN(shared) ? 0 : gain[s];
      seen += Double.isNaN(shared) ? 0 : 1;
    }
    for (int s = 0; s < LagPath.STATES; s++) {
      gain[s] = Double.isNaN(gain[s]) ? sum / seen : gain[s];
    }
    return seen < LagPath.STATES / 4 ? new double[0] : gain;
  }
}
