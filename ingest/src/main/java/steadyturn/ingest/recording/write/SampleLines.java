package steadyturn.ingest.recording.write;

import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Writes samples as lines of a motion table: time, accelerometer x y z, gyroscope x y z. Time is
 * rounded to 1e-6 s, acceleration to 1e-5 m/s^2, rate to 1e-6 rad/s: a hundredth or less of what
 * the units themselves resolve. A lost value becomes {@code n/a}.
 */
public final class SampleLines implements Closeable {

  private static final int TIME_DECIMALS = 6;
  private static final int ACCEL_DECIMALS = 5;
  private static final int GYRO_DECIMALS = 6;
  private static final double[] SCALE = {1, 10, 1e2, 1e3, 1e4, 1e5, 1e6};
  private static final double LARGEST = 1e15;
  private static final byte[] MISSING = {'n', '/', 'a'};

  private final OutputStream out;
  private byte[] line = new byte[256];
  private int length;

  /** Writes to a stream, which should be buffered; closing this closes it. */
  public SampleLines(OutputStream out) {
    this.out = out;
  }

  /**
   * Writes one sample.
   *
   * @param latencyS seconds since the table's first sample
   * @param accelMps2 x, y, z in m/s^2
   * @param gyroRadPerS x, y, z in rad/s
   */
  public void write(double latencyS, double[] accelMps2, double[] gyroRadPerS) throws IOException {
    length = 0;
    number(latencyS, TIME_DECIMALS, '\t');
    for (int axis = 0; axis < 3; axis++) {
      number(accelMps2[axis], ACCEL_DECIMALS, '\t');
    }
    for (int axis = 0; axis < 3; axis++) {
      number(gyroRadPerS[axis], GYRO_DECIMALS, axis < 2 ? '\t' : '\n');
    }
    out.write(line, 0, length);
  }

  /** Hands everything written so far to the operating system. */
  public void flush() throws IOException {
    out.flush();
  }

  @Override
  public void close() throws IOException {
    out.close();
  }

  private void number(double value, int decimals, char stop) {
    if (line.length - length < 64) {
      line = Arrays.copyOf(line, 2 * line.length);
    }
    double scaled = Math.rint(value * SCALE[decimals]);
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      text(MISSING);
    } else if (Math.abs(scaled) >= LARGEST) {
      text(
          new BigDecimal(value)
              .setScale(decimals, RoundingMode.HALF_EVEN)
              .toPlainString()
              .getBytes(StandardCharsets.US_ASCII));
    } else {
      digits((long) scaled, decimals);
    }
    line[length++] = (byte) stop;
  }

  private void text(byte[] bytes) {
    if (line.length - length <= bytes.length) {
      line = Arrays.copyOf(line, line.length + bytes.length + 64);
    }
    System.arraycopy(bytes, 0, line, length, bytes.length);
    length += bytes.length;
  }

  private void digits(long scaled, int decimals) {
    if (scaled < 0) {
      line[length++] = '-';
    }
    long rest = Math.abs(scaled);
    int count = decimals + 1;
    for (long t = rest / (long) SCALE[decimals]; t >= 10; t /= 10) {
      count++;
    }
    int at = length + count;
    for (int i = 0; i <= count; i++) {
      if (i == decimals) {
        line[at--] = '.';
      } else {
        line[at--] = (byte) ('0' + rest % 10);
        rest /= 10;
      }
    }
    length += count + 1;
  }
}
