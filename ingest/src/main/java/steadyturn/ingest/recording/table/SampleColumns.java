package steadyturn.ingest.recording.table;

import java.util.Arrays;
import steadyturn.ingest.sample.TimeAxis;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Growing columns of time and of six values a body point, in the slots of a layout. */
public final class SampleColumns {

  private final double[][] columns;
  private int size;

  public SampleColumns(int slots, int capacity) {
    columns = new double[slots][Math.max(16, capacity)];
  }

  public int size() {
    return size;
  }

  public double lastTimeS() {
    return columns[0][size - 1];
  }

  public double timeS(int i) {
    return columns[0][i];
  }

  public void append(double[] row) {
    if (size == columns[0].length) {
      grow();
    }
    for (int slot = 0; slot < columns.length; slot++) {
      columns[slot][size] = row[slot];
    }
    size++;
  }

  private void grow() {
    for (int slot = 0; slot < columns.length; slot++) {
      columns[slot] = Arrays.copyOf(columns[slot], size + size / 2);
    }
  }

  /** First sample at or after the instant. */
  public int indexAt(double instantS) {
    return TimeAxis.indexAt(columns[0], size, instantS);
  }

  /** Forgets the samples before the instant. */
  public void dropBefore(double instantS) {
    int from = indexAt(instantS);
    for (double[] column : columns) {
      System.arraycopy(column, from, column, 0, size - from);
    }
    size -= from;
  }

  /** All columns, cut to the samples there are. */
  public double[][] trimmed() {
    return Arrays.stream(columns).map(c -> Arrays.copyOf(c, size)).toArray(double[][]::new);
  }

  /** A copy of the samples from..to-1 of one body point, time moved by {@code byS}. */
  public UnitStream copy(UnitFacts facts, int firstSlot, int from, int to, double byS) {
    double[] timeS = Arrays.copyOfRange(columns[0], from, to);
    move(timeS, byS);
    double[][] values = new double[MotionLayout.SLOTS_PER_POINT][];
    for (int i = 0; i < values.length; i++) {
      values[i] = Arrays.copyOfRange(columns[firstSlot + i], from, to);
    }
    return stream(facts, timeS, values);
  }

  /** All samples of one body point, handed over: these columns must not be used again. */
  public UnitStream handOver(UnitFacts facts, int firstSlot, double byS) {
    double[] timeS = Arrays.copyOf(columns[0], size);
    move(timeS, byS);
    double[][] values = new double[MotionLayout.SLOTS_PER_POINT][];
    for (int i = 0; i < values.length; i++) {
      double[] column = columns[firstSlot + i];
      columns[firstSlot + i] = new double[0];
      values[i] = column.length == size ? column : Arrays.copyOf(column, size);
    }
    return stream(facts, timeS, values);
  }

  private static UnitStream stream(UnitFacts facts, double[] timeS, double[][] values) {
    return new UnitStream(
        facts, timeS, Arrays.copyOfRange(values, 0, 3), Arrays.copyOfRange(values, 3, 6));
  }

  private static void move(double[] timeS, double byS) {
    for (int i = 0; i < timeS.length; i++) {
      timeS[i] += byS;
    }
  }
}
