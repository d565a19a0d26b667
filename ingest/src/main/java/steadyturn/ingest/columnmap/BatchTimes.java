package steadyturn.ingest.columnmap;

import java.util.Arrays;
import steadyturn.ingest.clock.ArrivalClock;

/**
 * Samples that were sent together and share a time are laid out evenly: their time is taken for
 * that of the batch's arrival, from which {@link ArrivalClock} learns the rate.
 */
final class BatchTimes {

  private BatchTimes() {}

  /** Times of the single samples, s; the last of a batch lies at or before its shared time. */
  static double[] spread(double[] sharedS) {
    double zeroS = sharedS[0];
    ArrivalClock clock = new ArrivalClock();
    double[] timeS = new double[sharedS.length];
    int told = 0;
    for (int from = 0; from < sharedS.length; ) {
      int to = from;
      while (to < sharedS.length && sharedS[to] == sharedS[from]) {
        to++;
      }
      told = put(clock.came(to - from, sharedS[from] - zeroS), timeS, told, zeroS);
      from = to;
    }
    told = put(clock.cut(), timeS, told, zeroS);
    return Arrays.copyOf(timeS, told);
  }

  private static int put(double[] timesS, double[] into, int at, double zeroS) {
    for (int i = 0; i < timesS.length; i++) {
      into[at + i] = timesS[i] + zeroS;
    }
    return at + timesS.length;
  }
}
