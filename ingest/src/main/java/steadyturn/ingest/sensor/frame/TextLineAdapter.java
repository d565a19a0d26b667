package steadyturn.ingest.sensor.frame;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.regex.Pattern;
import steadyturn.ingest.sensor.FrameCheck;
import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.UnitHello;

/**
 * Reads our text line, {@code time,ax,ay,az,gx,gy,gz*check}: seconds, m/s^2, rad/s. The check is
 * that of NMEA 0183 (all bytes before the star, exclusive or, two hexadecimal digits) followed by
 * four of CRC-16/CCITT-FALSE, because the former alone lets one in 256 damaged lines pass. Byte by
 * byte in docs/formats-live.md.
 */
public final class TextLineAdapter implements SensorAdapter {

  /** The adapter's name. */
  public static final String NAME = "text-line";

  static final int LONGEST_LINE = 200;
  private static final int CHECK_DIGITS = 6;
  private static final int VALUES = 7;

  /** Digits with at most one point among them, perhaps a minus before. */
  private static final Pattern NUMBER = Pattern.compile("-?([0-9]+\\.?[0-9]*|\\.[0-9]+)");

  private static final HexFormat HEX = HexFormat.of().withUpperCase();

  private final LineProtocol lines = new LineProtocol(LONGEST_LINE, TextLineAdapter::line);

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
    lines.read(bytes, sink);
  }

  private static boolean line(String line, SampleSink sink) {
    int star = line.length() - CHECK_DIGITS - 1;
    if (star < 1 || line.charAt(star) != '*') {
      return false;
    }
    String body = line.substring(0, star);
    if (!line.substring(star + 1).equals(check(body))) {
      return false;
    }
    String[] fields = body.split(",", -1);
    return fields[0].equals("hello") ? hello(fields, sink) : sample(fields, sink);
  }

  private static boolean sample(String[] fields, SampleSink sink) {
    if (fields.length != VALUES || !Arrays.stream(fields).allMatch(TextLineAdapter::isNumber)) {
      return false;
    }
    double[] v = Arrays.stream(fields).mapToDouble(Double::parseDouble).toArray();
    sink.sample(v[0], v[1], v[2], v[3], v[4], v[5], v[6]);
    return true;
  }

  private static boolean hello(String[] fields, SampleSink sink) {
    if (fields.length != 6 || !Arrays.stream(fields, 3, 6).allMatch(TextLineAdapter::isNumber)) {
      return false;
    }
    double rateHz = Double.parseDouble(fields[3]);
    double accel = Double.parseDouble(fields[4]);
    double gyro = Double.parseDouble(fields[5]);
    if (!(rateHz > 0 && accel > 0 && gyro > 0)) {
      return false;
    }
    sink.hello(new UnitHello(fields[1], fields[2], rateHz, accel, gyro));
    return true;
  }

  private static boolean isNumber(String text) {
    return NUMBER.matcher(text).matches();
  }

  /** The six hexadecimal digits behind the star. */
  public static String check(String body) {
    byte[] bytes = body.getBytes(StandardCharsets.ISO_8859_1);
    int xor = 0;
    for (byte value : bytes) {
      xor ^= value & 0xFF;
    }
    return HEX.toHexDigits((byte) xor) + HEX.toHexDigits((short) Crc16.CCITT_FALSE.of(bytes));
  }
}
