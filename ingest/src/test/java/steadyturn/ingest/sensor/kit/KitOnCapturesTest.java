package steadyturn.ingest.sensor.kit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.lab.BinaryFrameEncoder;
import steadyturn.ingest.sensor.FrameCheck;
import steadyturn.ingest.sensor.SampleSink;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.UnitHello;
import steadyturn.ingest.sensor.frame.BinaryFrameAdapter;

/** Right adapters pass on captures as a port gives them, and the kit still tells wrong ones. */
class KitOnCapturesTest {

  private static final GoldenRecording TOLD_EACH_SECOND =
      MadeGolden.of(new BinaryFrameEncoder(16, 2000), 1);

  /**
   * Begun in the middle of a frame, 0.4 s after a hello: as {@code timeout 3 cat PORT} gives. Only
   * the quarter turn is whole: who turns within a second of the start turns before the hello.
   */
  private static final GoldenRecording BEGUN_MIDWAY =
      changed(
          TOLD_EACH_SECOND,
          bytes ->
              bytes == TOLD_EACH_SECOND.left()
                  ? bytes
                  : Arrays.copyOfRange(bytes, 2407, bytes.length));

  /**
   * Given a unit that tells its ranges once a second (posed), and an adapter that leaves out what
   * comes before; expect every promise kept, also where the capture begins midway.
   */
  @Test
  void whoBelievesOnlyAfterAHelloKeepsEveryPromise() {
    join(() -> new Believing(1, true), TOLD_EACH_SECOND);
    allHold(() -> new Believing(1, true), BEGUN_MIDWAY);
  }

  /** The same without that word: the failure names it. */
  @Test
  void withoutThatWordTheFailureNamesIt() {
    assertThatThrownBy(
            () -> join(() -> new Believing(1, true), TOLD_EACH_SECOND.believedFromHello(0)))
        .isInstanceOf(AssertionError.class)
        .hasMessageContaining("believedFromHello");
  }

  /** Given one that waits for a second hello; expect that the allowance does not cover it. */
  @Test
  void whoWaitsForTwoHellosIsTold() {
    assertThatThrownBy(() -> join(() -> new Believing(2, true), TOLD_EACH_SECOND))
        .isInstanceOf(AssertionError.class);
  }

  /**
   * Given captures begun 7 bytes late (within a frame) and an adapter that tells what it skips;
   * expect every promise kept; given one that does not tell, expect that it is found.
   */
  @Test
  void aCaptureThatBeginsInTheMiddleOfAFrameIsRead() {
    GoldenRecording cut =
        changed(TOLD_EACH_SECOND, bytes -> Arrays.copyOfRange(bytes, 7, bytes.length));
    allHold(BinaryFrameAdapter::new, cut);
    assertThatThrownBy(() -> join(() -> new Believing(0, false), cut))
        .isInstanceOf(AssertionError.class)
        .hasMessageContaining("told of skipped bytes");
  }

  private static void join(Supplier<SensorAdapter> adapters, GoldenRecording golden) {
    Promise.JOINING_MIDWAY_RESYNCHRONISES.check(adapters, golden, FrameCheck.BITS_16);
  }

  private static void allHold(Supplier<SensorAdapter> adapters, GoldenRecording golden) {
    for (Promise promise : EnumSet.complementOf(EnumSet.of(Promise.IS_REGISTERED))) {
      assertThat(promise.notProvable(adapters, golden, FrameCheck.BITS_16)).isEmpty();
      promise.check(adapters, golden, FrameCheck.BITS_16);
    }
  }

  private static GoldenRecording changed(GoldenRecording of, UnaryOperator<byte[]> how) {
    return new GoldenRecording(
        of.rateHz(),
        how.apply(of.zUp()),
        how.apply(of.xUp()),
        how.apply(of.left()),
        how.apply(of.tumble()),
        of.isPosed(),
        of.samplesAFrame(),
        of.helloEveryS());
  }

  /** Passes on what another reads, from its so-manieth hello on; may be silent of what it skips. */
  private static final class Believing implements SensorAdapter {

    private final SensorAdapter inner = new BinaryFrameAdapter();
    private int missing;
    private final boolean isTelling;

    Believing(int hellos, boolean isTelling) {
      missing = hellos;
      this.isTelling = isTelling;
    }

    @Override
    public String name() {
      return "believing";
    }

    @Override
    public void read(ByteBuffer bytes, SampleSink sink) {
      inner.read(
          bytes,
          new SampleSink() {
            @Override
            public void hello(UnitHello hello) {
              missing--;
              sink.hello(hello);
            }

            @Override
            public void sample(
                double timeS, double ax, double ay, double az, double gx, double gy, double gz) {
              if (missing <= 0) {
                sink.sample(timeS, ax, ay, az, gx, gy, gz);
              }
            }

            @Override
            public void skipped(int count) {
              if (isTelling) {
                sink.skipped(count);
              }
            }
          });
    }
  }
}
