package steadyturn.ingest.recording.table;

import java.nio.file.Path;

/** Looks at the first bytes of a big text file, which must be UTF-8 (or plain ASCII). */
final class Encoding {

  private static final int LOOKED_AT = 64;

  private Encoding() {}

  /** Where the text starts, past a byte-order mark; refuses UTF-16. */
  static int textStart(Path file, byte[] bytes, int end) {
    boolean marked = end >= 2 && (has(bytes, 0xFF, 0xFE) || has(bytes, 0xFE, 0xFF));
    if (marked || hasZeros(bytes, end)) {
      throw RecordingException.of(
          file, "is written in UTF-16 or is no text at all. Save it as UTF-8 text.");
    }
    return end >= 3 && has(bytes, 0xEF, 0xBB, 0xBF) ? 3 : 0;
  }

  private static boolean has(byte[] bytes, int... head) {
    for (int i = 0; i < head.length; i++) {
      if ((bytes[i] & 0xFF) != head[i]) {
        return false;
      }
    }
    return true;
  }

  private static boolean hasZeros(byte[] bytes, int end) {
    for (int i = 0; i < Math.min(end, LOOKED_AT); i++) {
      if (bytes[i] == 0) {
        return true;
      }
    }
    return false;
  }
}
