package steadyturn.ingest.sensor.frame;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import steadyturn.ingest.sample.Offered;
import steadyturn.ingest.sensor.SampleSink;

/**
 * Cuts bytes into frames of one length that begin with known bytes. A frame that its reader refuses
 * costs one byte, and the search goes on behind it: a true frame that began inside is still found.
 */
@Offered
public final class SyncFrames {

  private final byte[] begin;
  private final int length;
  private final FrameReader reader;

  /**
   * Reads frames of so many bytes.
   *
   * @param begin the bytes every frame begins with
   * @param length the frame's length, these bytes included
   */
  public SyncFrames(byte[] begin, int length, FrameReader reader) {
    if (begin.length == 0 || begin.length > length) {
      throw new IllegalArgumentException(
          "a frame of " + length + " bytes cannot begin with " + begin.length);
    }
    this.begin = begin.clone();
    this.length = length;
    this.reader = reader;
  }

  /** Reads all whole frames, leaves the unfinished one. */
  public void read(ByteBuffer bytes, SampleSink sink) {
    int at = bytes.position();
    int skipped = 0;
    while (at < bytes.limit()) {
      if (!begins(bytes, at)) {
        skipped++;
        at++;
        continue;
      }
      report(sink, skipped);
      skipped = 0;
      if (at + length > bytes.limit()) {
        break;
      }
      boolean isFrame = reader.read(bytes.slice(at, length).order(ByteOrder.LITTLE_ENDIAN), sink);
      skipped = isFrame ? 0 : 1;
      at += isFrame ? length : 1;
    }
    report(sink, skipped);
    bytes.position(at);
  }

  private static void report(SampleSink sink, int skipped) {
    if (skipped > 0) {
      sink.skipped(skipped);
    }
  }

  /** Whether the bytes there are the frame's first, as far as they have come. */
  private boolean begins(ByteBuffer bytes, int at) {
    for (int i = 0; i < begin.length && at + i < bytes.limit(); i++) {
      if (bytes.get(at + i) != begin[i]) {
        return false;
      }
    }
    return true;
  }
}
