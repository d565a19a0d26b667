package steadyturn.ingest.sensor;

import java.nio.ByteBuffer;

/**
 * Reads one kind of unit. An instance serves one port from its opening on and may remember what
 * came before; it is used by one thread. Found by {@link java.util.ServiceLoader}, so it needs a
 * public constructor without arguments and its class name in {@code
 * META-INF/services/steadyturn.ingest.sensor.SensorAdapter}.
 */
public interface SensorAdapter {

  /** The name by which people choose it: lower-case words joined by hyphens. */
  String name();

  /**
   * Tells when the block of bytes came that is read next. A unit without a clock needs no more than
   * to pass its samples on ({@link SampleSink}); this is for adapters that know more of the way.
   *
   * @param hostS the host's steady clock, s
   */
  default void arrived(double hostS) {}

  /**
   * Reads all whole frames or lines and leaves the buffer's position at the first byte of the
   * unfinished rest, which comes again with more bytes behind it. Damage is told to the sink and
   * passed over; nothing is thrown for it.
   */
  void read(ByteBuffer bytes, SampleSink sink);
}
