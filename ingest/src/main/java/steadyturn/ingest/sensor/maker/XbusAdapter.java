package steadyturn.ingest.sensor.maker;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sensor.FrameCheck;
import steadyturn.ingest.sensor.KnownUnit;
import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.UnitLink;
import steadyturn.ingest.sensor.UnitOptions;
import steadyturn.ingest.sensor.WrappingCounter;
import steadyturn.ingest.sensor.frame.LengthFrames;

/**
 * Reads Xbus messages of MTi units: {@code FA FF}, message, length, data, and a byte that makes the
 * sum of all after the first zero; big endian. Samples are MTData2 messages of items (identifier,
 * length, value). By recorded messages with their decoded values and the commands that set them up
 * (Scottapotamas/xsens-mti@2d29bb8d); the clock of 10 kHz and the meaning of an identifier's last
 * digit (0 float, 3 double) are from memory. An item of another number format gives no sample.
 *
 * <p>Set up are the rate and that packet counter, time, acceleration and rate of turn are sent. The
 * ranges differ from model to model and are not in the messages: give them, {@code
 * accel-range=16,gyro-range=2000}, so that a movement beyond them is seen.
 */
public final class XbusAdapter implements SensorAdapter {

  /** The adapter's name. */
  public static final String NAME = "xbus";

  private static final int LONGEST_MESSAGE = 1024;
  private static final int DATA = 0x36;
  private static final int DEVICE_ID = 0x01;
  private static final int PACKET_COUNTER = 0x1020;
  private static final int TIME = 0x1060;
  private static final int ACCELERATION = 0x4020;
  private static final int RATE_OF_TURN = 0x8020;
  private static final int STATUS = 0xE020;

  /** The identifier without number format and axes of the world. */
  private static final int WHAT = 0xFFF0;

  private static final double CLOCK_HZ = 10_000;
  private static final int MOST_LOST = 1 << 15;
  private static final int PAUSE_MS = 150;
  private static final int EVERY_PACKET = 0xFFFF;

  private final LengthFrames frames =
      new LengthFrames(XbusAdapter::length, LONGEST_MESSAGE, this::frame);
  private final WrappingCounter clock = new WrappingCounter(32);
  private final WrappingCounter packets = new WrappingCounter(16);
  private long expected = -1;
  private KnownUnit known = KnownUnit.NOTHING;
  private int rateHz = 400;

  @Override
  public String name() {
    return NAME;
  }

  @Override
  public FrameCheck check() {
    return FrameCheck.BITS_8;
  }

  @Override
  public List<Integer> bauds() {
    return List.of(115_200, 921_600, 460_800, 230_400, 2_000_000);
  }

  @Override
  public void choose(UnitOptions options) {
    rateHz = (int) options.number("rate", 400, 1, 2000);
    double accelG = options.number("accel-range", Double.POSITIVE_INFINITY, 1, 400);
    double gyro = options.number("gyro-range", Double.POSITIVE_INFINITY, 100, 4000);
    known = KnownUnit.ofRanges(accelG, gyro);
  }

  @Override
  public void configure(UnitLink link) {
    link.send(message(0x30), PAUSE_MS); // to configuration
    link.send(message(0x00), PAUSE_MS); // asks for the device's number
    ByteBuffer outputs = ByteBuffer.allocate(20);
    for (int item : new int[] {PACKET_COUNTER, TIME, ACCELERATION, RATE_OF_TURN, STATUS}) {
      boolean isMeasured = item == ACCELERATION || item == RATE_OF_TURN;
      outputs.putShort((short) item).putShort((short) (isMeasured ? rateHz : EVERY_PACKET));
    }
    link.send(message(0xC0, outputs.array()), PAUSE_MS);
    link.send(message(0x10), PAUSE_MS); // to measurement
  }

  /** A whole message with its check. */
  public static byte[] message(int id, byte... data) {
    boolean isLong = data.length > 254;
    ByteBuffer m = ByteBuffer.allocate(5 + data.length + (isLong ? 2 : 0));
    m.put((byte) 0xFA).put((byte) 0xFF).put((byte) id);
    if (isLong) {
      m.put((byte) 0xFF).putShort((short) data.length);
    } else {
      m.put((byte) data.length);
    }
    m.put(data);
    m.put((byte) -sum(m, m.position()));
    return m.array();
  }

