package steadyturn.analysis.tempo;

import java.util.Arrays;
import java.util.stream.IntStream;
import steadyturn.ingest.sample.UnitStream;

/** The samples of a stretch that carry a whole rate. */
final class Seen {

  private Seen() {}

  static UnitStream of(UnitStream stretch) {
    int[] whole = IntStream.range(0, stretch.size()).filter(i -> stretch.hasRate(i)).toArray();
    if (whole.length == stretch.size()) {
      return stretch;
    }
    double[][] accel = new double[3][];
    double[][] gyro = new double[3][];
    for (int axis = 0; axis < 3; axis++) {
      accel[axis] = chosen(stretch.accelColumnMps2(axis), whole);
      gyro[axis] = chosen(stretch.gyroColumnRadPerS(axis), whole);
    }
    return new UnitStream(stretch.facts(), chosen(stretch.timeColumnS(), whole), accel, gyro);
  }

  private static double[] chosen(double[] column, int[] which) {
    return Arrays.stream(which).mapToDouble(i -> column[i]).toArray();
  }
}
