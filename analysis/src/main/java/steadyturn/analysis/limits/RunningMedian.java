package steadyturn.analysis.limits;

import java.util.Arrays;

/** The middle of all numbers so far, of an even number the upper of the two. */
final class RunningMedian {

  private double[] sorted = new double[8];
  private int count;

  void add(double value) {
    if (count == sorted.length) {
      sorted = Arrays.copyOf(sorted, 2 * count);
    }
    int found = Arrays.binarySearch(sorted, 0, count, value);
    int at = found < 0 ? -found - 1 : found;
    System.arraycopy(sorted, at, sorted, at + 1, count - at);
    sorted[at] = value;
    count++;
  }

  boolean isEmpty() {
    return count == 0;
  }

  double value() {
    return sorted[count / 2];
  }
}
