package steadyturn.cli.live;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;

/**
 * The pages that listen, each told by a thread of its own: a page that does not take what it is
 * told is let go and comes again, the others and the teller do not wait for it. The form is that of
 * server-sent events (WHATWG HTML, 9.2).
 */
final class EventStreams {

  /** Laptop, tablets, and what a reload leaves behind for a moment. */
  private static final int MOST = 12;

  private static final int MOST_WAITING = 200;

  /** So often something is sent, so that both sides know that the other is there. */
  private static final long BEAT_MS = 2000;

  private static final byte[] BEAT = "event: beat\ndata: {}\n\n".getBytes(StandardCharsets.UTF_8);

  /** One page. */
  private static final class Stream {
    final BlockingQueue<byte[]> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
    volatile boolean isLeft;
  }

  private final Set<Stream> streams = ConcurrentHashMap.newKeySet();
  private volatile boolean isClosed;

  static byte[] bytes(Shown.Told told) {
    String text = "event: " + told.event() + "\ndata: " + told.data() + "\n\n";
    return text.getBytes(StandardCharsets.UTF_8);
  }

  boolean isFull() {
    return streams.size() >= MOST;
  }

  int size() {
    return streams.size();
  }

  /** Tells every page; does not wait. */
  void tell(Shown.Told told) {
    if (streams.isEmpty()) {
      return;
    }
    byte[] bytes = bytes(told);
    for (Stream stream : streams) {
      stream.isLeft |= !stream.waiting.offer(bytes);
    }
  }

  /** Tells one page what it asked for first, then everything, until it is gone. */
  void serve(OutputStream out, Shown shown) throws IOException {
    Stream stream = new Stream();
    streams.add(stream);
    try {
      out.write("retry: 700\n\n".getBytes(StandardCharsets.UTF_8));
      for (Shown.Told told : shown.all()) {
        out.write(bytes(told));
      }
      out.flush();
      while (!isClosed && !stream.isLeft) {
        byte[] next = stream.waiting.poll(BEAT_MS, TimeUnit.MILLISECONDS);
        out.write(next == null ? BEAT : next);
        out.flush();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      streams.remove(stream);
    }
  }

  void close() {
    isClosed = true;
    streams.forEach(stream -> stream.waiting.offer(BEAT));
  }
}
