package steadyturn.ingest.sample;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/** Means and medians of columns that may have holes. */
public final class Averages {

  private Averages() {}

  /** Mean of the values from..to-1 that are there; 0 when none is. */
  public static double mean(double[] column, int from, int to) {
    double sum = 0;
    int count = 0;
    for (int i = from; i < to; i++) {
      if (!Double.isNaN(column[i])) {
        sum += column[i];
        count++;
      }
    }
    return sum / Math.max(1, count);
  }

  /** The middle of the steps between so many instants; NaN of fewer than two. */
  public static double medianStep(IntToDoubleFunction timeS, int size) {
    return median(
        IntStream.range(1, size)
            .mapToDouble(i -> timeS.applyAsDouble(i) - timeS.applyAsDouble(i - 1))
            .toArray());
  }

  /** The middle value, of an even number the upper of the two; NaN of none. Values stay put. */
  public static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted.length == 0 ? Double.NaN : sorted[sorted.length / 2];
  }
}
