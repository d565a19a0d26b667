package steadyturn.ingest.sensor.frame;

import java.nio.ByteBuffer;
import steadyturn.ingest.sample.Offered;

/**
 * The 16-bit checks that units use; each is known by what it makes of the text "123456789". Names
 * and parameters as in the public catalogue of parametrised CRC algorithms.
 */
@Offered
public enum Crc16 {
  /** 0x29B1. */
  CCITT_FALSE(0x1021, 0xFFFF, false, 0),
  /** 0x31C3. */
  XMODEM(0x1021, 0, false, 0),
  /** 0xBB3D. */
  ARC(0x8005, 0, true, 0),
  /** 0x2189. */
  KERMIT(0x1021, 0, true, 0),
  /** 0x906E. */
  X_25(0x1021, 0xFFFF, true, 0xFFFF),
  /** 0x4B37. */
  MODBUS(0x8005, 0xFFFF, true, 0);

  private final int start;
  private final boolean isReflected;
  private final int xorAtEnd;

  @SuppressWarnings("ImmutableEnumChecker") // filled at birth, never handed out
  private final int[] table = new int[256];

  Crc16(int polynomial, int start, boolean isReflected, int xorAtEnd) {
    this.start = start;
    this.isReflected = isReflected;
    this.xorAtEnd = xorAtEnd;
    for (int value = 0; value < 256; value++) {
      table[value] = isReflected ? lowFirst(polynomial, value) : highFirst(polynomial, value);
    }
  }

  private static int highFirst(int polynomial, int value) {
    int crc = value << 8;
    for (int bit = 0; bit < 8; bit++) {
      crc = (crc & 0x8000) != 0 ? (crc << 1) ^ polynomial : crc << 1;
    }
    return crc & 0xFFFF;
  }

  private static int lowFirst(int polynomial, int value) {
    int mirrored = Integer.reverse(polynomial) >>> 16;
    int crc = value;
    for (int bit = 0; bit < 8; bit++) {
      crc = (crc & 1) != 0 ? (crc >>> 1) ^ mirrored : crc >>> 1;
    }
    return crc & 0xFFFF;
  }

  /** The check of some bytes, 0 to 0xFFFF. */
  public int of(byte[] bytes) {
    return of(ByteBuffer.wrap(bytes), 0, bytes.length);
  }

  /** The check of the bytes from..end (end not included), whatever the buffer's position. */
  public int of(ByteBuffer bytes, int from, int end) {
    int crc = start;
    for (int at = from; at < end; at++) {
      int value = bytes.get(at) & 0xFF;
      crc =
          isReflected
              ? (crc >>> 8) ^ table[(crc ^ value) & 0xFF]
              : ((crc << 8) & 0xFFFF) ^ table[(crc >>> 8) ^ value];
    }
    return crc ^ xorAtEnd;
  }
}
