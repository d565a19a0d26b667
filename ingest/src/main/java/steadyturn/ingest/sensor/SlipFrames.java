package steadyturn.ingest.sensor;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import steadyturn.ingest.sample.Offered;

/**
 * Cuts bytes into frames that end with one known byte, which inside is written as two: the stuffing
 * of RFC 1055 (Romkey 1988), with the makers' own values for end and escape. After damage the next
 * end begins anew. Text lines, which need no stuffing, come through as they are.
 */
@Offered
public final class SlipFrames {

  /**
   * The bytes that mean something.
   *
   * @param end ends a frame
   * @param escape begins a pair
   * @param escapedEnd the second of the pair that stands for the end
   * @param escapedEscape the second of the pair that stands for the escape
   */
  public record Marks(int end, int escape, int escapedEnd, int escapedEscape) {}

  private final Marks marks;
  private final int longestFrame;
  private final FrameReader reader;
  private final byte[] frame;

  /**
   * Reads frames of up to so many bytes.
   *
   * @param longestFrame the longest frame the unit sends, stuffed, without its end
   */
  public SlipFrames(Marks marks, int longestFrame, FrameReader reader) {
    this.marks = marks;
    this.longestFrame = longestFrame;
    this.reader = reader;
    frame = new byte[longestFrame];
  }

  /** Reads all whole frames, leaves the unfinished one. */
  public void read(ByteBuffer bytes, SampleSink sink) {
    int from = bytes.position();
    for (int at = from; at < bytes.limit(); at++) {
      if (bytes.get(at) == (byte) marks.end) {
        int length = at - from <= longestFrame ? unstuffed(bytes, from, at) : -1;
        boolean isRead =
            length > 0
                && reader.read(
                    ByteBuffer.wrap(frame, 0, length).order(ByteOrder.LITTLE_ENDIAN), sink);
        if (!isRead) {
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

  /** Undoes the stuffing; how many bytes it became, -1 where a pair is none. */
  private int unstuffed(ByteBuffer bytes, int from, int end) {
    int n = 0;
    for (int at = from; at < end; at++) {
      byte value = bytes.get(at);
      if (value == (byte) marks.escape) {
        at++;
        int second = at < end ? bytes.get(at) & 0xFF : -1;
        if (second != marks.escapedEnd && second != marks.escapedEscape) {
          return -1;
        }
        value = (byte) (second == marks.escapedEnd ? marks.end : marks.escape);
      }
      frame[n++] = value;
    }
    return n;
  }

  /** Stuffs a frame and ends it: the other direction, for senders. */
  public static byte[] stuffed(Marks marks, byte[] plain) {
    ByteBuffer out = ByteBuffer.allocate(2 * plain.length + 1);
    for (byte value : plain) {
      boolean isEnd = value == (byte) marks.end;
      if (isEnd || value == (byte) marks.escape) {
        out.put((byte) marks.escape);
        out.put((byte) (isEnd ? marks.escapedEnd : marks.escapedEscape));
      } else {
        out.put(value);
      }
    }
    out.put((byte) marks.end);
    byte[] bytes = new byte[out.position()];
    out.flip().get(bytes);
    return bytes;
  }
}
