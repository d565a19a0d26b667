package steadyturn.ingest.clock;

import java.util.Arrays;
import steadyturn.ingest.sample.UnitStream;

/**
 * A unit's rates on an even grid, as means over each step of it: what is faster than the grid (the
 * ring of a blow) is averaged out, and a lag is seen whatever the unit's own rate.
 *
 * @param startS begin of the first step, s
 * @param stepS length of a step, s
 * @param rates three columns, rad/s; NaN where the unit did not measure
 */
record TurnGrid(double startS, double stepS, double[][] rates) {

  private static final double LONGEST_GAP_S = 0.05;

  static TurnGrid of(UnitStream unit, double startS, double endS, double stepS) {
    int n = (int) Math.max(0, Math.floor((endS - startS) / stepS));
    double[][] rates = new double[3][];
    for (int axis = 0; axis < 3; axis++) {
      rates[axis] = means(unit, unit.gyroColumnRadPerS(axis), startS, stepS, n);
    }
    return new TurnGrid(startS, stepS, rates);
  }

  int size() {
    return rates[0].length;
  }

  /** The mean of straight lines between the samples, step by step. */
  private static double[] means(
      UnitStream unit, double[] rate, double startS, double stepS, int n) {
    double[] out = new double[n];
    Arrays.fill(out, Double.NaN);
    int last = unit.size() - 1;
    int next = Math.max(1, unit.indexAt(startS));
    for (int k = 0; k < n && next <= last; k++) {
      double atS = startS + k * stepS;
      double endS = atS + stepS;
      double sum = atS < unit.timeS(0) ? Double.NaN : 0;
      while (next <= last && atS < endS) {
        double toS = Math.min(endS, unit.timeS(next));
        double gapS = unit.timeS(next) - unit.timeS(next - 1);
        double slope = (rate[next] - rate[next - 1]) / gapS;
        double middle = rate[next - 1] + slope * ((atS + toS) / 2 - unit.timeS(next - 1));
        sum += gapS > LONGEST_GAP_S ? Double.NaN : middle * (toS - atS);
        atS = toS;
        next += toS < endS || toS == unit.timeS(next) ? 1 : 0;
      }
      out[k] = atS < endS ? Double.NaN : sum / stepS;
    }
    return out;
  }
}
