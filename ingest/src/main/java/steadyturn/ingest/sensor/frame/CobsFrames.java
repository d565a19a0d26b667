package steadyturn.ingest.sensor.frame;

import java.nio.ByteBuffer;
import steadyturn.ingest.sample.Offered;
import steadyturn.ingest.sensor.SampleSink;

/**
 * Cuts bytes into frames that are byte-stuffed (COBS) and end with a zero. After damage the next
 * zero begins anew.
 */
@Offered
public final class CobsFrames {

  private final EndedPieces pieces;

  /**
   * Reads frames of up to so many bytes.
   *
   * @param longestFrame the longest frame the unit sends, stuffed, without the zero
   */
  public CobsFrames(int longestFrame, FrameReader reader) {
    pieces = EndedPieces.frames((byte) 0, longestFrame, Cobs::decode, reader);
  }

  /** Reads all whole frames, leaves the unfinished one. */
  public void read(ByteBuffer bytes, SampleSink sink) {
    pieces.read(bytes, sink);
  }
}