  /** Sum of the bytes after the first. */
  private static int sum(ByteBuffer m, int end) {
    int sum = 0;
    for (int i = 1; i < end; i++) {
      sum += m.get(i);
    }
    return sum;
  }

  private static int length(ByteBuffer bytes, int at) {
    int there = bytes.limit() - at;
    if (bytes.get(at) != (byte) 0xFA || (there > 1 && bytes.get(at + 1) != (byte) 0xFF)) {
      return LengthFrames.Head.NO_FRAME;
    }
    boolean isLong = there > 3 && bytes.get(at + 3) == (byte) 0xFF;
    if (there < (isLong ? 6 : 4)) {
      return LengthFrames.Head.NOT_YET;
    }
    return isLong
        ? 7 + ((bytes.get(at + 4) & 0xFF) << 8 | (bytes.get(at + 5) & 0xFF))
        : 5 + (bytes.get(at + 3) & 0xFF);
  }

  @Override
  public void read(ByteBuffer bytes, SampleSink sink) {
    frames.read(bytes, sink);
  }

  private boolean frame(ByteBuffer m, SampleSink sink) {
    if ((sum(m, m.limit()) & 0xFF) != 0) {
      return false;
    }
    m.order(ByteOrder.BIG_ENDIAN);
    int head = m.get(3) == (byte) 0xFF ? 6 : 4;
    ByteBuffer data = m.slice(head, m.limit() - 1 - head).order(ByteOrder.BIG_ENDIAN);
    int id = m.get(2) & 0xFF;
    if (id == DEVICE_ID && data.limit() >= 4) {
      byte[] number = new byte[data.limit()];
      data.get(number);
      known = known.withSerialNumber(HexFormat.of().withUpperCase().formatHex(number));
      sink.known(known);
    }
    return id != DATA || items(data, sink);
  }

  /** Reads the items; false where they do not fill the message. */
  private boolean items(ByteBuffer data, SampleSink sink) {
    Optional<double[]> accel = Optional.empty();
    Optional<double[]> gyro = Optional.empty();
    double timeS = Double.NaN;
    int counter = -1;
    while (data.remaining() >= 3) {
      int item = data.getShort() & 0xFFFF;
      int length = data.get() & 0xFF;
      if (length > data.remaining()) {
        return false;
      }
      ByteBuffer value = data.slice(data.position(), length).order(ByteOrder.BIG_ENDIAN);
      data.position(data.position() + length);
      switch (item & WHAT) {
        case PACKET_COUNTER -> counter = length == 2 ? value.getShort(0) & 0xFFFF : -1;
        case TIME -> timeS = length == 4 ? (value.getInt(0) & 0xFFFFFFFFL) / CLOCK_HZ : Double.NaN;
        case ACCELERATION -> accel = three(value, item);
        case RATE_OF_TURN -> gyro = three(value, item);
        default -> {} // orientation, increments, field, pressure, status
      }
    }
    if (data.hasRemaining()) {
      return false;
    }
    countLost(counter, sink);
    if (accel.isPresent() && gyro.isPresent()) {
      tell(timeS, accel.get(), gyro.get(), sink);
    }
    return true;
  }

  private void tell(double timeS, double[] a, double[] g, SampleSink sink) {
    double wholeS =
        Double.isNaN(timeS) ? timeS : clock.next(Math.round(timeS * CLOCK_HZ)) / CLOCK_HZ;
    sink.known(known);
    sink.sample(wholeS, a[0], a[1], a[2], g[0], g[1], g[2]);
  }

  private void countLost(int counter, SampleSink sink) {
    if (counter < 0) {
      return;
    }
    long now = packets.next(counter);
    if (expected >= 0 && now > expected && now - expected < MOST_LOST) { // more is a restart
      sink.lost((int) (now - expected));
    }
    expected = now + 1;
  }

  private static Optional<double[]> three(ByteBuffer value, int item) {
    int format = item & 3;
    int size = format == 0 ? Float.BYTES : Double.BYTES;
    if ((format != 0 && format != 3) || value.limit() != 3 * size) {
      return Optional.empty();
    }
    double[] three = new double[3];
    for (int i = 0; i < 3; i++) {
      three[i] = format == 0 ? value.getFloat(i * size) : value.getDouble(i * size);
      if (!(Math.abs(three[i]) < MOST)) {
        return Optional.empty();
      }
    }
    return Optional.of(three);
  }

  /** Beyond every range, m/s^2 or rad/s. */
  private static final double MOST = 1000 * StandardGravity.MPS2;
}
