package steadyturn.ingest.sensor.kit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import steadyturn.ingest.lab.TextLineEncoder;
import steadyturn.ingest.sensor.FrameCheck;
import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.UnitHello;
import steadyturn.ingest.sensor.frame.LineProtocol;
import steadyturn.ingest.sensor.frame.TextLineAdapter;

/** The kit itself is tried: each planted fault must break the promise that names it. */
class KitTest {

  private static final GoldenRecording GOLDEN = MadeGolden.of(new TextLineEncoder());

  /** Changes a sample: time, acceleration x y z, rate x y z. */
  @FunctionalInterface
  private interface Change {
    void of(double[] sample);
  }

  static Stream<Arguments> faults() {
    return Stream.of(
        fault("accelerations in g", Promise.GRAVITY_IS_9_81, s -> scale(s, 1, 3, 1 / 9.80665)),
        fault("accelerations of half the range", Promise.GRAVITY_IS_9_81, s -> scale(s, 1, 3, 0.5)),
        fault("accelerations down-positive", Promise.Z_UP_IS_PLUS_Z, s -> scale(s, 1, 3, -1)),
        fault("acceleration axes x and z swapped", Promise.Z_UP_IS_PLUS_Z, s -> swap(s, 1, 3)),
        fault("acceleration axes x and y swapped", Promise.X_UP_IS_PLUS_X, s -> swap(s, 1, 2)),
        fault(
            "acceleration y of wrong sign",
            Promise.GYRO_AND_ACCELEROMETER_AGREE,
            s -> scale(s, 2, 2, -1)),
        fault(
            "rates in deg/s",
            Promise.A_QUARTER_TURN_LEFT_IS_PLUS_90_DEG,
            s -> scale(s, 4, 6, 180 / Math.PI)),
        fault(
            "rates converted twice",
            Promise.A_QUARTER_TURN_LEFT_IS_PLUS_90_DEG,
            s -> scale(s, 4, 6, Math.PI / 180)),
        fault(
            "rates of wrong sign",
            Promise.A_QUARTER_TURN_LEFT_IS_PLUS_90_DEG,
            s -> scale(s, 4, 6, -1)),
        fault(
            "rates of another range",
            Promise.A_QUARTER_TURN_LEFT_IS_PLUS_90_DEG,
            s -> scale(s, 4, 6, 0.5)),
        fault(
            "rate axes y and z swapped",
            Promise.A_QUARTER_TURN_LEFT_IS_PLUS_90_DEG,
            s -> swap(s, 5, 6)),
        fault(
            "rate axes x and y swapped", Promise.GYRO_AND_ACCELEROMETER_AGREE, s -> swap(s, 4, 5)),
        fault(
            "rate x of wrong sign", Promise.GYRO_AND_ACCELEROMETER_AGREE, s -> scale(s, 4, 4, -1)),
        fault("time in milliseconds", Promise.TIME_IS_IN_SECONDS, s -> scale(s, 0, 0, 1e3)),
        fault("time in microseconds", Promise.TIME_IS_IN_SECONDS, s -> scale(s, 0, 0, 1e6)),
        fault("time rounded to 0.1 s", Promise.TIME_GROWS, s -> s[0] = Math.rint(s[0] * 10) / 10),
        Arguments.of(
            "the unfinished rest is thrown away",
            Promise.PIECES_DO_NOT_MATTER,
            (Supplier<SensorAdapter>) RestThrownAway::new),
        Arguments.of(
            "the unfinished rest is read as a sample",
            Promise.A_CUT_COSTS_ONE_SAMPLE,
            (Supplier<SensorAdapter>) RestTakenForWhole::new),
        Arguments.of(
            "the check is not looked at",
            Promise.DAMAGE_INVENTS_NO_MORE_THAN_THE_CHECK_LETS_THROUGH,
            (Supplier<SensorAdapter>) CheckNotLookedAt::new),
        Arguments.of(
            "skipped bytes are not told",
            Promise.DAMAGE_COSTS_LITTLE_AND_IS_TOLD,
            (Supplier<SensorAdapter>) Silent::new),
        Arguments.of(
            "a late start is not told",
            Promise.JOINING_MIDWAY_RESYNCHRONISES,
            (Supplier<SensorAdapter>) Silent::new),
        Arguments.of(
            "after damage nothing is read any more",
            Promise.DAMAGE_COSTS_LITTLE_AND_IS_TOLD,
            (Supplier<SensorAdapter>) StopsAtDamage::new),
        Arguments.of(
            "damage throws",
            Promise.NOISE_IS_NO_SAMPLE,
            (Supplier<SensorAdapter>) ThrowsAtDamage::new),
        Arguments.of(
            "state shared between ports",
            Promise.EACH_PORT_BEGINS_ANEW,
            (Supplier<SensorAdapter>) SharedState::new),
        Arguments.of(
            "not registered",
            Promise.IS_REGISTERED,
            (Supplier<SensorAdapter>) () -> new Changed(s -> {})));
  }

