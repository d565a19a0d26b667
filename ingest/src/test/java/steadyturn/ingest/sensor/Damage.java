package steadyturn.ingest.sensor;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Supplier;
import steadyturn.ingest.lab.BinaryFrameEncoder;
import steadyturn.ingest.lab.Frames55Encoder;
import steadyturn.ingest.lab.TextLineEncoder;
import steadyturn.ingest.lab.UnitEncoder;
import steadyturn.ingest.lab.XImu3Encoder;
import steadyturn.ingest.lab.XbusEncoder;
import steadyturn.ingest.sensor.frame.BinaryFrameAdapter;
import steadyturn.ingest.sensor.frame.TextLineAdapter;
import steadyturn.ingest.sensor.maker.Frames55Adapter;
import steadyturn.ingest.sensor.maker.XImu3Adapter;
import steadyturn.ingest.sensor.maker.XbusAdapter;

/**
 * Sends seeded pieces (lines or frames), every second one damaged, through an adapter, and counts
 * what comes out. A sample that was never sent is an invented one. Bytes are accounted for: what
 * was neither told as skipped nor left over must be just the bytes of the samples that were read (a
 * text line may have lost its CR).
 */
public final class Damage {

  private static final int REMEMBERED = 64;
  private static final int KINDS = 7;
  private static final int EXCHANGE = 6;

  /** The protocols tried: our own, and every framing of the shipped units that has an encoder. */
  @SuppressWarnings("ImmutableEnumChecker") // method references only
  public enum Protocol {
    TEXT_LINE(TextLineAdapter::new, TextLineEncoder::new, FrameCheck.BITS_24),
    BINARY_FRAME(
        BinaryFrameAdapter::new, () -> new BinaryFrameEncoder(16, 2000), FrameCheck.BITS_24),
    FRAMES_55(Frames55Adapter::new, () -> new Frames55Encoder(false), FrameCheck.BITS_8),
    XBUS(XbusAdapter::new, XbusEncoder::new, FrameCheck.BITS_8),
    FRAMES_55_LONG(Frames55Adapter::new, () -> new Frames55Encoder(true), FrameCheck.NONE),
    X_IMU3_TEXT(XImu3Adapter::new, () -> new XImu3Encoder(""), FrameCheck.NONE),
    X_IMU3(XImu3Adapter::new, () -> new XImu3Encoder(""), FrameCheck.NONE);

    private final Supplier<SensorAdapter> adapters;
    private final Supplier<UnitEncoder> encoders;
    final FrameCheck check;

    Protocol(Supplier<SensorAdapter> adapters, Supplier<UnitEncoder> encoders, FrameCheck check) {
      this.adapters = adapters;
      this.encoders = encoders;
      this.check = check;
    }

    SensorAdapter adapter() {
      return adapters.get();
    }

    UnitEncoder encoder() {
      UnitEncoder unit = encoders.get();
      if (this != X_IMU3_TEXT) {
        adapter().configure((bytes, pauseMs) -> unit.heard(bytes));
      }
      return unit;
    }

    /** Whether every byte is one of a sample. */
    boolean sendsOnlySamples() {
      return this == TEXT_LINE || this == BINARY_FRAME;
    }
  }

  /**
   * What came of a run.
   *
   * @param invented samples never sent
   * @param inventedByExchange those of them that came of two exchanged bytes, to which a sum is
   *     blind
   */
  public record Tally(
      long damaged,
      long read,
      long invented,
      long inventedByExchange,
      long skippedBytes,
      long unaccountedBytes) {}

  private Damage() {}

  /** Sends so many damaged pieces and as many whole ones. */
  public static Tally run(Protocol protocol, long damagedPieces, long seed) {
    Random random = new Random(seed);
    UnitEncoder encoder = protocol.encoder();
    Counting sink = new Counting();
    CountedAdapter adapter = new CountedAdapter(protocol.adapter(), sink);
    AdapterFeed feed = new AdapterFeed(adapter, sink);
    long fed = 0;
    long byExchange = 0;
    double[] accel = new double[3];
    double[] gyro = new double[3];
    for (long k = 0; k < 2 * damagedPieces; k++) {
      for (int axis = 0; axis < 3; axis++) {
        accel[axis] = 20 * random.nextGaussian();
        gyro[axis] = 5 * random.nextGaussian();
      }
      byte[] whole = encoder.sample(k, 5000 * k, accel, gyro);
      sink.sent(protocol, whole);
      int kind = k % 2 == 0 ? -1 : random.nextInt(KINDS);
      byte[] piece = kind < 0 ? whole : damaged(whole, kind, random);
      long before = sink.invented;
      feed.feed(piece, piece.length);
      byExchange += kind == EXCHANGE ? sink.invented - before : 0;
      fed += piece.length;
    }
    feed.forgetRest();
    return new Tally(
        damagedPieces,
        sink.read,
        sink.invented,
        byExchange,
        sink.skipped,
        Math.abs(fed - sink.skipped - adapter.usedBytes)
            + (protocol.sendsOnlySamples()
                ? sink.notOfSamples(adapter.usedBytes, protocol == Protocol.TEXT_LINE)
                : 0));
  }

