package steadyturn.fusion.calibrate;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.stat.StatUtils;
import steadyturn.fusion.rest.RestGate;
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
    List<UnitStream> after = still.stream().map(calibration::apply).toList();
    ToDoubleFunction<UnitStream> gravityOff =
        s -> RestGate.meanAccelMps2(s).norm() - calibration.gravityMps2();
    ToDoubleFunction<UnitStream> rate = s -> RestGate.meanRateRadPerS(s).norm();
    return Optional.of(
        new CalibrationEffect(
            still.size(),
            rms(still, gravityOff),
            rms(after, gravityOff),
            rms(still, rate),
            rms(after, rate)));
  }

  private static double rms(List<UnitStream> stretches, ToDoubleFunction<UnitStream> value) {
    double[] values = stretches.stream().mapToDouble(value).toArray();
    return Math.sqrt(StatUtils.sumSq(values) / values.length);
  }
}
