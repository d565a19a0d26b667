package steadyturn.ingest.sensor.frame;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sensor.FrameCheck;
import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.UnitHello;
import steadyturn.ingest.sensor.WrappingCounter;

/**
 * Reads our binary frame: byte-stuffed, ended by a zero, little endian, CRC-32 at its end; a sample
 * carries counter, microseconds and its ranges, so it needs nothing that came before. Byte by byte
 * in docs/formats-live.md.
 */
public final class BinaryFrameAdapter implements SensorAdapter {

  /** The adapter's name. */
  public static final String NAME = "binary-frame";

  public static final byte SAMPLE = 1;
  public static final byte HELLO = 2;
  public static final int SAMPLE_BYTES = 26;
  public static final double COUNTS = 32768;
  private static final int CRC_BYTES = 4;
  private static final int MOST_LOST = 1 << 15;
  private static final int LONGEST_FRAME = 128;

  private final CobsFrames frames = new CobsFrames(LONGEST_FRAME, this::frame);
  private final WrappingCounter counter = new WrappingCounter(16);
  private final WrappingCounter micros = new WrappingCounter(32);
  private long expected = -1;

  @Override
  public String name() {
    return NAME;
  }

  @Override
  public FrameCheck check() {
    return FrameCheck.BITS_24;
  }

  @Override
  public void read(ByteBuffer bytes, SampleSink sink) {
    frames.read(bytes, sink);
  }

  private boolean frame(ByteBuffer frame, SampleSink sink) {
    int body = frame.limit() - CRC_BYTES;
    if (body < 1 || frame.getInt(body) != crc(frame, body)) {
      return false;
    }
    return switch (frame.get(0)) {
      case SAMPLE -> frame.limit() == SAMPLE_BYTES && sample(frame, sink);
      case HELLO -> hello(frame, body, sink);
      default -> false;
    };
  }

  private boolean sample(ByteBuffer frame, SampleSink sink) {
    double accel = (frame.get(7) & 0xFF) * StandardGravity.MPS2 / COUNTS;
    double gyro = Math.toRadians(frame.getShort(8) & 0xFFFF) / COUNTS;
    countLost(frame.getShort(1) & 0xFFFF, sink);
    sink.sample(
        micros.next(frame.getInt(3) & 0xFFFFFFFFL) * 1e-6,
        frame.getShort(10) * accel,
        frame.getShort(12) * accel,
        frame.getShort(14) * accel,
        frame.getShort(16) * gyro,
        frame.getShort(18) * gyro,
        frame.getShort(20) * gyro);
    return true;
  }

  private void countLost(int number, SampleSink sink) {
    long now = counter.next(number);
    if (expected >= 0 && now > expected && now - expected < MOST_LOST) { // more is a restart
      sink.lost((int) (now - expected));
    }
    expected = now + 1;
  }

  private static boolean hello(ByteBuffer frame, int body, SampleSink sink) {
    if (body < 8) {
      return false;
    }
    int nameBytes = frame.get(7) & 0xFF;
    int serialAt = 8 + nameBytes;
    if (serialAt >= body || serialAt + 1 + (frame.get(serialAt) & 0xFF) != body) {
      return false;
    }
    double rateHz = frame.getShort(2) & 0xFFFF;
    double accel = (frame.get(4) & 0xFF) * StandardGravity.MPS2;
    double gyro = Math.toRadians(frame.getShort(5) & 0xFFFF);
    if (frame.get(1) != 1 || !(rateHz > 0 && accel > 0 && gyro > 0)) {
      return false;
    }
    String name = text(frame, 8, nameBytes);
    String serial = text(frame, serialAt + 1, body - serialAt - 1);
    sink.hello(new UnitHello(name, serial, rateHz, accel, gyro));
    return true;
  }

  private static String text(ByteBuffer frame, int from, int length) {
    byte[] bytes = new byte[length];
    frame.get(from, bytes);
    return new String(bytes, StandardCharsets.UTF_8);
  }

  /** CRC-32 of the frame's first bytes. */
  public static int crc(ByteBuffer frame, int length) {
    CRC32 crc = new CRC32();
    crc.update(frame.slice(0, length));
    return (int) crc.getValue();
  }
}
