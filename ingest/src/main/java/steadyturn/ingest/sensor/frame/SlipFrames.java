package steadyturn.ingest.sensor.frame;

import java.nio.ByteBuffer;
import steadyturn.ingest.sample.Offered;
import steadyturn.ingest.sensor.SampleSink;

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
  private final EndedPieces pieces;

  /**
   * Reads frames of up to so many bytes.
   *
   * @param longestFrame the longest frame the unit sends, stuffed, without its end
   */
  public SlipFrames(Marks marks, int longestFrame, FrameReader reader) {
    this.marks = marks;
    pieces = EndedPieces.frames((byte) marks.end, longestFrame, this::unstuffed, reader);
  }

  /** Reads all whole frames, leaves the unfinished one. */
  public void read(ByteBuffer bytes, SampleSink sink) {
    pieces.read(bytes, sink);
  }

  /** Undoes the stuffing; how many bytes it became, -1 where a pair is none. */
  private int unstuffed(ByteBuffer bytes, int from, int end, byte[] plain) {
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
      plain[n++] = value;
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
