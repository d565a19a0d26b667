package steadyturn.ingest.live;

import steadyturn.ingest.sample.BodyPoint;

/** Hears every sample while it is recorded, by the thread of the unit's port: be quick. */
@FunctionalInterface
public interface LiveListener {

  /**
   * One sample.
   *
   * @param timeS the host's steady clock at which it was taken, s: comparable between units to some
   *     milliseconds
   * @param accelMps2 x, y, z; used again afterwards
   * @param gyroRadPerS x, y, z; used again afterwards
   */
  void sample(BodyPoint point, double timeS, double[] accelMps2, double[] gyroRadPerS);
}
