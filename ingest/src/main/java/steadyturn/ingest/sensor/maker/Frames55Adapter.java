package steadyturn.ingest.sensor.maker;

import java.nio.ByteBuffer;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sensor.FrameCheck;
import steadyturn.ingest.sensor.KnownUnit;
import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.UnitLink;
import steadyturn.ingest.sensor.UnitOptions;
import steadyturn.ingest.sensor.frame.LengthFrames;

/**
 * Reads low-cost units whose frames begin with 0x55, in both framings: 11 bytes a quantity with a
 * sum at the end (serial line), and 20 bytes {@code 55 61} with all of them and no check (Bluetooth
 * models), where the next frame must begin right behind. Little endian, 16 g and 2000 deg/s in
 * 32768. By the descriptions ElettraSciComp/witmotion_IMU_QT@f86b70fa doc/protocol.md and
 * include/witmotion/types.h, and RGu0/WT901@9ccb834c docs/protocol.md, with what was measured there
 * on a unit. The order of the bytes in the time frame (year, month, day, hour, minute, second,
 * milliseconds in two) is from memory. The second framing carries no time, the first one only where
 * it is told to: samples without one come by their arrival.
 *
 * <p>Set up are the rate (out of the factory it is 10 Hz), the bandwidth (20 Hz there, too slow for
 * a swing) and, on a serial line, which frames are sent and, where asked, the baud rate. The
 * settings are not saved: they are gone when the unit is switched off.
 */
public final class Frames55Adapter implements SensorAdapter {

  /** The adapter's name. */
  public static final String NAME = "frames-55";

  private static final double RANGE_G = 16;
  private static final double RANGE_DEG_PER_S = 2000;
  private static final double ACCEL_MPS2 = RANGE_G * StandardGravity.MPS2 / 32768;
  private static final double GYRO_RAD_PER_S = Math.toRadians(RANGE_DEG_PER_S) / 32768;

  static final int SHORT_BYTES = 11;
  static final int LONG_BYTES = 20;
  private static final int TIME = 0x50;
  private static final int ACCEL = 0x51;
  private static final int GYRO = 0x52;
  private static final int LAST_SHORT = 0x5F;
  private static final int ALL = 0x61;
  private static final int REGISTERS = 0x71;

  private static final int MAC = 0x66;
  private static final int PAUSE_MS = 120;

  /** A unit that was told to send times and sent so many samples without one has none. */
  private static final int MOST_UNTIMED = 50;

  private static final Map<String, Integer> RATE_CODES =
      Map.of("200", 0x0B, "100", 0x09, "50", 0x08, "20", 0x07, "10", 0x06);
  private static final Map<String, Integer> BANDWIDTH_CODES =
      Map.of("256", 0, "188", 1, "98", 2, "42", 3, "20", 4);
  private static final Map<String, Integer> BAUD_CODES =
      Map.of("9600", 2, "57600", 5, "115200", 6, "230400", 7, "460800", 8, "921600", 9);

  private final LengthFrames frames = new LengthFrames(new Head(), LONG_BYTES, this::frame);
  private KnownUnit known = KnownUnit.ofRanges(RANGE_G, RANGE_DEG_PER_S);
  private double timeS = Double.NaN;
  private boolean hasClock;
  private int untimedToDrop = 1; // only from the second pair on it is known that no times come
  private Optional<double[]> accel = Optional.empty();
  private boolean isOfLongFrames;
  private String rate = "200";
  private String bandwidth = "98";
  private String baud = "";

  /** Knows the two framings. */
  private static final class Head implements LengthFrames.Head {
    @Override
    public int length(ByteBuffer bytes, int at) {
      if (bytes.get(at) != 0x55) {
        return NO_FRAME;
      }
      if (at + 1 >= bytes.limit()) {
        return NOT_YET;
      }
      int kind = bytes.get(at + 1) & 0xFF;
      boolean isLong = kind == ALL || kind == REGISTERS;
      boolean isShort = kind >= TIME && kind <= LAST_SHORT;
      return isLong ? LONG_BYTES : isShort ? SHORT_BYTES : NO_FRAME;
    }

    @Override
    public boolean isWeak(ByteBuffer bytes, int at) {
      return (bytes.get(at + 1) & 0xFF) > LAST_SHORT;
    }
  }

  @Override
  public String name() {
    return NAME;
  }

  /** That of the serial framing; the other one has none. */
  @Override
  public FrameCheck check() {
    return isOfLongFrames ? FrameCheck.NONE : FrameCheck.BITS_8;
  }

  @Override
  public List<Integer> bauds() {
    return List.of(115_200, 9_600, 921_600, 460_800, 230_400, 57_600, 38_400, 19_200);
  }

