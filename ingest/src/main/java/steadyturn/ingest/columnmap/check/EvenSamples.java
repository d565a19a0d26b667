package steadyturn.ingest.columnmap.check;

import java.util.Arrays;
import java.util.stream.IntStream;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.UnitStream;

/**
 * A unit's samples averaged down to about 100 Hz, one column an axis: enough to follow how gravity
 * turns, few enough to try many guesses.
 *
 * @param stepS time between two of them, s
 * @param values accelerometer x y z, gyroscope x y z; NaN where any value is lost or time jumps
 */
record EvenSamples(double stepS, double[][] values) {

  private static final double WANTED_STEP_S = 0.01;
  private static final double LONGEST_GAP_STEPS = 3;

  static EvenSamples of(UnitStream unit) {
    int n = unit.size();
    double stepS = n < 2 ? WANTED_STEP_S : Averages.medianStep(unit::timeS, n);
    int each = Math.max(1, (int) Math.round(WANTED_STEP_S / stepS));
    double[][] values = new double[6][n / each];
    for (int i = 0; i < n / each; i++) {
      boolean gap = hasGap(unit, i * each, each, LONGEST_GAP_STEPS * stepS);
      for (int c = 0; c < 6; c++) {
        values[c][i] = gap ? Double.NaN : mean(unit.column(c), i * each, each);
      }
    }
    return new EvenSamples(each * stepS, values);
  }

  private static boolean hasGap(UnitStream unit, int from, int count, double longestS) {
    return IntStream.range(Math.max(1, from), from + count)
        .anyMatch(i -> unit.timeS(i) - unit.timeS(i - 1) > longestS);
  }

  private static double mean(double[] column, int from, int count) {
    double sum = 0;
    for (int i = from; i < from + count; i++) {
      sum += column[i];
    }
    return sum / count;
  }

  /** Median size of the accelerations, as mapped. */
  double medianSize() {
    return Averages.median(
        IntStream.range(0, size())
            .mapToDouble(i -> Math.hypot(Math.hypot(values[0][i], values[1][i]), values[2][i]))
            .filter(x -> !Double.isNaN(x))
            .toArray());
  }

  int size() {
    return values[0].length;
  }

  /** Whether all values from..from+count-1 are there. */
  boolean isWhole(int from, int count) {
    return Arrays.stream(values)
        .allMatch(column -> Arrays.stream(column, from, from + count).noneMatch(Double::isNaN));
  }

  double mean(int column, int from, int count) {
    return mean(values[column], from, count);
  }

  /** Root of the summed variances of three columns. */
  double spread(int firstColumn, int from, int count) {
    double sum = 0;
    for (int c = firstColumn; c < firstColumn + 3; c++) {
      double mean = mean(c, from, count);
      for (int i = from; i < from + count; i++) {
        sum += (values[c][i] - mean) * (values[c][i] - mean);
      }
    }
    return Math.sqrt(sum / count);
  }
}
