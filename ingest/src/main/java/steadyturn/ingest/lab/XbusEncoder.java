package steadyturn.ingest.lab;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.util.Arrays;

/**
 * An MTi unit that speaks Xbus: switched on it sends orientations at 100 Hz and nothing else, until
 * it is told otherwise.
 */
public final class XbusEncoder implements UnitEncoder {

  private final ByteArrayOutputStream commands = new ByteArrayOutputStream();
  private boolean isMeasuring;
  private boolean hasSamples;
  private int rateHz;

  /** A unit as it comes out of the factory. */
  public XbusEncoder() {
    powerOff();
  }

  @Override
  public void powerOff() {
    isMeasuring = true;
    hasSamples = false;
    rateHz = 100;
  }

  @Override
  public double rateHz() {
    return rateHz;
  }

  @Override
  public byte[] sample(long counter, long micros, double[] accelMps2, double[] gyroRadPerS) {
    if (!isMeasuring) {
      return new byte[0];
    }
    ByteBuffer items = ByteBuffer.allocate(80);
    items.putShort((short) 0x1020).put((byte) 2).putShort((short) counter);
    items.putShort((short) 0x1060).put((byte) 4).putInt((int) Math.round(micros / 100.0));
    items.putShort((short) 0x2010).put((byte) 16);
    items.putFloat(1).putFloat(0).putFloat(0).putFloat(0);
    if (hasSamples) {
      three(items, 0x4020, accelMps2);
      three(items, 0x8020, gyroRadPerS);
    }
    items.putShort((short) 0xE020).put((byte) 4).putInt(3);
    return message(0x36, Arrays.copyOf(items.array(), items.position()));
  }

  private static void three(ByteBuffer items, int id, double[] values) {
    items.putShort((short) id).put((byte) 12);
    for (double value : values) {
      items.putFloat((float) value);
    }
  }

  private static byte[] message(int id, byte[] data) {
    byte[] m = new byte[5 + data.length];
    m[0] = (byte) 0xFA;
    m[1] = (byte) 0xFF;
    m[2] = (byte) id;
    m[3] = (byte) data.length;
    System.arraycopy(data, 0, m, 4, data.length);
    int sum = 0;
    for (int at = 1; at < m.length; at++) {
      sum -= m[at];
    }
    m[m.length - 1] = (byte) sum;
    return m;
  }

  @Override
  public byte[] heard(byte[] bytes) {
    commands.writeBytes(bytes);
    byte[] all = commands.toByteArray();
    ByteArrayOutputStream answers = new ByteArrayOutputStream();
    int at = 0;
    while (at + 5 <= all.length && at + 5 + (all[at + 3] & 0xFF) <= all.length) {
      int length = all[at + 3] & 0xFF;
      answers.writeBytes(
          command(all[at + 2] & 0xFF, Arrays.copyOfRange(all, at + 4, at + 4 + length)));
      at += 5 + length;
    }
    commands.reset();
    commands.writeBytes(Arrays.copyOfRange(all, at, all.length));
    return answers.toByteArray();
  }

  private byte[] command(int id, byte[] data) {
    switch (id) {
      case 0x30 -> isMeasuring = false;
      case 0x10 -> isMeasuring = true;
      case 0x00 -> {
        return message(0x01, new byte[] {0x03, 0x70, 0x03, (byte) 0xF8});
      }
      case 0xC0 -> {
        if (!isMeasuring) {
          outputs(ByteBuffer.wrap(data));
        }
      }
      default -> {} // acknowledged all the same
    }
    return message(id + 1, new byte[0]);
  }

  private void outputs(ByteBuffer wished) {
    hasSamples = false;
    while (wished.remaining() >= 4) {
      boolean isAccel = (wished.getShort() & 0xFFFF) == 0x4020;
      int hz = wished.getShort() & 0xFFFF;
      hasSamples |= isAccel;
      rateHz = isAccel ? hz : rateHz;
    }
  }
}
