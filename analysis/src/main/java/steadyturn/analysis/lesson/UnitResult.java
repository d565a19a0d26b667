package steadyturn.analysis.lesson;

import java.time.LocalDate;
import java.util.Optional;
import steadyturn.ingest.sample.BodyPoint;

/**
 * What a result says of one unit. Lost samples in percent of those expected.
 *
 * @param calibratedOn the day of the calibration that was taken off its samples; empty where none
 *     was
 */
public record UnitResult(
    BodyPoint point,
    String serialNumber,
    double rateHz,
    double lostPct,
    int saturatedSamples,
    Optional<LocalDate> calibratedOn) {

  /** A unit read as it is. */
  public UnitResult(
      BodyPoint point, String serialNumber, double rateHz, double lostPct, int saturatedSamples) {
    this(point, serialNumber, rateHz, lostPct, saturatedSamples, Optional.empty());
  }

  /** The same with the calibration of a day. */
  public UnitResult withCalibrationOf(LocalDate day) {
    return new UnitResult(point, serialNumber, rateHz, lostPct, saturatedSamples, Optional.of(day));
  }
}
