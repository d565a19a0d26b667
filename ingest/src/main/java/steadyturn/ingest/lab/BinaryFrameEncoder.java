package steadyturn.ingest.lab;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sensor.UnitHello;
import steadyturn.ingest.sensor.frame.BinaryFrameAdapter;
import steadyturn.ingest.sensor.frame.Cobs;

/**
 * Writes the binary frame that {@link BinaryFrameAdapter} reads, for a unit set to these ranges.
 *
 * @param accelRangeG 1 to 255
 * @param gyroRangeDegPerS 1 to 65535
 */
public record BinaryFrameEncoder(int accelRangeG, int gyroRangeDegPerS) implements UnitEncoder {

  private static final int LONGEST_TEXT = 40;

  public BinaryFrameEncoder {
    if (accelRangeG < 1 || accelRangeG > 255 || gyroRangeDegPerS < 1 || gyroRangeDegPerS > 65535) {
      throw new IllegalArgumentException(
          "ranges must fit their fields, were " + accelRangeG + " g, " + gyroRangeDegPerS);
    }
  }

  @Override
  public byte[] hello(UnitHello hello) {
    byte[] name = utf8(hello.name());
    byte[] serial = utf8(hello.serialNumber());
    ByteBuffer frame = littleEndian(9 + name.length + serial.length + 4);
    frame.put(BinaryFrameAdapter.HELLO).put((byte) 1);
    frame.putShort((short) Math.round(hello.rateHz()));
    frame.put((byte) accelRangeG).putShort((short) gyroRangeDegPerS);
    frame.put((byte) name.length).put(name);
    frame.put((byte) serial.length).put(serial);
    return finish(frame);
  }

  @Override
  public byte[] sample(long counter, long micros, double[] accelMps2, double[] gyroRadPerS) {
    ByteBuffer frame = littleEndian(BinaryFrameAdapter.SAMPLE_BYTES);
    frame.put(BinaryFrameAdapter.SAMPLE).putShort((short) counter).putInt((int) micros);
    frame.put((byte) accelRangeG).putShort((short) gyroRangeDegPerS);
    for (double value : accelMps2) {
      frame.putShort(counts(value / (accelRangeG * StandardGravity.MPS2)));
    }
    for (double value : gyroRadPerS) {
      frame.putShort(counts(value / Math.toRadians(gyroRangeDegPerS)));
    }
    return finish(frame);
  }

  private static short counts(double share) {
    double counts = Math.rint(share * BinaryFrameAdapter.COUNTS);
    return (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, counts));
  }

  private static byte[] finish(ByteBuffer frame) {
    frame.putInt(BinaryFrameAdapter.crc(frame, frame.position()));
    byte[] plain = new byte[frame.flip().limit()];
    frame.get(plain);
    byte[] stuffed = Cobs.encode(plain);
    return Arrays.copyOf(stuffed, stuffed.length + 1);
  }

  private static byte[] utf8(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return bytes.length <= LONGEST_TEXT ? bytes : Arrays.copyOf(bytes, LONGEST_TEXT);
  }

  private static ByteBuffer littleEndian(int length) {
    return ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
  }
}
