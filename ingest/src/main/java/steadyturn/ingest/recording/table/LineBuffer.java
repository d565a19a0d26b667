package steadyturn.ingest.recording.table;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/**
 * A window of bytes over a text file that always holds whole lines in front of the cursor. The byte
 * behind the last one is a line end, as a guard, so that a scan for one needs no bound.
 */
final class LineBuffer implements Closeable {

  private static final int SIZE = 1 << 18;

  private final Path file;
  private final InputStream in;
  private final byte[] bytes = new byte[SIZE + 1];
  private int at;
  private int whole;
  private int end;
  private boolean ended;
  private boolean started;

  LineBuffer(Path file, InputStream in) {
    this.file = file;
    this.in = in;
  }

  byte[] bytes() {
    return bytes;
  }

  /** The cursor: first unread byte. */
  int at() {
    return at;
  }

  void moveTo(int index) {
    at = index;
  }

  /** True when the index lies behind the last byte of the file: a line that was not ended. */
  boolean isEndOfFile(int index) {
    return ended && index >= end;
  }

  /** Makes sure that a whole line stands at the cursor; false at the end of the file. */
  boolean nextLine() {
    return at < whole || refill();
  }

  private boolean refill() {
    end -= at;
    System.arraycopy(bytes, at, bytes, 0, end);
    at = 0;
    whole = 0;
    while (whole == 0 && !ended) {
      if (end == SIZE) {
        throw RecordingException.of(
            file,
            "has no line end within "
                + SIZE / 1024
                + " KiB, so it is no motion table. Give a text file with one sample a line.");
      }
      int fresh = end;
      end += read();
      whole = ended ? end : afterLastLineEnd(fresh);
    }
    bytes[end] = '\n';
    if (!started) {
      started = true;
      at = Encoding.textStart(file, bytes, end);
    }
    return at < whole;
  }

  private int read() {
    try {
      int got = in.readNBytes(bytes, end, SIZE - end);
      ended = got == 0;
      return got;
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }

  private int afterLastLineEnd(int from) {
    for (int i = end - 1; i >= from; i--) {
      if (bytes[i] == '\n') {
        return i + 1;
      }
    }
    return 0;
  }

  /** Moves the cursor, which stands on a line end (LF or CRLF), to the next line. */
  void passLineEnd() {
    if (bytes[at] == '\r' && at < end) {
      at++;
    }
    if (at < end) {
      at++;
    }
  }

  String text(int from, int to) {
    return new String(bytes, from, to - from, StandardCharsets.UTF_8);
  }

  @Override
  public void close() {
    try {
      in.close();
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
  }
}
