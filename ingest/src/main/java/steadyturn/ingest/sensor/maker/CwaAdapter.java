package steadyturn.ingest.sensor.maker;

import java.nio.ByteBuffer;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.OptionalDouble;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sensor.FrameCheck;
import steadyturn.ingest.sensor.KnownUnit;
import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.frame.LengthFrames;

/**
 * Reads the files {@code .cwa} of AX6 loggers: a head of 1024 bytes, then blocks of 512 with
 * ranges, rate, a time of day for one of their samples, and a sum that makes the block's words
 * zero. By the description openmovementproject/openmovement@4abb1202 Docs/ax3/cwa.h. Rate samples
 * stand before accelerations. Blocks of the model without a gyroscope give no sample.
 *
 * <p>Between the times of day the samples are laid evenly, and a block goes on where the one before
 * it ended, as long as that lies within {@link #SAME_RUN_S} of its own time.
 */
public final class CwaAdapter implements SensorAdapter {

  /** The adapter's name. */
  public static final String NAME = "ax6-cwa";

  private static final int HEAD_BYTES = 1024;
  private static final int BLOCK_BYTES = 512;
  private static final int SAMPLES_AT = 30;
  private static final int SAMPLE_BYTES = 12;
  private static final int MOST_SAMPLES = 40;

  /** A block whose time lies farther from the end of the one before begins a new run, s. */
  private static final double SAME_RUN_S = 0.1;

  private final LengthFrames frames = new LengthFrames(new Head(), HEAD_BYTES, this::frame);
  private String serialNumber = "";
  private boolean hasBegun;
  private double endS;
  private long sequence;

  /** Knows head and blocks by their first four bytes. */
  private static final class Head implements LengthFrames.Head {
    @Override
    public int length(ByteBuffer bytes, int at) {
      byte first = bytes.get(at);
      if (first != 'M' && first != 'A') {
        return NO_FRAME;
      }
      if (at + 4 > bytes.limit()) {
        return NOT_YET;
      }
      int length = 4 + (bytes.get(at + 2) & 0xFF) + (bytes.get(at + 3) & 0xFF) * 256;
      boolean isHead = first == 'M' && bytes.get(at + 1) == 'D' && length == HEAD_BYTES;
      boolean isBlock = first == 'A' && bytes.get(at + 1) == 'X' && length == BLOCK_BYTES;
      return isHead || isBlock ? length : NO_FRAME;
    }

    @Override
    public boolean isWeak(ByteBuffer bytes, int at) {
      return bytes.get(at) == 'M'; // has no sum
    }
  }

  @Override
  public String name() {
    return NAME;
  }

  @Override
  public FrameCheck check() {
    return FrameCheck.BITS_16;
  }

  /** A file comes through no port. */
  @Override
  public List<Integer> bauds() {
    return List.of(USUAL_BAUD);
  }

  @Override
  public void read(ByteBuffer bytes, SampleSink sink) {
    frames.read(bytes, sink);
  }

  private boolean frame(ByteBuffer f, SampleSink sink) {
    if (f.limit() == HEAD_BYTES) {
      int upper = f.getShort(11) & 0xFFFF;
      long number = (f.getShort(5) & 0xFFFF) + (upper == 0xFFFF ? 0L : (long) upper << 16);
      serialNumber = Long.toString(number);
      return true;
    }
    int words = 0;
    for (int at = 0; at < BLOCK_BYTES; at += 2) {
      words += f.getShort(at);
    }
    return (words & 0xFFFF) == 0 && block(f, sink);
  }

  private boolean block(ByteBuffer f, SampleSink sink) {
    int count = f.getShort(28) & 0xFFFF;
    int scales = (f.getShort(18) & 0xFFFF) >>> 10;
    int rateCode = f.get(24) & 0x0F;
    if (f.get(25) != 0x62 || count > MOST_SAMPLES || scales >>> 3 == 0 || (scales & 7) == 0) {
      return f.get(25) != 0x62; // without a gyroscope: understood, but of no use
    }
    double rateHz = 3200.0 / (1 << (15 - rateCode));
    double beginS = beginS(f, rateHz);
    if (Double.isNaN(beginS)) {
      return false;
    }
    double accelPerCount = StandardGravity.MPS2 / (1 << (8 + (scales >>> 3)));
    double gyroDegPerS = 8000.0 / (1 << (scales & 7));
    sink.known(
        new KnownUnit(
            serialNumber,
            OptionalDouble.of(rateHz),
            accelPerCount * 32768,
            Math.toRadians(gyroDegPerS)));
    countLost(f, count, sink);
    double gyroPerCount = Math.toRadians(gyroDegPerS) / 32768;
    boolean isSameRun = hasBegun && Math.abs(beginS - endS) < SAME_RUN_S;
    double fromS = isSameRun ? endS : beginS;
    double toS = beginS + count / rateHz;
    for (int i = 0; i < count; i++) {
      int at = SAMPLES_AT + i * SAMPLE_BYTES;
      sink.sample(
          fromS + i * (toS - fromS) / count,
          f.getShort(at + 6) * accelPerCount,
          f.getShort(at + 8) * accelPerCount,
          f.getShort(at + 10) * accelPerCount,
          f.getShort(at) * gyroPerCount,
          f.getShort(at + 2) * gyroPerCount,
          f.getShort(at + 4) * gyroPerCount);
    }
    endS = toS;
    hasBegun = true;
    return true;
  }

  private void countLost(ByteBuffer f, int count, SampleSink sink) {
    long now = f.getInt(10) & 0xFFFFFFFFL;
    if (hasBegun && now > sequence + 1 && now - sequence < MOST_SAMPLES * MOST_SAMPLES) {
      sink.lost((int) (now - sequence - 1) * count);
    }
    sequence = now;
  }

  /**
   * Time of day of the block's first sample, s. The fraction of a second belongs to the sample of
   * the whole second and as many later as it is long; that the offset was lessened by those is from
   * memory, and makes the blocks of a recorded file follow each other.
   */
  private static double beginS(ByteBuffer f, double rateHz) {
    int packed = f.getInt(14);
    int fraction = f.getShort(4) & 0xFFFF;
    double partS = (fraction & 0x8000) == 0 ? 0 : (fraction & 0x7FFF) / 32768.0;
    try {
      LocalDateTime time =
          LocalDateTime.of(
              2000 + (packed >>> 26),
              packed >>> 22 & 0x0F,
              packed >>> 17 & 0x1F,
              packed >>> 12 & 0x1F,
              packed >>> 6 & 0x3F,
              packed & 0x3F);
      double ofSample = f.getShort(26) + Math.floor(partS * rateHz);
      return time.toEpochSecond(ZoneOffset.UTC) + partS - ofSample / rateHz;
    } catch (DateTimeException e) {
      return Double.NaN;
    }
  }
}
