package steadyturn.ingest.sensor;

import java.util.OptionalDouble;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sample.UnitFacts;

/**
 * What is known of a unit without its saying hello: by its kind, by an answer, by a file's head.
 *
 * @param serialNumber the maker's number; empty when not known
 * @param rateHz samples a second; empty when not known
 * @param accelFullScaleMps2 largest acceleration it can show, m/s^2; infinite when not known
 * @param gyroFullScaleRadPerS largest rate it can show, rad/s; infinite when not known
 */
public record KnownUnit(
    String serialNumber,
    OptionalDouble rateHz,
    double accelFullScaleMps2,
    double gyroFullScaleRadPerS) {

  /** Nothing is known. */
  public static final KnownUnit NOTHING =
      new KnownUnit("", OptionalDouble.empty(), Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

  public KnownUnit {
    if (!(accelFullScaleMps2 > 0) || !(gyroFullScaleRadPerS > 0) || !(rateHz.orElse(1) > 0)) {
      throw new IllegalArgumentException(
          ("rate and ranges must be above 0, were " + rateHz + " Hz, ")
              + (accelFullScaleMps2 + " m/s^2, " + gyroFullScaleRadPerS + " rad/s"));
    }
  }

  /** A unit of known ranges. */
  public static KnownUnit ofRanges(double accelG, double gyroDegPerS) {
    return new KnownUnit(
        "", OptionalDouble.empty(), accelG * StandardGravity.MPS2, Math.toRadians(gyroDegPerS));
  }

  /** The same with its number. */
  public KnownUnit withSerialNumber(String number) {
    return new KnownUnit(number, rateHz, accelFullScaleMps2, gyroFullScaleRadPerS);
  }

  /** The same with its rate. */
  public KnownUnit withRateHz(double hz) {
    return new KnownUnit(
        serialNumber, OptionalDouble.of(hz), accelFullScaleMps2, gyroFullScaleRadPerS);
  }

  /** This, and where it does not know, what another knows. */
  public KnownUnit or(KnownUnit other) {
    return new KnownUnit(
        serialNumber.isEmpty() ? other.serialNumber : serialNumber,
        rateHz.isPresent() ? rateHz : other.rateHz,
        Double.isFinite(accelFullScaleMps2) ? accelFullScaleMps2 : other.accelFullScaleMps2,
        Double.isFinite(gyroFullScaleRadPerS) ? gyroFullScaleRadPerS : other.gyroFullScaleRadPerS);
  }

  /** The facts of the unit worn at a point, with a rate for the case that it is not known. */
  public UnitFacts facts(BodyPoint point, double otherwiseHz) {
    return new UnitFacts(
        point,
        serialNumber,
        rateHz.orElse(otherwiseHz),
        accelFullScaleMps2,
        gyroFullScaleRadPerS,
        false);
  }
}
