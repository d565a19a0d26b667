package steadyturn.ingest.clock;

import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Puts a stream on an even grid of times. */
public final class CommonGrid {

  private CommonGrid() {}

  /**
   * Straight lines between the samples. A grid time that lies in a gap longer than longestGapS, or
   * outside the stream, gets NaN: what was not measured stays marked.
   *
   * @param startS first time of the grid, s
   * @param rateHz its rate
   * @param samples its length
   */
  public static UnitStream resample(
      UnitStream unit, double startS, double rateHz, int samples, double longestGapS) {
    double[] timeS = new double[samples];
    double[][] accel = new double[3][samples];
    double[][] gyro = new double[3][samples];
    int next = 0;
    for (int k = 0; k < samples; k++) {
      timeS[k] = startS + k / rateHz;
      while (next < unit.size() && unit.timeS(next) < timeS[k]) {
        next++;
      }
      double part = part(unit, next, timeS[k], longestGapS);
      for (int axis = 0; axis < 3; axis++) {
        accel[axis][k] = between(unit.accelColumnMps2(axis), next, part);
        gyro[axis][k] = between(unit.gyroColumnRadPerS(axis), next, part);
      }
    }
    UnitFacts facts = unit.facts();
    return new UnitStream(facts, timeS, accel, gyro);
  }

  /** Share of the way from sample next-1 to next; NaN in a gap or outside. */
  private static double part(UnitStream unit, int next, double instantS, double longestGapS) {
    if (next < unit.size() && unit.timeS(next) == instantS) {
      return 1;
    }
    if (next == 0 || next >= unit.size()) {
      return Double.NaN;
    }
    double stepS = unit.timeS(next) - unit.timeS(next - 1);
    return stepS > longestGapS ? Double.NaN : (instantS - unit.timeS(next - 1)) / stepS;
  }

  private static double between(double[] values, int next, double part) {
    if (part == 1) {
      return values[next];
    }
    return Double.isNaN(part)
        ? Double.NaN
        : values[next - 1] + part * (values[next] - values[next - 1]);
  }
}
