package steadyturn.ingest.sensor;

import java.nio.ByteBuffer;
import steadyturn.ingest.sample.Offered;

/** Keeps an adapter's unfinished rest until more bytes come. */
@Offered
public final class AdapterFeed {

  private static final int START_BYTES = 1 << 13;

  /** An adapter that leaves more than this unread is stuck; then half of it is passed over. */
  private static final int MOST_BYTES = 1 << 18;

  private final SensorAdapter adapter;
  private final SampleSink sink;
  private ByteBuffer buffer = ByteBuffer.allocate(START_BYTES);

  public AdapterFeed(SensorAdapter adapter, SampleSink sink) {
    this.adapter = adapter;
    this.sink = sink;
  }

  /** The same for a block of which the arrival is known, by the host's steady clock, s. */
  public void feed(byte[] bytes, int count, double hostS) {
    adapter.arrived(hostS);
    feed(bytes, count);
  }

  /**
   * Hands on the first {@code count} of these bytes. What an adapter throws comes out; the bytes it
   * had are then passed over, and the next call begins anew.
   */
  public void feed(byte[] bytes, int count) {
    int at = 0;
    while (at < count) {
      makeRoom();
      int part = Math.min(buffer.remaining(), count - at);
      buffer.put(bytes, at, part);
      at += part;
      buffer.flip();
      boolean isRead = false;
      try {
        adapter.read(buffer, sink);
        isRead = true;
      } finally {
        buffer.compact();
        if (!isRead) {
          forgetRest();
          skip(count - at);
        }
      }
    }
  }

  /** Forgets the unfinished rest, as when a port was closed; returns how many bytes that were. */
  public int forgetRest() {
    int rest = dropRest();
    skip(rest);
    return rest;
  }

  /** The same where nothing is wrong with it: a file ended, or a cable came out. Tells no one. */
  public int dropRest() {
    int rest = buffer.position();
    buffer.clear();
    return rest;
  }

  private void skip(int bytes) {
    if (bytes > 0) {
      sink.skipped(bytes);
    }
  }

  private void makeRoom() {
    if (buffer.hasRemaining()) {
      return;
    }
    buffer.flip();
    if (buffer.capacity() >= MOST_BYTES) {
      sink.skipped(buffer.limit() / 2);
      buffer.position(buffer.limit() / 2);
      buffer.compact();
      return;
    }
    buffer = ByteBuffer.allocate(2 * buffer.capacity()).put(buffer);
  }
}
