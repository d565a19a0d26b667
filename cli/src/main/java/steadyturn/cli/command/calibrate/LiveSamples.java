package steadyturn.cli.command.calibrate;

import java.util.Arrays;
import steadyturn.ingest.sample.TimeAxis;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** The newest samples of one live unit, filled by the thread of its port, read by another. */
final class LiveSamples {

  private double[][] columns = new double[7][1 << 12];
  private int size;

  /** One sample, s since the unit's first, m/s^2 and rad/s. */
  synchronized void add(double timeS, double[] accelMps2, double[] gyroRadPerS) {
    if (size == columns[0].length) {
      for (int c = 0; c < columns.length; c++) {
        columns[c] = Arrays.copyOf(columns[c], 2 * size);
      }
    }
    columns[0][size] = timeS;
    for (int axis = 0; axis < 3; axis++) {
      columns[1 + axis][size] = accelMps2[axis];
      columns[4 + axis][size] = gyroRadPerS[axis];
    }
    size++;
  }

  /** The samples from an instant on; those before it are forgotten. */
  synchronized UnitStream since(double fromS, UnitFacts facts) {
    int from = TimeAxis.indexAt(columns[0], size, fromS);
    for (double[] column : columns) {
      System.arraycopy(column, from, column, 0, size - from);
    }
    size -= from;
    double[][] kept = new double[columns.length][];
    for (int c = 0; c < columns.length; c++) {
      kept[c] = Arrays.copyOf(columns[c], size);
    }
    return new UnitStream(
        facts, kept[0], Arrays.copyOfRange(kept, 1, 4), Arrays.copyOfRange(kept, 4, 7));
  }
}
