package steadyturn.analysis.lesson;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** Recordings with a stretch of one unit taken out of them, for tests. */
final class Dropout {

  /** What is lost: whole lines, or values of some channels. */
  enum Kind {
    LINES,
    RATES,
    FORCES,
    ONE_RATE,
    ONE_FORCE
  }

  private Dropout() {}

  /** The same recording without what the kind names of one unit in fromS to toS. */
  static Recording of(Recording recording, BodyPoint point, Kind kind, double fromS, double toS) {
    List<UnitStream> units = new ArrayList<>();
    for (UnitStream unit : recording.units()) {
      units.add(unit.point() == point ? without(unit, kind, fromS, toS) : unit);
    }
    return new Recording(recording.id(), recording.player(), units, recording.marks());
  }

  private static UnitStream without(UnitStream unit, Kind kind, double fromS, double toS) {
    int n = unit.size();
    double[][] columns = new double[7][n];
    int m = 0;
    for (int i = 0; i < n; i++) {
      boolean isLost = unit.timeS(i) > fromS && unit.timeS(i) < toS;
      if (isLost && kind == Kind.LINES) {
        continue;
      }
      columns[6][m] = unit.timeS(i);
      for (int axis = 0; axis < 3; axis++) {
        boolean force = kind == Kind.FORCES || (kind == Kind.ONE_FORCE && axis == 1);
        boolean rate = kind == Kind.RATES || (kind == Kind.ONE_RATE && axis == 1);
        columns[axis][m] = isLost && force ? Double.NaN : unit.accelMps2(axis, i);
        columns[3 + axis][m] = isLost && rate ? Double.NaN : unit.gyroRadPerS(axis, i);
      }
      m++;
    }
    for (int c = 0; c < 7; c++) {
      columns[c] = Arrays.copyOf(columns[c], m);
    }
    return new UnitStream(
        unit.facts(),
        columns[6],
        new double[][] {columns[0], columns[1], columns[2]},
        new double[][] {columns[3], columns[4], columns[5]});
  }
}
