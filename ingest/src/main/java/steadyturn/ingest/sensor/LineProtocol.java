package steadyturn.ingest.sensor;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import steadyturn.ingest.sample.Offered;

/**
 * Cuts bytes into lines, for units that send text. A line ends with LF; a CR before it is dropped.
 * What the reader does not accept, and what grows longer than any line may be, is told as skipped.
 *
 * @param longestLine bytes of the longest line the unit sends, its end included
 */
@Offered
public record LineProtocol(int longestLine, LineProtocol.LineReader reader) {

  /** Reads one line without its end; false when it is none of the unit's. */
  @FunctionalInterface
  public interface LineReader {
    boolean read(String line, SampleSink sink);
  }

  /** Reads all whole lines, leaves the unfinished one. */
  public void read(ByteBuffer bytes, SampleSink sink) {
    int from = bytes.position();
    for (int at = from; at < bytes.limit(); at++) {
      if (bytes.get(at) == '\n') {
        line(bytes, from, at, sink);
        from = at + 1;
      }
    }
    if (bytes.limit() - from > longestLine) {
      sink.skipped(bytes.limit() - from);
      from = bytes.limit();
    }
    bytes.position(from);
  }

  private void line(ByteBuffer bytes, int from, int end, SampleSink sink) {
    int length = end - from;
    if (length > 0 && bytes.get(end - 1) == '\r') {
      length--;
    }
    byte[] text = new byte[Math.min(length, longestLine)];
    bytes.get(from, text);
    boolean isRead =
        length <= longestLine && reader.read(new String(text, StandardCharsets.ISO_8859_1), sink);
    if (!isRead) {
      sink.skipped(end + 1 - from);
    }
  }
}
