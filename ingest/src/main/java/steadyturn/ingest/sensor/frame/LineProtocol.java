package steadyturn.ingest.sensor.frame;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import steadyturn.ingest.sample.Offered;
import steadyturn.ingest.sensor.SampleSink;

/**
 * Cuts bytes into lines, for units that send text. A line ends with LF; a CR before it is dropped.
 * What the reader does not accept, and what grows longer than any line may be, is told as skipped.
 *
 * @param longestLine bytes of the longest line the unit sends, without its LF
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
    new EndedPieces((byte) '\n', longestLine, this::line).read(bytes, sink);
  }

  private boolean line(ByteBuffer bytes, int from, int end, SampleSink sink) {
    boolean hasCr = end > from && bytes.get(end - 1) == '\r';
    byte[] text = new byte[end - from - (hasCr ? 1 : 0)];
    bytes.get(from, text);
    return reader.read(new String(text, StandardCharsets.ISO_8859_1), sink);
  }
}
