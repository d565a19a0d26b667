package steadyturn.ingest.sensor;

import java.nio.ByteBuffer;
import java.util.List;
import steadyturn.ingest.sample.Offered;

/**
 * Reads one kind of unit. An instance serves one port from its opening on and may remember what
 * came before; it is used by one thread. Found by {@link java.util.ServiceLoader}, so it needs a
 * public constructor without arguments and its class name in {@code
 * META-INF/services/steadyturn.ingest.sensor.SensorAdapter}. A name and {@link #read} are all that
 * is needed; the rest is for units that must be told something, or that have more than one baud
 * rate.
 */
@Offered
public interface SensorAdapter {

  /** That of units whose maker names none; ports of USB mostly ignore it. */
  int USUAL_BAUD = 921_600;

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

  /** How well each frame is checked. */
  default FrameCheck check() {
    return FrameCheck.BITS_16;
  }

  /** Baud rates at which the unit may speak, the likeliest first. */
  default List<Integer> bauds() {
    return List.of(USUAL_BAUD);
  }

  /**
   * Told once, before anything is read, what is wished of this unit.
   *
   * @throws IllegalArgumentException with a sentence for the person, when that cannot be
   */
  default void choose(UnitOptions options) {}

  /**
   * The port was opened, for the first time or again, or is heard at another baud rate: between
   * this and what was read before, the unit may have lost its power. Forget what a power loss
   * undoes, such as ranges and rate that it told, and the count of its clock. Called before
   * anything is read and before {@link #configure}, whether that follows or not; never for a file.
   */
  default void opened() {}

  /**
   * The port was opened, for the first time or again, and the unit may be set up as wished: rate,
   * ranges, what it sends. Called only where a person allowed it, once the unit speaks or was
   * silent for a second; its samples count from a tenth of a second after the last pause on. The
   * link may be kept for answers to what the unit then says, until the next opening.
   */
  default void configure(UnitLink link) {}
}
