package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.List;
import steadyturn.ingest.sample.UnitStream;

/**
 * Pairs without blows: forearm and hand are one chain, so the lag at which they share most of their
 * turning shows the difference of their clocks, once every few seconds of movement. The wrist's own
 * movement makes each single lag uncertain by some milliseconds.
 */
final class TurningMatch {

  private static final double STEP_S = 0.025;
  private static final double WINDOW_S = 4;
  private static final int WINDOW = (int) Math.round(WINDOW_S / STEP_S);

  /** The two clocks lie so near each other before, s. */
  private static final double REACH_S = 0.15;

  private static final int MOST = (int) Math.round(REACH_S / STEP_S);

  /** What one window is worth at best (our choice: the wrist moves too), s. */
  static final double PAIR_SD_S = 0.006;

  /** Below that the movements are not the same. */
  private static final double LEAST_SHARED = 0.6;

  private TurningMatch() {}

  /** One pair for each window in which both move and agree. */
  static List<TimePair> of(UnitStream unit, UnitStream other) {
    List<TimePair> pairs = new ArrayList<>();
    if (unit.size() < 2 || other.size() < 2) {
      return pairs;
    }
    double fromS = Math.max(unit.timeS(0), other.timeS(0));
    double toS = Math.min(unit.timeS(unit.size() - 1), other.timeS(other.size() - 1));
    TurnGrid grid = TurnGrid.of(unit, fromS, toS, STEP_S);
    Turning turning = new Turning(grid, TurnGrid.of(other, fromS, toS, STEP_S));
    for (int from = MOST; from + WINDOW + MOST <= grid.size(); from += WINDOW) {
      Turning.Span span = turning.span(from, from + WINDOW);
      double[] at = new double[2 * MOST + 1];
      int best = 0;
      for (int k = 0; k < at.length; k++) {
        at[k] = span.shared(k - MOST);
        best = at[k] > at[best] ? k : best;
      }
      double curve = best == 0 || best == 2 * MOST ? 0 : at[best - 1] - 2 * at[best] + at[best + 1];
      if (curve < 0 && at[best] > LEAST_SHARED) {
        double lag = best - MOST + 0.5 * (at[best - 1] - at[best + 1]) / curve;
        double middleS = fromS + (from + WINDOW / 2.0) * STEP_S;
        pairs.add(new TimePair(middleS, lag * STEP_S, sdS(1 - at[best], -curve)));
      }
    }
    return pairs;
  }

  /**
   * What the movement of the wrist alone may do to the lag, were it in step with the common one's
   * changes: the root of what is not shared over how sharply the likeness falls, half of it (our
   * choice, from simulated lessons made for tuning).
   */
  private static double sdS(double apart, double curve) {
    return Math.max(PAIR_SD_S, 0.5 * STEP_S * Math.sqrt(2 * apart / curve));
  }
}
