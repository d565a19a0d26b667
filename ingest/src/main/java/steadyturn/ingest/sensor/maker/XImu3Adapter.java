package steadyturn.ingest.sensor.maker;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.nio.ByteBuffer;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sensor.FrameCheck;
import steadyturn.ingest.sensor.KnownUnit;
import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.UnitLink;
import steadyturn.ingest.sensor.UnitOptions;
import steadyturn.ingest.sensor.frame.SlipFrames;

/**
 * Reads x-IMU3 units, live or from their log files, in text and binary messages. By its manual
 * (xioTechnologies/x-IMU3-User-Manual@8ee5c0c8, Sections/communicationProtocol.tex, ranges in
 * technicalSpecification.tex): each message ends with LF, binary ones are stuffed as in SLIP;
 * inertial messages carry microseconds, deg/s and g. A message of a unit behind a multiplexer
 * begins with {@code ^} and a letter, A for the first (by the public firmware headers; nested ones
 * are not read). Nothing checks a message: what is out of every range is passed over, and no more
 * can be known.
 *
 * <p>Set up are the rate, binary messages, and that no orientation messages fill the line.
 */
public final class XImu3Adapter implements SensorAdapter {

  /** The adapter's name. */
  public static final String NAME = "x-imu3";

  /** Its stuffing. */
  public static final SlipFrames.Marks MARKS = new SlipFrames.Marks(0x0A, 0xDB, 0xDC, 0xDD);

  private static final double SAMPLE_RATE_HZ = 400;
  private static final KnownUnit RANGES = KnownUnit.ofRanges(24, 2000);

  /** Calibration may show a little more than the range; a damaged number mostly far more. */
  private static final double BEYOND_RANGE = 1.25;

  private static final int LONGEST_MESSAGE = 600;
  private static final int INERTIAL = 0x80 + 'I';
  private static final int INERTIAL_BYTES = 9 + 24;
  private static final int PAUSE_MS = 30;

  /** Kinds of other messages, and how many numbers each has. */
  private static final Map<Character, Integer> OTHERS =
      Map.of('M', 3, 'Q', 4, 'R', 9, 'A', 3, 'L', 7, 'E', 7, 'U', 4, 'H', 3, 'T', 1, 'W', 2);

  private static final String TEXTS = "SNF";
  private static final Pattern NUMBERS = Pattern.compile("([A-Z]),([0-9]{1,18})(,-?\\d+\\.\\d+)+");
  private static final Pattern SERIAL =
      Pattern.compile("\"(?:sn|serial_number)\":\"([^\"]{1,40})\"");
  private static final Pattern DIVISOR =
      Pattern.compile("\"inertial_message_rate_divisor\":([1-9][0-9]{0,3})");

  private final SlipFrames frames = new SlipFrames(MARKS, LONGEST_MESSAGE, this::frame);
  private final Map<Integer, KnownUnit> known = new HashMap<>();
  private String prefix = "";
  private int rateHz = 400;
  private boolean isBinary = true;

  @Override
  public String name() {
    return NAME;
  }

  @Override
  public FrameCheck check() {
    return FrameCheck.NONE;
  }

  @Override
  public List<Integer> bauds() {
    return List.of(115_200, 921_600);
  }

  @Override
  public void choose(UnitOptions options) {
    rateHz = options.oneOf("rate", 400, 200, 100, 50);
    isBinary = options.oneOf("messages", "binary", "text").equals("binary");
    prefix = options.unit() == 0 ? "" : "^" + (char) ('A' + options.unit() - 1);
  }

  @Override
  public void configure(UnitLink link) {
    command(link, "\"serial_number\":null");
    command(link, "\"binary_mode_enabled\":" + isBinary);
    command(link, "\"ahrs_message_rate_divisor\":0");
    command(link, "\"inertial_message_rate_divisor\":" + (int) (SAMPLE_RATE_HZ / rateHz));
    command(link, "\"apply\":null");
  }

