package steadyturn.ingest.clock;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import steadyturn.ingest.sample.UnitStream;

/**
 * A unit whose samples end before another's lost time somewhere: at its end, or in the middle where
 * its clock did not count on. Near the end too little follows to lay it anew; where what follows
 * lies rather so much later than as stated, nothing is known of the clocks from there on.
 *
 * @param sinceS after that, on the first unit's clock, s
 * @param lagS how much later the other's clock may show the same from then on, s
 */
record StoppedClock(double sinceS, double lagS) {

  /** Units that are stopped together end within this, s. */
  private static final double TOGETHER_S = 0.5;

  /** Hips and arms do not turn at once, and are not stopped at once, steps. */
  private static final int BESIDE = 6;

  private static final int ABOUT = 10;

  /** What follows must be likelier by so much, and what was before, elsewhere (our choice). */
  private static final double RATHER = 5;

  private static final double SURELY = 12;

  /**
   * Looks for it.
   *
   * @param lagS how much later the other's clock shows the same towards the end, as believed
   */
  static Optional<StoppedClock> of(UnitStream unit, UnitStream other, double lagS) {
    if (unit.size() < 2 || other.size() < 2) {
      return Optional.empty();
    }
    double apartS = endS(other) - endS(unit);
    int elsewhere = (int) Math.round(Math.abs(apartS) / LagPath.STEP_S) + LagPath.MOST;
    boolean isReached = elsewhere < 2 * LagPath.MOST - ABOUT;
    if (Math.abs(apartS - lagS) < TOGETHER_S || !isReached) {
      return Optional.empty();
    }
    // by what the one that ends early shows, wherever the longer one shows the same: a unit that
    // was only unplugged shows nothing that lies elsewhere
    boolean isOther = apartS < 0;
    LagGains seen = isOther ? LagGains.of(other, unit) : LagGains.of(unit, other);
    int believed = (int) Math.round((isOther ? -lagS : lagS) / LagPath.STEP_S) + LagPath.MOST;
    List<Double> likelier =
        seen.gains().stream()
            .map(g -> best(g, elsewhere, ABOUT) - best(g, believed, BESIDE))
            .toList();
    double sum = 0;
    double most = RATHER;
    int from = -1;
    for (int k = likelier.size() - 1; k >= 0; k--) {
      sum += likelier.get(k);
      if (sum > most) {
        most = sum;
        from = k;
      }
    }
    if (from < 0) {
      return Optional.empty();
    }
    double against = 0;
    int last = from;
    while (last > 0 && against < SURELY) {
      against -= likelier.get(--last);
    }
    double sinceS =
        against < SURELY
            ? Double.NEGATIVE_INFINITY
            : seen.timesS().get(last) - LagGains.WINDOW_S / 2 - (isOther ? lagS : 0);
    return Optional.of(new StoppedClock(sinceS, apartS));
  }

  private static double endS(UnitStream unit) {
    return unit.timeS(unit.size() - 1);
  }

  private static double best(double[] gain, int state, int beside) {
    return IntStream.rangeClosed(
            Math.max(0, state - beside), Math.min(gain.length - 1, state + beside))
        .mapToDouble(s -> gain[s])
        .max()
        .orElse(0);
  }
}
