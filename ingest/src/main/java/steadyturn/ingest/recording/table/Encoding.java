package steadyturn.ingest.recording.table;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.IntStream;

/** What the first bytes of a text file say of its encoding. */
public final class Encoding {

  private static final int LOOKED_AT = 64;

  private Encoding() {}

  /** Where the text of a big file starts, past a byte-order mark; refuses UTF-16. */
  static int textStart(Path file, byte[] bytes, int end) {
    byte[] head = Arrays.copyOf(bytes, Math.min(end, LOOKED_AT));
    if (isUtf16(head) || hasZeros(head)) {
      throw RecordingException.of(
          file, "is written in UTF-16 or is no text at all. Save it as UTF-8 text.");
    }
    return markBytes(head);
  }

  public static boolean isUtf16(byte[] head) {
    return starts(head, 0xFF, 0xFE) || starts(head, 0xFE, 0xFF);
  }

  /** Length of the byte-order mark of UTF-8, 0 where there is none. */
  public static int markBytes(byte[] head) {
    return starts(head, 0xEF, 0xBB, 0xBF) ? 3 : 0;
  }

  public static boolean starts(byte[] bytes, int... head) {
    return bytes.length >= head.length
        && IntStream.range(0, head.length).allMatch(i -> (bytes[i] & 0xFF) == head[i]);
  }

  private static boolean hasZeros(byte[] bytes) {
    return IntStream.range(0, bytes.length).anyMatch(i -> bytes[i] == 0);
  }
}
