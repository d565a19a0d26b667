package steadyturn.ingest.sensor.frame;

import java.nio.ByteBuffer;
import java.util.Arrays;

/**
 * Consistent overhead byte stuffing: bytes without any zero, so that a zero can end a frame
 * (Cheshire and Baker 1999, IEEE/ACM Transactions on Networking 7:159; reference from memory).
 */
public final class Cobs {

  private static final int LONGEST_BLOCK = 254;

  private Cobs() {}

  /** Stuffs bytes; the ending zero is not added. */
  public static byte[] encode(byte[] plain) {
    byte[] out = new byte[plain.length + plain.length / LONGEST_BLOCK + 2];
    int codeAt = 0;
    int n = 1;
    boolean isFull = false;
    for (byte value : plain) {
      if (isFull) {
        codeAt = n++;
        isFull = false;
      }
      if (value == 0) {
        out[codeAt] = (byte) (n - codeAt);
        codeAt = n++;
        continue;
      }
      out[n++] = value;
      isFull = n - codeAt == LONGEST_BLOCK + 1;
      if (isFull) {
        out[codeAt] = (byte) 0xFF;
      }
    }
    if (!isFull) {
      out[codeAt] = (byte) (n - codeAt);
    }
    return Arrays.copyOf(out, n);
  }

  /**
   * Undoes the stuffing of the bytes from..end (without the zero) into {@code plain}.
   *
   * @return how many bytes it became, -1 when the stuffing is broken or the room too small
   */
  static int decode(ByteBuffer stuffed, int from, int end, byte[] plain) {
    int n = 0;
    int at = from;
    while (at < end) {
      int code = stuffed.get(at++) & 0xFF;
      int block = code - 1;
      if (code == 0 || at + block > end || n + block + 1 > plain.length) {
        return -1;
      }
      for (int i = 0; i < block; i++) {
        plain[n++] = stuffed.get(at++);
      }
      if (code != 0xFF && at < end) {
        plain[n++] = 0;
      }
    }
    return n;
  }
}