  private static byte[] damaged(byte[] whole, int kind, Random random) {
    byte[] bytes = whole.clone();
    int at = random.nextInt(bytes.length);
    switch (kind) {
      case 0 -> bytes[at] ^= (byte) (1 << random.nextInt(8));
      case 1 -> bytes[at] ^= (byte) (1 + random.nextInt(255));
      case 2 -> {
        int n = Math.min(bytes.length - at, 2 + random.nextInt(12));
        for (int i = at; i < at + n; i++) {
          bytes[i] = (byte) random.nextInt(256);
        }
      }
      case 3 ->
          bytes = joined(Arrays.copyOf(bytes, at), Arrays.copyOfRange(bytes, at + 1, bytes.length));
      case 4 -> bytes = Arrays.copyOf(bytes, at);
      case 5 -> {
        byte[] noise = new byte[1 + random.nextInt(40)];
        random.nextBytes(noise);
        bytes =
            joined(
                joined(Arrays.copyOf(bytes, at), noise),
                Arrays.copyOfRange(bytes, at, bytes.length));
      }
      default -> {
        int other = random.nextInt(bytes.length);
        byte swapped = bytes[at];
        bytes[at] = bytes[other];
        bytes[other] = swapped;
      }
    }
    return bytes;
  }

  private static byte[] joined(byte[] a, byte[] b) {
    byte[] both = Arrays.copyOf(a, a.length + b.length);
    System.arraycopy(b, 0, both, a.length, b.length);
    return both;
  }

  /** Counts the bytes of the pieces that the adapter consumed and did not skip. */
  private static final class CountedAdapter implements SensorAdapter {
    private final SensorAdapter inner;
    private final Counting sink;
    private long usedBytes;

    CountedAdapter(SensorAdapter inner, Counting sink) {
      this.inner = inner;
      this.sink = sink;
    }

    @Override
    public String name() {
      return inner.name();
    }

    @Override
    public void read(ByteBuffer bytes, SampleSink ignored) {
      int from = bytes.position();
      long skippedBefore = sink.skipped;
      inner.read(bytes, sink);
      usedBytes += bytes.position() - from - (sink.skipped - skippedBefore);
    }
  }

  /** Knows the last samples that were sent, as an undisturbed adapter reads them. */
  private static final class Counting implements SampleSink {
    private final long[] keys = new long[REMEMBERED];
    private final Map<Long, Integer> known = new HashMap<>();
    private int next;
    private long read;
    private long invented;
    private long skipped;
    private long bytesOfSamples;

    /** Used bytes beyond those of the samples that were read, or fewer than those. */
    long notOfSamples(long usedBytes, boolean mayLackOne) {
      long fewest = bytesOfSamples - (mayLackOne ? read : 0);
      return Math.max(0, usedBytes - bytesOfSamples) + Math.max(0, fewest - usedBytes);
    }

    void sent(Protocol protocol, byte[] whole) {
      KeptSamples kept = new KeptSamples();
      protocol.adapter().read(ByteBuffer.wrap(joined(whole, whole)), kept); // the second vouches
      double[] s = kept.samples.get(0);
      known.remove(keys[next]);
      keys[next] = key(s[1], s[2], s[3], s[4], s[5], s[6]);
      known.put(keys[next], whole.length);
      next = (next + 1) % REMEMBERED;
    }

    private static long key(double... values) {
      long key = 17;
      for (double value : values) {
        key = key * 0x9E3779B97F4A7C15L + Double.doubleToLongBits(value);
      }
      return key;
    }

    @Override
    public void hello(UnitHello hello) {
      invented++;
    }

    @Override
    public void sample(
        double timeS, double ax, double ay, double az, double gx, double gy, double gz) {
      read++;
      Integer length = known.get(key(ax, ay, az, gx, gy, gz));
      invented += length == null ? 1 : 0;
      bytesOfSamples += length == null ? 0 : length;
    }

    @Override
    public void skipped(int bytes) {
      skipped += bytes;
    }
  }

  /** The long form: {@code Damage 10000000 7}, with protocols behind it where not all are meant. */
  public static void main(String[] args) {
    long pieces = Long.parseLong(args[0]);
    List<String> named = List.of(args).subList(2, args.length);
    for (Protocol protocol : Protocol.values()) {
      if (!named.isEmpty() && !named.contains(protocol.name())) {
        continue;
      }
      long startedNanos = System.nanoTime();
      Tally tally = run(protocol, pieces, Long.parseLong(args[1]));
      System.out.printf(
          "%s: %s in %.0f s%n", protocol, tally, (System.nanoTime() - startedNanos) * 1e-9);
    }
  }
}
