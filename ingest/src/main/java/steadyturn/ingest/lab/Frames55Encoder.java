package steadyturn.ingest.lab;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Map;
import steadyturn.ingest.sample.StandardGravity;

/**
 * A unit whose frames begin with 0x55, in either framing: switched on it sends at 10 Hz, without
 * the time, until it is told otherwise.
 */
public final class Frames55Encoder implements UnitEncoder {

  private static final int COMMAND_BYTES = 5;
  private static final Map<Integer, Integer> RATES =
      Map.of(0x06, 10, 0x07, 20, 0x08, 50, 0x09, 100, 0x0B, 200);
  private static final LocalDateTime BEGAN = LocalDateTime.of(2026, 1, 31, 23, 59, 30);

  private final boolean isLong;
  private final ByteArrayOutputStream commands = new ByteArrayOutputStream();
  private int rateHz;
  private int frames;
  private boolean isLocked;

  /**
   * A unit as it comes out of the factory.
   *
   * @param isLong whether it sends the framing of 20 bytes
   */
  public Frames55Encoder(boolean isLong) {
    this.isLong = isLong;
    powerOff();
  }

  @Override
  public void powerOff() {
    rateHz = 10;
    frames = 0b11110;
    isLocked = true;
  }

  @Override
  public double rateHz() {
    return rateHz;
  }

  @Override
  public byte[] sample(long counter, long micros, double[] accelMps2, double[] gyroRadPerS) {
    ByteBuffer out = ByteBuffer.allocate(64).order(ByteOrder.LITTLE_ENDIAN);
    if (isLong) {
      out.put((byte) 0x55).put((byte) 0x61);
      quantity(out, accelMps2, 16 * StandardGravity.MPS2);
      quantity(out, gyroRadPerS, Math.toRadians(2000));
      out.putShort((short) 1).putShort((short) 2).putShort((short) 3);
    } else {
      time(out, micros);
      framed(out, 0x51, accelMps2, 16 * StandardGravity.MPS2);
      framed(out, 0x52, gyroRadPerS, Math.toRadians(2000));
      framed(out, 0x53, new double[3], 1);
    }
    byte[] bytes = new byte[out.position()];
    out.flip().get(bytes);
    return bytes;
  }

  private void time(ByteBuffer out, long micros) {
    if ((frames & 1) == 0) {
      return;
    }
    long ms = Math.round(micros / 1000.0);
    LocalDateTime now = BEGAN.plusNanos(1_000_000 * ms);
    int from = out.position();
    out.put((byte) 0x55).put((byte) 0x50).put((byte) (now.getYear() - 2000));
    out.put((byte) now.getMonthValue()).put((byte) now.getDayOfMonth());
    out.put((byte) now.getHour()).put((byte) now.getMinute()).put((byte) now.getSecond());
    out.putShort((short) Math.floorMod(now.toInstant(ZoneOffset.UTC).toEpochMilli(), 1000L));
    finish(out, from);
  }

  private void framed(ByteBuffer out, int kind, double[] three, double range) {
    if ((frames >>> (kind - 0x50) & 1) == 0) {
      return;
    }
    int from = out.position();
    out.put((byte) 0x55).put((byte) kind);
    quantity(out, three, range);
    out.putShort((short) 2500);
    finish(out, from);
  }

  private static void quantity(ByteBuffer out, double[] three, double range) {
    for (double value : three) {
      double counts = Math.rint(value / range * 32768);
      out.putShort((short) Math.max(-32768, Math.min(32767, counts)));
    }
  }

  private static void finish(ByteBuffer out, int from) {
    int sum = 0;
    for (int at = from; at < out.position(); at++) {
      sum += out.get(at) & 0xFF;
    }
    out.put((byte) sum);
  }

  @Override
  public byte[] heard(byte[] bytes) {
    commands.writeBytes(bytes);
    ByteBuffer all = ByteBuffer.wrap(commands.toByteArray()).order(ByteOrder.LITTLE_ENDIAN);
    ByteArrayOutputStream answers = new ByteArrayOutputStream();
    while (all.remaining() >= COMMAND_BYTES) {
      boolean begins = all.get() == (byte) 0xFF && all.get(all.position()) == (byte) 0xAA;
      if (begins) {
        all.get();
        answers.writeBytes(register(all.get() & 0xFF, all.getShort() & 0xFFFF));
      }
    }
    commands.reset();
    while (all.hasRemaining()) {
      commands.write(all.get());
    }
    return answers.toByteArray();
  }

  private byte[] register(int register, int value) {
    if (register == 0x69) {
      isLocked = value != 0xB588;
    } else if (register == 0x27 && isLong) {
      ByteBuffer answer = ByteBuffer.allocate(20).order(ByteOrder.LITTLE_ENDIAN);
      answer.put((byte) 0x55).put((byte) 0x71).putShort((short) value);
      answer.put(new byte[] {0x47, 0x11, 0x1A, (byte) 0x90, 0x08, (byte) 0xFD});
      return answer.array();
    } else if (!isLocked && register == 0x03) {
      rateHz = RATES.getOrDefault(value, rateHz);
    } else if (!isLocked && register == 0x02) {
      frames = value;
    }
    return new byte[0];
  }
}
