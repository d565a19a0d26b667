package steadyturn.ingest.sensor;

import static java.util.Locale.ROOT;

import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
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

  /** Rates and ranges less far apart are the same, said otherwise: our choice. */
  private static final double SAME = 0.95;

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

  /** Whether its rate or a range is less than another's, where both are known. */
  public boolean isLessThan(KnownUnit other) {
    return rateHz.orElse(Double.POSITIVE_INFINITY) < SAME * other.rateHz.orElse(0)
        || isLess(accelFullScaleMps2, other.accelFullScaleMps2)
        || isLess(gyroFullScaleRadPerS, other.gyroFullScaleRadPerS);
  }

  private static boolean isLess(double range, double other) {
    return Double.isFinite(other) && range < SAME * other;
  }

  /** Its rate and ranges as people say them, as far as they are known. */
  public String setting() {
    String rate = rateHz.isPresent() ? number(rateHz.getAsDouble(), "Hz") : "";
    String accel = number(accelFullScaleMps2 / StandardGravity.MPS2, "g");
    String gyro = number(Math.toDegrees(gyroFullScaleRadPerS), "deg/s");
    return Stream.of(rate, accel, gyro).filter(s -> !s.isEmpty()).collect(Collectors.joining(", "));
  }

  private static String number(double value, String unit) {
    String text = String.format(ROOT, "%.1f", value).replace(".0", "");
    return Double.isFinite(value) ? text + " " + unit : "";
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
