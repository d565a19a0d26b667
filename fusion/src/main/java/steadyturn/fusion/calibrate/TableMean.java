package steadyturn.fusion.calibrate;

import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.UnitStream;

/** Means over a still stretch; lost values are left out. */
final class TableMean {

  private TableMean() {}

  static Vector3 accelMps2(UnitStream s) {
    return new Vector3(
        mean(s.accelColumnMps2(0)), mean(s.accelColumnMps2(1)), mean(s.accelColumnMps2(2)));
  }

  static Vector3 gyroRadPerS(UnitStream s) {
    return new Vector3(
        mean(s.gyroColumnRadPerS(0)), mean(s.gyroColumnRadPerS(1)), mean(s.gyroColumnRadPerS(2)));
  }

  private static double mean(double[] column) {
    return Averages.mean(column, 0, column.length);
  }
}
