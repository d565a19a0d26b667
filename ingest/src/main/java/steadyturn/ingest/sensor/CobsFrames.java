package steadyturn.ingest.sensor;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import steadyturn.ingest.sample.Offered;

/**
 * Cuts bytes into frames that are byte-stuffed (COBS) and end with a zero. After damage the next
 * zero begins anew.
 */
@Offered
public final class CobsFrames {

  private final int longestFrame;
  private final FrameReader reader;
  private final byte[] frame;

  /**
   * Reads frames of up to so many bytes.
   *
   * @param longestFrame the longest frame the unit sends, stuffed, without the zero
   */
  public CobsFrames(int longestFrame, FrameReader reader) {
    this.longestFrame = longestFrame;
    this.reader = reader;
    frame = new byte[longestFrame];
  }

  /** Reads all whole frames, leaves the unfinished one. */
  public void read(ByteBuffer bytes, SampleSink sink) {
    int from = bytes.position();
    for (int at = from; at < bytes.limit(); at++) {
      if (bytes.get(at) == 0) {
        if (!isRead(bytes, from, at, sink)) {
          sink.skipped(at + 1 - from);
        }
        from = at + 1;
      }
    }
    if (bytes.limit() - from > longestFrame) {
      sink.skipped(bytes.limit() - from);
      from = bytes.limit();
    }
    bytes.position(from);
  }

  private boolean isRead(ByteBuffer bytes, int from, int end, SampleSink sink) {
    if (end - from > longestFrame) {
      return false;
    }
    int length = Cobs.decode(bytes, from, end, frame);
    return length > 0
        && reader.read(ByteBuffer.wrap(frame, 0, length).order(ByteOrder.LITTLE_ENDIAN), sink);
  }
}
