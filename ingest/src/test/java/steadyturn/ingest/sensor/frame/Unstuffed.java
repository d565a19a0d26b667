package steadyturn.ingest.sensor.frame;

import java.nio.ByteBuffer;
import java.util.Arrays;

/** Undoes byte stuffing whole, for tests; bytes that are not stuffed give none. */
final class Unstuffed {

  private Unstuffed() {}

  static byte[] of(byte[] stuffed) {
    byte[] plain = new byte[stuffed.length + 1];
    int length = Cobs.decode(ByteBuffer.wrap(stuffed), 0, stuffed.length, plain);
    return Arrays.copyOf(plain, Math.max(0, length));
  }
}
