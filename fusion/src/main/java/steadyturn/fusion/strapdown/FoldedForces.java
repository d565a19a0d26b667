package steadyturn.fusion.strapdown;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import steadyturn.ingest.sample.Averages;

/**
 * Forces that a slow unit cannot follow: a blow rings at a hundred hertz and more, and where no
 * filter in the chip holds that back, samples every ten milliseconds show it folded down, as a push
 * that never was. Each sample that stands out from the line between its neighbours may be wrong by
 * as much as it stands out, for as long as it stands for.
 */
final class FoldedForces {

  /** Slower than this, s: faster units take several samples of a ring (our choice). */
  private static final double SLOW_S = 0.007;

  /** A body's own force bends by less in a step of 10 ms, m/s^2 (our assumption). */
  private static final double BODY_MPS2 = 1.5;

  private static final double TIMES_MEDIAN = 6;

  private FoldedForces() {}

  /** Jumps of the velocity by time, one a sample that stands out; none in a quick unit. */
  static List<Bridge> of(StrapdownSamples samples) {
    int n = samples.size();
    double[] time = samples.timeS;
    if (n < 3 || (time[n - 1] - time[0]) / (n - 1) < SLOW_S) {
      return List.of();
    }
    double[] bends = IntStream.range(0, n).mapToDouble(k -> bend(samples, k)).toArray();
    double least = Math.max(BODY_MPS2, TIMES_MEDIAN * Averages.median(bends));
    List<Bridge> out = new ArrayList<>();
    for (int k = 1; k < n - 1; k++) {
      if (bends[k] > least) {
        double velocitySd = bends[k] * (time[k + 1] - time[k - 1]) / 2;
        out.add(new Bridge(k, time[k - 1], time[k], 0, velocitySd, 0));
      }
    }
    return out;
  }

  /** How far a sample lies off the line between its neighbours, m/s^2. */
  private static double bend(StrapdownSamples samples, int k) {
    if (k == 0 || k == samples.size() - 1) {
      return 0;
    }
    double[] t = samples.timeS;
    double part = (t[k] - t[k - 1]) / (t[k + 1] - t[k - 1]);
    double squares = 0;
    for (double[] force : samples.accelMps2) {
      double off = force[k] - force[k - 1] - part * (force[k + 1] - force[k - 1]);
      squares += off * off;
    }
    return Math.sqrt(squares);
  }
}
