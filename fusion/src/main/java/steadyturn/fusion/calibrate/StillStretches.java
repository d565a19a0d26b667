package steadyturn.fusion.calibrate;

import java.util.ArrayList;
import java.util.List;
import steadyturn.ingest.sample.UnitStream;

/** Finds the stretches during which a unit lay still, between being turned over or on. */
final class StillStretches {

  static final double WINDOW_S = 0.2;
  private static final double LARGEST_RATE_SPREAD_RAD_PER_S = Math.toRadians(1.5);
  private static final double LARGEST_ACCEL_SPREAD_MPS2 = 0.35;

  /** Largest mean rate of a unit at rest, rad/s: 5 deg/s, the bias of a poor unit. */
  private static final double LARGEST_MEAN_RAD_PER_S = Math.toRadians(5);

  private StillStretches() {}

  /**
   * A run of still windows.
   *
   * @param startS start, s
   * @param endS end, s; where it is not over, the end of the samples and one window
   * @param isOver whether movement followed
   */
  record Run(double startS, double endS, boolean isOver) {

    double lengthS() {
      return endS - startS;
    }

    /** The samples without one window at both ends, where hands come and go. */
    UnitStream insideOf(UnitStream stream) {
      return stream.between(startS + WINDOW_S, endS - WINDOW_S);
    }
  }

  /** The still stretches of at least shortestS, each cut by one window at both ends. */
  static List<UnitStream> of(UnitStream stream, double shortestS) {
    return runs(stream).stream()
        .filter(run -> run.lengthS() >= shortestS + 2 * WINDOW_S)
        .map(run -> run.insideOf(stream))
        .toList();
  }

  /** All runs of still windows, however short; the first window begins at the first sample. */
  static List<Run> runs(UnitStream stream) {
    List<Run> found = new ArrayList<>();
    double startS = Double.NaN;
    int from = 0;
    while (from < stream.size()) {
      double windowStartS = stream.timeS(from);
      int to = Math.max(from + 1, stream.indexAt(windowStartS + WINDOW_S));
      boolean still = still(stream, from, to);
      if (still && Double.isNaN(startS)) {
        startS = windowStartS;
      }
      if (!still && !Double.isNaN(startS)) {
        found.add(new Run(startS, windowStartS, true));
        startS = Double.NaN;
      }
      from = to;
    }
    if (!Double.isNaN(startS)) {
      found.add(new Run(startS, stream.timeS(stream.size() - 1) + WINDOW_S, false));
    }
    return found;
  }

  private static boolean still(UnitStream s, int from, int to) {
    double rateSquares = 0;
    double accelSquares = 0;
    for (int axis = 0; axis < 3; axis++) {
      rateSquares += spread(s.gyroColumnRadPerS(axis), from, to, LARGEST_MEAN_RAD_PER_S);
      accelSquares += spread(s.accelColumnMps2(axis), from, to, Double.POSITIVE_INFINITY);
    }
    double rate = LARGEST_RATE_SPREAD_RAD_PER_S;
    double accel = LARGEST_ACCEL_SPREAD_MPS2;
    return rateSquares <= rate * rate && accelSquares <= accel * accel;
  }

  /** Variance about the mean; infinite where the mean is too large. */
  private static double spread(double[] column, int from, int to, double largestMean) {
    double sum = 0;
    double squares = 0;
    int count = 0;
    for (int i = from; i < to; i++) {
      if (!Double.isNaN(column[i])) {
        sum += column[i];
        squares += column[i] * column[i];
        count++;
      }
    }
    double mean = sum / Math.max(1, count);
    if (!(Math.abs(mean) <= largestMean)) {
      return Double.POSITIVE_INFINITY;
    }
    return Math.max(0, squares / Math.max(1, count) - mean * mean);
  }
}