  private static Arguments fault(String name, Promise broken, Change change) {
    return Arguments.of(name, broken, (Supplier<SensorAdapter>) () -> new Changed(change));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("faults")
  void aPlantedFaultBreaksThePromiseThatNamesIt(
      String fault, Promise expected, Supplier<SensorAdapter> adapters) {
    boolean isBroken = false;
    try {
      expected.check(adapters, GOLDEN, FrameCheck.BITS_24);
    } catch (AssertionError | RuntimeException e) {
      isBroken = true;
    }
    assertThat(isBroken).as(fault + " against: " + expected.words()).isTrue();
  }

  private static void scale(double[] s, int from, int to, double factor) {
    for (int i = from; i <= to; i++) {
      s[i] *= factor;
    }
  }

  private static void swap(double[] s, int a, int b) {
    double kept = s[a];
    s[a] = s[b];
    s[b] = kept;
  }

  /** A good adapter whose samples are changed on the way. */
  private static class Changed implements SensorAdapter {
    private final SensorAdapter inner = new TextLineAdapter();
    private final Change change;

    Changed(Change change) {
      this.change = change;
    }

    @Override
    public String name() {
      return "changed";
    }

    @Override
    public void read(ByteBuffer bytes, SampleSink sink) {
      inner.read(bytes, new ChangedSink(sink, change));
    }
  }

  private record ChangedSink(SampleSink inner, Change change) implements SampleSink {
    @Override
    public void hello(UnitHello hello) {
      inner.hello(hello);
    }

    @Override
    public void sample(
        double timeS, double ax, double ay, double az, double gx, double gy, double gz) {
      double[] s = {timeS, ax, ay, az, gx, gy, gz};
      change.of(s);
      inner.sample(s[0], s[1], s[2], s[3], s[4], s[5], s[6]);
    }

    @Override
    public void skipped(int bytes) {
      inner.skipped(bytes);
    }
  }

  private static final class RestThrownAway extends Changed {
    RestThrownAway() {
      super(s -> {});
    }

    @Override
    public void read(ByteBuffer bytes, SampleSink sink) {
      super.read(bytes, sink);
      bytes.position(bytes.limit());
    }
  }

  /** Reads numbers as soon as there are seven, whether the line has ended or not. */
  private static final class RestTakenForWhole implements SensorAdapter {
    @Override
    public String name() {
      return "rest-taken-for-whole";
    }

    @Override
    public void read(ByteBuffer bytes, SampleSink sink) {
      byte[] all = new byte[bytes.remaining()];
      bytes.get(all);
      for (String line : new String(all, StandardCharsets.ISO_8859_1).split("\n", -1)) {
        unchecked(line, sink);
      }
    }
  }

  private static boolean unchecked(String line, SampleSink sink) {
    String[] f = line.split("[*]", -1)[0].trim().split(",", -1);
    try {
      double[] s = new double[7];
      for (int i = 0; i < 7; i++) {
        s[i] = Double.parseDouble(f[i]);
      }
      sink.sample(s[0], s[1], s[2], s[3], s[4], s[5], s[6]);
      return true;
    } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
      return line.startsWith("hello");
    }
  }

  private static final class CheckNotLookedAt implements SensorAdapter {
    private final LineProtocol lines = new LineProtocol(200, KitTest::unchecked);

    @Override
    public String name() {
      return "check-not-looked-at";
    }

    @Override
    public void read(ByteBuffer bytes, SampleSink sink) {
      lines.read(bytes, sink);
    }
  }

  private static final class Silent extends Changed {
    Silent() {
      super(s -> {});
    }

    @Override
    public void read(ByteBuffer bytes, SampleSink sink) {
      super.read(bytes, new ForgetSkipped(sink));
    }
  }

  private record ForgetSkipped(SampleSink inner) implements SampleSink {
    @Override
    public void hello(UnitHello hello) {
      inner.hello(hello);
    }

    @Override
    public void sample(
        double timeS, double ax, double ay, double az, double gx, double gy, double gz) {
      inner.sample(timeS, ax, ay, az, gx, gy, gz);
    }

    @Override
    public void skipped(int bytes) {}
  }

  private static final class StopsAtDamage implements SensorAdapter {
    private boolean isStopped;
    private final LineProtocol lines =
        new LineProtocol(
            200,
            (line, sink) -> {
              isStopped |= !line.matches("[-0-9.,a-zA-Z]+[*][0-9A-F]{6}");
              return !isStopped && unchecked(line, sink);
            });

    @Override
    public String name() {
      return "stops-at-damage";
    }

    @Override
    public void read(ByteBuffer bytes, SampleSink sink) {
      lines.read(bytes, sink);
    }
  }

  private static final class ThrowsAtDamage implements SensorAdapter {
    private final LineProtocol lines =
        new LineProtocol(
            200,
            (line, sink) -> {
              if (!line.contains("*")) {
                throw new IllegalStateException("no star in " + line.length() + " characters");
              }
              return unchecked(line, sink);
            });

    @Override
    public String name() {
      return "throws-at-damage";
    }

    @Override
    public void read(ByteBuffer bytes, SampleSink sink) {
      lines.read(bytes, sink);
    }
  }

  private static final class SharedState extends Changed {
    private static double addedS;

    SharedState() {
      super(s -> s[0] += addedS += 1e-3);
    }
  }
}
