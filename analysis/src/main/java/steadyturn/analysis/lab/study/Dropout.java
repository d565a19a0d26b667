package steadyturn.analysis.lab.study;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * A stretch of one unit's samples that goes missing.
 *
 * @param fromS first instant that is lost, s
 * @param lengthS how long it lasts, s
 * @param axis 0, 1 or 2 where one axis alone is lost
 */
record Dropout(BodyPoint unit, Form form, int axis, double fromS, double lengthS) {

  /** What is lost. */
  enum Form {
    LINES,
    ALL_VALUES,
    ONE_GYRO_AXIS,
    ONE_ACCEL_AXIS
  }

  double toS() {
    return fromS + lengthS;
  }

  /** The recordings with this stretch lost; they are on one time axis, as pieces of one run are. */
  List<Recording> laidOn(List<Recording> lesson) {
    return lesson.stream().map(this::laidOn).toList();
  }

  private Recording laidOn(Recording recording) {
    List<UnitStream> units =
        recording.units().stream().map(u -> u.point() == unit ? without(u) : u).toList();
    return new Recording(recording.id(), recording.player(), units, recording.marks());
  }

  private UnitStream without(UnitStream stream) {
    int from = stream.indexAt(fromS);
    int to = stream.indexAt(toS());
    double[][] accel = new double[3][];
    double[][] gyro = new double[3][];
    for (int a = 0; a < 3; a++) {
      boolean all = form == Form.ALL_VALUES;
      boolean accelToo = all || (form == Form.ONE_ACCEL_AXIS && a == axis);
      boolean gyroToo = all || (form == Form.ONE_GYRO_AXIS && a == axis);
      accel[a] = without(stream.accelColumnMps2(a), from, to, accelToo);
      gyro[a] = without(stream.gyroColumnRadPerS(a), from, to, gyroToo);
    }
    double[] time = without(stream.timeColumnS(), from, to, false);
    return new UnitStream(stream.facts(), time, accel, gyro);
  }

  /** The column without these samples, or with these values lost, or as it was. */
  private double[] without(double[] column, int from, int to, boolean lost) {
    if (form == Form.LINES) {
      double[] out = Arrays.copyOf(column, column.length - (to - from));
      System.arraycopy(column, to, out, from, column.length - to);
      return out;
    }
    if (!lost) {
      return column;
    }
    double[] out = column.clone();
    Arrays.fill(out, from, to, Double.NaN);
    return out;
  }

  @Override
  public String toString() {
    String what =
        switch (form) {
          case LINES -> "lines";
          case ALL_VALUES -> "all values";
          case ONE_GYRO_AXIS -> "gyro " + "xyz".charAt(axis);
          case ONE_ACCEL_AXIS -> "accel " + "xyz".charAt(axis);
        };
    return String.format(
        Locale.ROOT, "%s, %s, %.2f s from %.3f s", unit.trackedPoint(), what, lengthS, fromS);
  }
}
