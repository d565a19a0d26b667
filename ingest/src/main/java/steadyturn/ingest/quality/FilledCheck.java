package steadyturn.ingest.quality;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.UnitStream;

/**
 * Notices streams that were filled up to their rate from a slower one: in the middle of movements
 * most samples repeat the one before, or lie on a straight line between their neighbours, in all
 * six channels at once. A sensor's own noise and rounding never do that.
 */
final class FilledCheck {

  private static final double WINDOW_S = 0.24;
  private static final int FEWEST_SAMPLES = 12;
  private static final int MOST_WINDOWS = 60;

  /** A window counts when the unit turns at this on average, either way. */
  private static final double MOVING_RAD_PER_S = Math.toRadians(40);

  private static final int FEWEST_WINDOWS = 4;

  /** A step, or a bend, below this part of the window's largest is none. */
  private static final double NONE = 0.01;

  /** Share of made samples from which a stream is filled up: one in two. */
  private static final double FILLED = 0.45;

  private FilledCheck() {}

  static List<Finding> of(UnitStream unit, double rateHz) {
    int length = (int) Math.max(FEWEST_SAMPLES, Math.round(WINDOW_S * rateHz));
    List<Integer> moving = new ArrayList<>();
    for (int from = 1; from + length < unit.size(); from += length) {
      if (moves(unit, from, from + length)) {
        moving.add(from);
      }
    }
    if (moving.size() < FEWEST_WINDOWS) {
      return List.of();
    }
    int every = 1 + (moving.size() - 1) / MOST_WINDOWS;
    double[] repeated = new double[(moving.size() - 1) / every + 1];
    double[] onLine = new double[repeated.length];
    for (int i = 0; i < repeated.length; i++) {
      int from = moving.get(i * every);
      repeated[i] = share(unit, from, from + length, 0);
      onLine[i] = share(unit, from, from + length, 1);
    }
    double share = Math.max(Averages.median(repeated), Averages.median(onLine));
    return share < FILLED
        ? List.of()
        : List.of(
            Finding.of(Verdict.NOT_USABLE, QualityReason.FILLED_UP, rateHz, rateHz * (1 - share)));
  }

  private static boolean moves(UnitStream unit, int from, int to) {
    double squares = 0;
    for (int i = from; i < to; i += 3) {
      double rate = unit.gyroNormRadPerS(i);
      squares += rate * rate;
    }
    int looked = (to - from + 2) / 3;
    return squares / looked > MOVING_RAD_PER_S * MOVING_RAD_PER_S;
  }

  /** Part of the samples that are no news, in all channels: order 0 repeats, order 1 lines. */
  private static double share(UnitStream unit, int from, int to, int order) {
    boolean[] isNews = new boolean[to - from];
    for (int channel = 0; channel < 6; channel++) {
      double[] values = unit.column(channel);
      double[] steps = new double[to - from];
      for (int i = from; i < to; i++) {
        double step = values[i] - values[i - 1];
        steps[i - from] = Math.abs(order == 0 ? step : values[i + 1] - values[i] - step);
      }
      double none = NONE * Arrays.stream(steps).filter(s -> !Double.isNaN(s)).max().orElse(0);
      for (int i = 0; i < steps.length; i++) {
        isNews[i] |= !(steps[i] <= none);
      }
    }
    int made = 0;
    for (boolean news : isNews) {
      made += news ? 0 : 1;
    }
    return (double) made / isNews.length;
  }
}
