package steadyturn.fusion.calibrate;

import java.util.List;
import java.util.Optional;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

/**
 * What a calibration changes, read at the still stretches of a recording: RMS before and after.
 *
 * @param stretches how many still stretches there were
 * @param gravityErrorBeforeMps2 size of the mean force less gravity, RMS, as shown
 * @param gravityErrorAfterMps2 the same after the calibration
 * @param rateBeforeRadPerS size of the mean rate, RMS, as shown
 * @param rateAfterRadPerS the same after the calibration
 */
public record CalibrationEffect(
    int stretches,
    double gravityErrorBeforeMps2,
    double gravityErrorAfterMps2,
    double rateBeforeRadPerS,
    double rateAfterRadPerS) {

  private static final double SHORTEST_S = 0.6;

  /** The effect on a recording as it came from the unit; empty where the unit never lay still. */
  public static Optional<CalibrationEffect> of(UnitCalibration calibration, UnitStream raw) {
    List<UnitStream> still = StillStretches.of(raw, SHORTEST_S);
    if (still.isEmpty()) {
      return Optional.empty();
    }
    double[] squares = new double[4];
    for (UnitStream before : still) {
      UnitStream after = calibration.apply(before);
      double g = calibration.gravityMps2();
      squares[0] += square(TableMean.accelMps2(before).norm() - g);
      squares[1] += square(TableMean.accelMps2(after).norm() - g);
      squares[2] += squared(TableMean.gyroRadPerS(before));
      squares[3] += squared(TableMean.gyroRadPerS(after));
    }
    int n = still.size();
    return Optional.of(
        new CalibrationEffect(
            n,
            Math.sqrt(squares[0] / n),
            Math.sqrt(squares[1] / n),
            Math.sqrt(squares[2] / n),
            Math.sqrt(squares[3] / n)));
  }

  private static double square(double v) {
    return v * v;
  }

  private static double squared(Vector3 v) {
    return v.dot(v);
  }
}