  @Override
  public void choose(UnitOptions options) {
    rate = options.oneOf("rate", "200", "100", "50", "20", "10");
    bandwidth = options.oneOf("bandwidth", "98", "256", "188", "42", "20");
    baud = options.oneOf("baud", "", "9600", "57600", "115200", "230400", "460800", "921600");
  }

  @Override
  public void configure(UnitLink link) {
    register(link, 0x69, 0xB588); // unlocks
    if (!isOfLongFrames) {
      if (BAUD_CODES.containsKey(baud)) {
        register(link, 0x04, BAUD_CODES.getOrDefault(baud, 0)); // sets the rate too, so it is first
        register(link, 0x69, 0xB588);
      }
      register(link, 0x02, 0b111); // time, acceleration, rate
      untimedToDrop = MOST_UNTIMED;
    }
    register(link, 0x1F, BANDWIDTH_CODES.getOrDefault(bandwidth, 2));
    register(link, 0x03, RATE_CODES.getOrDefault(rate, 0x0B));
    if (isOfLongFrames) {
      register(link, 0x27, MAC); // asks for the unit's own address
    }
  }

  private static void register(UnitLink link, int register, int value) {
    byte[] command = {
      (byte) 0xFF, (byte) 0xAA, (byte) register, (byte) value, (byte) (value >>> 8)
    };
    link.send(command, PAUSE_MS);
  }

  @Override
  public void read(ByteBuffer bytes, SampleSink sink) {
    frames.read(bytes, sink);
  }

  private boolean frame(ByteBuffer f, SampleSink sink) {
    int kind = f.get(1) & 0xFF;
    if (f.limit() == LONG_BYTES) {
      isOfLongFrames = true;
      if (kind == REGISTERS) {
        registers(f, sink);
      } else {
        tell(three(f, 2, ACCEL_MPS2), three(f, 8, GYRO_RAD_PER_S), Double.NaN, sink);
      }
      return true;
    }
    return f.get(SHORT_BYTES - 1) == sum(f) && quantity(kind, f, sink);
  }

  /** The sum of all bytes before the last. */
  private static byte sum(ByteBuffer frame) {
    int sum = 0;
    for (int i = 0; i < SHORT_BYTES - 1; i++) {
      sum += frame.get(i);
    }
    return (byte) sum;
  }

  /** A sample is an acceleration and a rate in one piece, after the time where one is sent. */
  private boolean quantity(int kind, ByteBuffer f, SampleSink sink) {
    Optional<double[]> before = frames.isUnbroken() ? accel : Optional.empty();
    accel = Optional.empty();
    timeS = frames.isUnbroken() || kind == TIME ? timeS : Double.NaN;
    if (kind == TIME) {
      timeS = timeS(f);
      hasClock |= !Double.isNaN(timeS);
    } else if (kind == ACCEL) {
      accel = Optional.of(three(f, 2, ACCEL_MPS2));
    } else if (kind == GYRO && before.isPresent()) {
      boolean isUntimed = Double.isNaN(timeS);
      boolean isOfUse = !isUntimed || (!hasClock && untimedToDrop == 0);
      untimedToDrop -= isUntimed && untimedToDrop > 0 ? 1 : 0;
      if (isOfUse) {
        tell(before.get(), three(f, 2, GYRO_RAD_PER_S), timeS, sink);
      }
      timeS = Double.NaN;
    }
    return true;
  }

  private void tell(double[] a, double[] g, double atS, SampleSink sink) {
    sink.known(known);
    sink.sample(atS, a[0], a[1], a[2], g[0], g[1], g[2]);
  }

  private static double[] three(ByteBuffer f, int at, double scale) {
    return new double[] {
      f.getShort(at) * scale, f.getShort(at + 2) * scale, f.getShort(at + 4) * scale
    };
  }

  /** The unit's calendar as seconds; NaN where it shows no day that exists. */
  private static double timeS(ByteBuffer f) {
    try {
      LocalDateTime minute =
          LocalDateTime.of(2000 + f.get(2), f.get(3), f.get(4), f.get(5), f.get(6), f.get(7));
      return minute.toEpochSecond(ZoneOffset.UTC) + (f.getShort(8) & 0xFFFF) * 1e-3;
    } catch (DateTimeException e) {
      return Double.NaN;
    }
  }

  private void registers(ByteBuffer f, SampleSink sink) {
    if (f.getShort(2) == MAC) {
      byte[] address = new byte[6];
      for (int i = 0; i < address.length; i++) {
        address[i] = f.get(9 - i); // the last byte comes first
      }
      known = known.withSerialNumber(HexFormat.of().withUpperCase().formatHex(address));
      sink.known(known);
    }
  }
}
