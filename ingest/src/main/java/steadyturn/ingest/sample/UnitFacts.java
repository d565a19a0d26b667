package steadyturn.ingest.sample;

/**
 * What is known of a unit before its first sample.
 *
 * @param point where it is worn
 * @param serialNumber the maker's serial number, or an empty string when none is known
 * @param nominalRateHz the rate the unit was set to
 * @param accelFullScaleMps2 largest acceleration it can show, m/s^2; infinite when not stated
 * @param gyroFullScaleRadPerS largest rate it can show, rad/s; infinite when not stated
 * @param calibrated whether the samples were corrected by a calibration of this very unit (sidecar
 *     key {@code CalibrationApplied}); decides how large the remaining errors are taken to be
 */
public record UnitFacts(
    BodyPoint point,
    String serialNumber,
    double nominalRateHz,
    double accelFullScaleMps2,
    double gyroFullScaleRadPerS,
    boolean calibrated) {

  public UnitFacts {
    if (!(nominalRateHz > 0)) {
      throw new IllegalArgumentException("rate must be above 0 Hz, was " + nominalRateHz);
    }
    if (!(accelFullScaleMps2 > 0) || !(gyroFullScaleRadPerS > 0)) {
      throw new IllegalArgumentException(
          ("full scales must be above 0, were " + accelFullScaleMps2 + " m/s^2 and ")
              + (gyroFullScaleRadPerS + " rad/s"));
    }
  }

  /** The same unit with its samples corrected by its calibration. */
  public UnitFacts asCalibrated() {
    return new UnitFacts(
        point, serialNumber, nominalRateHz, accelFullScaleMps2, gyroFullScaleRadPerS, true);
  }

  /** The same unit under a serial number that someone gave. */
  public UnitFacts withSerialNumber(String number) {
    return new UnitFacts(
        point, number, nominalRateHz, accelFullScaleMps2, gyroFullScaleRadPerS, calibrated);
  }

  /** The same unit at the rate that it was found to run at. */
  public UnitFacts withNominalRateHz(double rateHz) {
    return new UnitFacts(
        point, serialNumber, rateHz, accelFullScaleMps2, gyroFullScaleRadPerS, calibrated);
  }

  /** Facts of an uncalibrated unit that states neither a serial number nor its full scales. */
  public static UnitFacts plain(BodyPoint point, double nominalRateHz) {
    return new UnitFacts(
        point, "", nominalRateHz, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, false);
  }
}
