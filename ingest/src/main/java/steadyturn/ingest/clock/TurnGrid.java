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
    double[][] rates = new double[3][n];
    means(unit, startS, stepS, rates);
    return new TurnGrid(startS, stepS, rates);
  }

  int size() {
    return rates[0].length;
  }

  /** The means of straight lines between the samples, step by step, of all axes at once. */
  private static void means(UnitStream unit, double startS, double stepS, double[][] rates) {
    double[] time = unit.timeColumnS();
    double[] x = unit.gyroColumnRadPerS(0);
    double[] y = unit.gyroColumnRadPerS(1);
    double[] z = unit.gyroColumnRadPerS(2);
    Arrays.stream(rates).forEach(axis -> Arrays.fill(axis, Double.NaN));
    int last = time.length - 1;
    int next = Math.max(1, unit.indexAt(startS));
    for (int k = 0; k < rates[0].length && next <= last; k++) {
      double atS = startS + k * stepS;
      double endS = atS + stepS;
      double sumX = atS < time[0] ? Double.NaN : 0;
      double sumY = sumX;
      double sumZ = sumX;
      while (next <= last && atS < endS) {
        double toS = Math.min(endS, time[next]);
        double fromS = time[next - 1];
        double gapS = time[next] - fromS;
        double lengthS = gapS > LONGEST_GAP_S ? Double.NaN : toS - atS;
        double part = ((atS + toS) / 2 - fromS) / gapS;
        sumX += (x[next - 1] + part * (x[next] - x[next - 1])) * lengthS;
        sumY += (y[next - 1] + part * (y[next] - y[next - 1])) * lengthS;
        sumZ += (z[next - 1] + part * (z[next] - z[next - 1])) * lengthS;
        atS = toS;
        next += toS < endS || toS == time[next] ? 1 : 0;
      }
      boolean isShort = atS < endS;
      rates[0][k] = isShort ? Double.NaN : sumX / stepS;
      rates[1][k] = isShort ? Double.NaN : sumY / stepS;
      rates[2][k] = isShort ? Double.NaN : sumZ / stepS;
    }
  }
}
