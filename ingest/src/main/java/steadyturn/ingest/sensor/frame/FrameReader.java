package steadyturn.ingest.sensor.frame;

import java.nio.ByteBuffer;
import steadyturn.ingest.sensor.SampleSink;

/** Reads one whole frame of a binary protocol. */
@FunctionalInterface
public interface FrameReader {

  /**
   * Reads a frame, position at its first byte, limit behind its last, little endian.
   *
   * @return false when its check or its kind is wrong: it is then told as skipped
   */
  boolean read(ByteBuffer frame, SampleSink sink);
}
