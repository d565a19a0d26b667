package steadyturn.analysis.swing.find;

import java.util.Arrays;
import steadyturn.ingest.sample.UnitStream;

/** The moments at which a unit turns fast: candidates for swings, in one pass over the columns. */
final class FastBursts {

  // our choice: a burst that pauses this long has ended; two downswings are further apart
  private static final double JOIN_S = 0.25;
  // our choice: longer bursts are cut, so that restless movement gives several candidates
  private static final double LONGEST_S = 0.8;

  private FastBursts() {}

  /** Index of the fastest sample of each burst above the rate, in order of time. */
  static int[] peaks(UnitStream stream, double aboveRadPerS) {
    double[] x = stream.gyroColumnRadPerS(0);
    double[] y = stream.gyroColumnRadPerS(1);
    double[] z = stream.gyroColumnRadPerS(2);
    double[] time = stream.timeColumnS();
    double above = aboveRadPerS * aboveRadPerS;
    int[] peaks = new int[16];
    int count = 0;
    double startS = Double.NEGATIVE_INFINITY;
    double lastS = Double.NEGATIVE_INFINITY;
    double highest = 0;
    for (int i = 0; i < x.length; i++) {
      double square = x[i] * x[i] + y[i] * y[i] + z[i] * z[i];
      if (!(square > above)) {
        continue;
      }
      if (time[i] - lastS > JOIN_S || time[i] - startS > LONGEST_S) {
        startS = time[i];
        highest = 0;
        peaks = count == peaks.length ? Arrays.copyOf(peaks, 2 * count) : peaks;
        count++;
      }
      lastS = time[i];
      if (square > highest) {
        highest = square;
        peaks[count - 1] = i;
      }
    }
    return Arrays.copyOf(peaks, count);
  }
}
