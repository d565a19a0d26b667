package steadyturn.ingest.sample;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;

/** Look-ups among instants that grow, by halving. */
public final class TimeAxis {

  private TimeAxis() {}

  /** The first instant at or after this one; their number when there is none. */
  public static int indexAt(double[] timeS, double instantS) {
    return indexAt(timeS, timeS.length, instantS);
  }

  /** The same among the first {@code size} instants of a column that still grows. */
  public static int indexAt(double[] timeS, int size, double instantS) {
    int found = Arrays.binarySearch(timeS, 0, size, instantS);
    return found >= 0 ? found : -found - 1;
  }

  /** The same for instants that are not kept in a column. */
  public static int indexAt(IntToDoubleFunction timeS, int size, double instantS) {
    int low = 0;
    int high = size;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (timeS.applyAsDouble(middle) < instantS) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Of two neighbours, the one before or at the instant; never the last one of all. */
  public static int beforeAt(IntToDoubleFunction timeS, int size, double instantS) {
    int after = indexAt(timeS, size, instantS);
    boolean exact = after < size && timeS.applyAsDouble(after) == instantS;
    return Math.max(0, Math.min(size - 2, exact ? after : after - 1));
  }
}
