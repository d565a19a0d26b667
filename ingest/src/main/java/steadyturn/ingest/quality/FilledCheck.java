package steadyturn.ingest.quality;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.UnitStream;

/**
 * Notices streams that were filled up to their rate from a slower one: in the middle of movements
 * most samples repeat the one before, or lie on a straight line between their neighbours, in all
 * six channels at once, or nothing anywhere changes faster than the slower rate could show. A
 * sensor's own noise and rounding never do that.
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

  /** Step of the differences that only fast changes pass, s. */
  private static final double FAST_STEP_S = 0.01;

  private static final int MOST_WINDOWS_OF_NOISE = 120;
  private static final int FEWEST_WINDOWS_OF_NOISE = 20;

  /**
   * The fast part of the liveliest windows (all but 3 in 100 have less). Sound simulated units:
   * 0.23 and more; real ones 0.03 (trunk, walking, 12 s) to 0.43; drawn smoothly from 25 Hz:
   * 0.0001.
   */
  private static final double LIVELIEST = 0.97;

  private static final double LEAST_FAST = 0.004;

  /** No sensor is as quiet as this, filled up or not: such forces were computed. */
  private static final double NO_SENSOR_MPS2 = 1e-5;

  private FilledCheck() {}

  static List<Finding> of(UnitStream unit, double rateHz) {
    int length = (int) Math.max(FEWEST_SAMPLES, Math.round(WINDOW_S * rateHz));
    List<Integer> moving = new ArrayList<>();
    for (int from = 1; from + length < unit.size(); from += length) {
      if (moves(unit, from, from + length)) {
        moving.add(from);
      }
    }
    List<Finding> smoothed = ofSmoothing(unit, rateHz, length);
    if (moving.size() < FEWEST_WINDOWS) {
      return smoothed;
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
        ? smoothed
        : List.of(
            Finding.of(Verdict.NOT_USABLE, QualityReason.FILLED_UP, rateHz, rateHz * (1 - share)));
  }

  /**
   * Whether the accelerometer has next to nothing quicker than some 20 Hz, in the noise of no rest
   * and in no blow. A fourth difference over a hundredth of a second lets 50 Hz pass whole, 12 Hz
   * to a fiftieth.
   */
  private static List<Finding> ofSmoothing(UnitStream unit, double rateHz, int length) {
    int apart = (int) Math.round(FAST_STEP_S * rateHz);
    int windows = apart < 1 ? 0 : (unit.size() - 4 * apart) / length;
    int every = 1 + (windows - 1) / MOST_WINDOWS_OF_NOISE;
    double[][] looked =
        IntStream.range(0, Math.max(0, windows))
            .filter(k -> k % every == 0)
            .mapToObj(k -> fastAndAll(unit, 2 * apart + k * length, length, apart))
            .filter(sums -> sums[1] > 0)
            .toArray(double[][]::new);
    double[] shares = Arrays.stream(looked).mapToDouble(s -> s[0] / s[1]).sorted().toArray();
    double quietest =
        Arrays.stream(looked).mapToDouble(s -> Math.sqrt(s[0] / (3 * length))).min().orElse(0);
    return shares.length < FEWEST_WINDOWS_OF_NOISE
            || quietest < NO_SENSOR_MPS2
            || shares[(int) (LIVELIEST * shares.length)] > LEAST_FAST
        ? List.of()
        : List.of(Finding.of(Verdict.NOT_USABLE, QualityReason.SMOOTHED, rateHz));
  }

  /** Squares of the forces of a window about their means: of what is fast in them, and of all. */
  private static double[] fastAndAll(UnitStream unit, int from, int length, int apart) {
    double fast = 0;
    double all = 0;
    for (int axis = 0; axis < 3; axis++) {
      double[] x = unit.accelColumnMps2(axis);
      double mean = Arrays.stream(x, from, from + length).average().orElse(0);
      for (int i = from; i < from + length; i++) {
        double difference =
            x[i - 2 * apart] + x[i + 2 * apart] - 4 * (x[i - apart] + x[i + apart]) + 6 * x[i];
        fast += difference * difference / 256;
        all += (x[i] - mean) * (x[i] - mean);
      }
    }
    return new double[] {fast, all};
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