  private void command(UnitLink link, String inside) {
    link.send((prefix + "{" + inside + "}\n").getBytes(ISO_8859_1), PAUSE_MS);
  }

  @Override
  public void read(ByteBuffer bytes, SampleSink sink) {
    frames.read(bytes, sink);
  }

  private boolean frame(ByteBuffer f, SampleSink sink) {
    int number = f.limit() > 2 && f.get(0) == '^' ? f.get(1) - 'A' + 1 : 0;
    if (number < 0 || number > 26) {
      return false;
    }
    ByteBuffer message = f.slice(number == 0 ? 0 : 2, f.limit() - (number == 0 ? 0 : 2));
    message.order(f.order());
    SampleSink unit = number == 0 ? sink : sink.unit(number);
    int first = message.get(0) & 0xFF;
    if (first == INERTIAL) {
      return message.limit() == INERTIAL_BYTES && binary(message, number, unit);
    }
    return first > 0x80
        ? isOther((char) (first - 0x80), message)
        : text(ISO_8859_1.decode(message).toString(), number, unit);
  }

  private boolean binary(ByteBuffer m, int number, SampleSink unit) {
    double[] v = new double[6];
    for (int i = 0; i < v.length; i++) {
      v[i] = m.getFloat(9 + 4 * i);
    }
    long micros = m.getLong(1);
    return micros >= 0 && sample(micros, v, number, unit);
  }

  private static boolean isOther(char kind, ByteBuffer m) {
    int numbers = OTHERS.getOrDefault(kind, -1);
    boolean isBattery = kind == 'B' && (m.limit() == 9 + 12 || m.limit() == 9 + 16);
    return isBattery || m.limit() == 9 + 4 * numbers || (TEXTS.indexOf(kind) >= 0 && m.limit() > 9);
  }

  private boolean text(String line, int number, SampleSink unit) {
    if (line.startsWith("{")) {
      return line.endsWith("}") && answer(line, number, unit);
    }
    String[] parts = line.split(",", -1);
    char kind = line.charAt(0);
    if (TEXTS.indexOf(kind) >= 0) {
      return parts.length > 2 && parts[0].length() == 1;
    }
    if (!NUMBERS.matcher(line).matches()) {
      return false;
    }
    if (kind != 'I') {
      return OTHERS.containsKey(kind) || kind == 'B';
    }
    double[] v = new double[6];
    for (int i = 0; i < v.length && parts.length == 8; i++) {
      v[i] = Double.parseDouble(parts[2 + i]);
    }
    return parts.length == 8 && sample(Long.parseLong(parts[1]), v, number, unit);
  }

  private boolean answer(String json, int number, SampleSink unit) {
    Matcher serial = SERIAL.matcher(json);
    Matcher divisor = DIVISOR.matcher(json);
    KnownUnit before = known.getOrDefault(number, RANGES);
    KnownUnit after = serial.find() ? before.withSerialNumber(serial.group(1)) : before;
    after =
        divisor.find()
            ? after.withRateHz(SAMPLE_RATE_HZ / Integer.parseInt(divisor.group(1)))
            : after;
    known.put(number, after);
    unit.known(after);
    return true;
  }

  private boolean sample(long micros, double[] v, int number, SampleSink unit) {
    for (int axis = 0; axis < 3; axis++) {
      boolean isTurn = Math.abs(v[axis]) <= 2000 * BEYOND_RANGE; // not true of a NaN
      boolean isForce = Math.abs(v[3 + axis]) <= 24 * BEYOND_RANGE;
      if (!isTurn || !isForce) {
        return false;
      }
    }
    unit.known(known.getOrDefault(number, RANGES));
    unit.sample(
        micros * 1e-6,
        v[3] * StandardGravity.MPS2,
        v[4] * StandardGravity.MPS2,
        v[5] * StandardGravity.MPS2,
        Math.toRadians(v[0]),
        Math.toRadians(v[1]),
        Math.toRadians(v[2]));
    return true;
  }
}
