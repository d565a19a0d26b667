package steadyturn.ingest.lab;

import steadyturn.ingest.sensor.UnitHello;

/** The other side of an adapter: what a unit would send. For virtual units and tests. */
public interface UnitEncoder {

  /** The bytes of a hello. */
  byte[] hello(UnitHello hello);

  /**
   * The bytes of one sample.
   *
   * @param counter number of the sample since the unit's start
   * @param micros the unit's clock, microseconds
   * @param accelMps2 x, y, z in m/s^2
   * @param gyroRadPerS x, y, z in rad/s
   */
  byte[] sample(long counter, long micros, double[] accelMps2, double[] gyroRadPerS);
}
