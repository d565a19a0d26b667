package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import steadyturn.ingest.sample.Averages;

/**
 * The straight line under a cloud of (time, delay) points from which every point lies above by its
 * own latency: latencies vary and grow, but never fall below the way itself. Kept as the least
 * delay of each stretch of time; the line is that edge of the points' lower hull which spans their
 * mean time, the least sum of latencies (Moon, Skelly, Towsley 1999, IEEE Infocom; from memory).
 * Memory is bounded: when all stretches are used, neighbours are joined.
 */
final class LowerEnvelope {

  private static final int MOST_STRETCHES = 512;

  private double stretchS;
  private double[] timeS = new double[MOST_STRETCHES];
  private double[] delayS = new double[MOST_STRETCHES];
  private int size;

  /** Empty, with stretches of this length to begin with, s. */
  LowerEnvelope(double stretchS) {
    this.stretchS = stretchS;
  }

  /** Adds a point; times come in order. */
  void add(double atS, double delay) {
    boolean isNew = size == 0 || stretch(atS) != stretch(timeS[size - 1]);
    if (isNew && size == MOST_STRETCHES) {
      joinNeighbours();
    }
    if (isNew) {
      timeS[size] = atS;
      delayS[size] = delay;
      size++;
    } else if (delay < delayS[size - 1]) {
      timeS[size - 1] = atS;
      delayS[size - 1] = delay;
    }
  }

  private long stretch(double atS) {
    return (long) Math.floor(atS / stretchS);
  }

  private void joinNeighbours() {
    stretchS *= 2;
    int kept = 0;
    for (int i = 0; i < size; i++) {
      boolean joins = kept > 0 && stretch(timeS[i]) == stretch(timeS[kept - 1]);
      if (!joins) {
        timeS[kept] = timeS[i];
        delayS[kept] = delayS[i];
        kept++;
      } else if (delayS[i] < delayS[kept - 1]) {
        timeS[kept - 1] = timeS[i];
        delayS[kept - 1] = delayS[i];
      }
    }
    size = kept;
  }

  /** Forgets the stretches before a time. */
  void forgetBefore(double fromS) {
    int first = 0;
    while (first < size && timeS[first] < fromS) {
      first++;
    }
    System.arraycopy(timeS, first, timeS, 0, size - first);
    System.arraycopy(delayS, first, delayS, 0, size - first);
    size -= first;
  }

  /** How many stretches are kept. */
  int size() {
    return size;
  }

  /** Time between the first and the last stretch, s. */
  double spanS() {
    return size == 0 ? 0 : timeS[size - 1] - timeS[0];
  }

  /** Line under the points: delay at time 0 (s) and slope. */
  double[] line() {
    if (size < 2) {
      return new double[] {size == 0 ? 0 : delayS[0], 0};
    }
    List<Integer> hull = hull();
    double meanS = Arrays.stream(timeS, 0, size).average().orElse(0);
    for (int k = 1; k < hull.size(); k++) {
      int a = hull.get(k - 1);
      int b = hull.get(k);
      if (timeS[b] >= meanS || k == hull.size() - 1) {
        double slope = (delayS[b] - delayS[a]) / (timeS[b] - timeS[a]);
        return new double[] {delayS[a] - slope * timeS[a], slope};
      }
    }
    throw new IllegalStateException("a hull of " + size + " points has no edge");
  }

  /** Delay at time 0 of the line of a known slope under the points, s. */
  double least(double slope) {
    return least(slope, Double.NEGATIVE_INFINITY);
  }

  /** The same under the points from a time on. */
  double least(double slope, double fromS) {
    return IntStream.range(0, size)
        .filter(i -> timeS[i] >= fromS)
        .mapToDouble(i -> delayS[i] - slope * timeS[i])
        .min()
        .orElse(0);
  }

  private List<Integer> hull() {
    List<Integer> hull = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      while (hull.size() >= 2 && !isBelow(hull, i)) {
        hull.remove(hull.size() - 1);
      }
      hull.add(i);
    }
    return hull;
  }

  /** Whether the hull's last point lies below the line from the one before it to point i. */
  private boolean isBelow(List<Integer> hull, int i) {
    int a = hull.get(hull.size() - 2);
    int b = hull.get(hull.size() - 1);
    double viaLine =
        delayS[a] + (delayS[i] - delayS[a]) * (timeS[b] - timeS[a]) / (timeS[i] - timeS[a]);
    return delayS[b] < viaLine;
  }

  /** Median height of the stretches' least points above a line, s. */
  double medianAboveS(double[] line) {
    return Averages.median(above(line).toArray());
  }

  /** The largest, s. */
  double mostAboveS(double[] line) {
    return above(line).max().orElse(0);
  }

  /** Part of them that lies higher, taken a little too large as they are no more than so many. */
  double shareAbove(double[] line, double heightS) {
    return (above(line).filter(h -> h > heightS).count() + 1) / (size + 1.0);
  }

  private DoubleStream above(double[] line) {
    return IntStream.range(0, size).mapToDouble(i -> delayS[i] - line[0] - line[1] * timeS[i]);
  }
}
