package steadyturn.ingest.sensor.frame;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import steadyturn.ingest.sample.Offered;
import steadyturn.ingest.sensor.SampleSink;

/**
 * Cuts bytes into frames that tell their length themselves. A frame that its reader refuses costs
 * one byte, and the search goes on behind it. A frame whose own check is weak counts only once the
 * next one is seen to begin right behind it.
 */
@Offered
public final class LengthFrames {

  /** Knows how a frame begins. */
  @FunctionalInterface
  public interface Head {

    /** None begins there. */
    int NO_FRAME = -1;

    /** More bytes must come before that can be said. */
    int NOT_YET = 0;

    /** The length of the frame that begins there, all of it, or one of the two above. */
    int length(ByteBuffer bytes, int at);

    /** Whether the frame that begins there needs the next one as its witness. */
    default boolean isWeak(ByteBuffer bytes, int at) {
      return false;
    }
  }

  private final Head head;
  private final int longestFrame;
  private final FrameReader reader;
  private boolean isUnbroken;

  /**
   * Reads frames of up to so many bytes.
   *
   * @param longestFrame a longer one is none: a false length must not hold up all that follows
   */
  public LengthFrames(Head head, int longestFrame, FrameReader reader) {
    this.head = head;
    this.longestFrame = longestFrame;
    this.reader = reader;
  }

  /** Reads all whole frames, leaves the unfinished one. */
  public void read(ByteBuffer bytes, SampleSink sink) {
    int at = bytes.position();
    int skipped = 0;
    while (at < bytes.limit()) {
      int length = head.length(bytes, at);
      if (length == Head.NOT_YET || (fits(length) && isUnfinished(bytes, at, length))) {
        break;
      }
      boolean isFrame = fits(length) && hasWitness(bytes, at, length);
      if (isFrame && skipped > 0) {
        sink.skipped(skipped); // before what the frame tells
        skipped = 0;
      }
      isFrame =
          isFrame && reader.read(bytes.slice(at, length).order(ByteOrder.LITTLE_ENDIAN), sink);
      isUnbroken = isFrame;
      skipped += isFrame ? 0 : 1;
      at += isFrame ? length : 1;
    }
    if (skipped > 0) {
      sink.skipped(skipped);
    }
    bytes.position(at);
  }

  /** While a frame is read: whether it begins where the one that was read last ended. */
  public boolean isUnbroken() {
    return isUnbroken;
  }

  private boolean fits(int length) {
    return length > 0 && length <= longestFrame;
  }

  private boolean isUnfinished(ByteBuffer bytes, int at, int length) {
    return at + length > bytes.limit()
        || (head.isWeak(bytes, at) && nextLength(bytes, at + length) == Head.NOT_YET);
  }

  private boolean hasWitness(ByteBuffer bytes, int at, int length) {
    return !head.isWeak(bytes, at) || nextLength(bytes, at + length) != Head.NO_FRAME;
  }

  private int nextLength(ByteBuffer bytes, int at) {
    return at < bytes.limit() ? head.length(bytes, at) : Head.NOT_YET;
  }
}
