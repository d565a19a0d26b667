package steadyturn.ingest.lab;

import steadyturn.ingest.sample.Offered;
import steadyturn.ingest.sensor.UnitHello;

/** The other side of an adapter: what a unit would send. For virtual units and tests. */
@Offered
public interface UnitEncoder {

  /** The bytes of a hello; none where its protocol has no such thing. */
  default byte[] hello(UnitHello hello) {
    return new byte[0];
  }

  /**
   * The bytes of one sample.
   *
   * @param counter number of the sample since the unit's start
   * @param micros the unit's clock, microseconds
   * @param accelMps2 x, y, z in m/s^2
   * @param gyroRadPerS x, y, z in rad/s
   */
  byte[] sample(long counter, long micros, double[] accelMps2, double[] gyroRadPerS);

  /** Takes what was sent to the unit; what it answers. */
  default byte[] heard(byte[] commands) {
    return new byte[0];
  }

  /** It sends no more samples a second than this. */
  default double rateHz() {
    return Double.POSITIVE_INFINITY;
  }

  /** Whether, set as it is, it sends this sample of a stream of that rate. */
  default boolean sends(long counter, double streamHz) {
    return rateHz() >= streamHz || counter % Math.round(streamHz / rateHz()) == 0;
  }

  /** It was switched off, and is again as it came out of the factory. */
  default void powerOff() {}
}
