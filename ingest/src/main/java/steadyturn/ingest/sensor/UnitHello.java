package steadyturn.ingest.sensor;

import java.util.OptionalDouble;

/**
 * What a unit says of itself.
 *
 * @param name the unit's given name, such as the body point it belongs to; may be empty
 * @param serialNumber the maker's number; may be empty
 * @param rateHz samples a second
 * @param accelFullScaleMps2 largest acceleration it can show, m/s^2
 * @param gyroFullScaleRadPerS largest rate it can show, rad/s
 */
public record UnitHello(
    String name,
    String serialNumber,
    double rateHz,
    double accelFullScaleMps2,
    double gyroFullScaleRadPerS) {

  public UnitHello {
    if (!(rateHz > 0) || !(accelFullScaleMps2 > 0) || !(gyroFullScaleRadPerS > 0)) {
      throw new IllegalArgumentException(
          ("rate and ranges must be above 0, were " + rateHz + " Hz, ")
              + (accelFullScaleMps2 + " m/s^2, " + gyroFullScaleRadPerS + " rad/s"));
    }
  }

  /** What that makes known of the unit. */
  public KnownUnit known() {
    return new KnownUnit(
        serialNumber, OptionalDouble.of(rateHz), accelFullScaleMps2, gyroFullScaleRadPerS);
  }
}
