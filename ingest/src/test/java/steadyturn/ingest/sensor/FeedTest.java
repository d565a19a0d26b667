package steadyturn.ingest.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.ingest.sensor.frame.TextLineAdapter;

/** What carries bytes to an adapter and counts what comes out. */
class FeedTest {

  private final KeptSamples kept = new KeptSamples();

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  private static byte[] withCheck(String body) {
    return ascii(body + "*" + TextLineAdapter.check(body) + "\n");
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 63})
  void aCounterHas1To62Bits(int bits) {
    assertThatThrownBy(() -> new WrappingCounter(bits)).hasMessageContaining("not " + bits);
  }

  @Test
  void everyStepOfACounterIsForwards() {
    WrappingCounter one = new WrappingCounter(1);
    assertThat(List.of(one.next(1), one.next(1), one.next(0), one.next(1)))
        .containsExactly(1L, 1L, 2L, 3L);
    WrappingCounter most = new WrappingCounter(62);
    assertThat(most.next((1L << 62) - 1)).isEqualTo((1L << 62) - 1);
    assertThat(most.next(0)).isEqualTo(1L << 62);
    WrappingCounter bytes = new WrappingCounter(8);
    assertThat(List.of(bytes.next(200), bytes.next(199), bytes.next(200)))
        .containsExactly(200L, 200L + 255, 456L);
  }

  @Test
  void aFeedKeepsTheRestAndForgetsItWhenAsked() {
    AdapterFeed feed = new AdapterFeed(new TextLineAdapter(), kept);
    byte[] line = withCheck("1,2,3,4,5,6,7");
    feed.feed(line, 5);
    assertThat(kept.samples).isEmpty();
    feed.feed(Arrays.copyOfRange(line, 5, line.length + 9), line.length - 5);
    assertThat(kept.samples).hasSize(1);
    feed.feed(line, 5);
    assertThat(feed.forgetRest()).isEqualTo(5);
    assertThat(kept.skippedBytes).isEqualTo(5);
    assertThat(feed.forgetRest()).isZero();
    feed.feed(line, line.length);
    assertThat(kept.samples).hasSize(2);
    assertThat(kept.skippedBytes).isEqualTo(5);
  }

  @Test
  void anAdapterThatReadsNothingCostsHalfOfWhatIsKept() {
    // Given: an adapter that never reads; 2^18 bytes are kept at most. Expect: half of them passed
    // over when more come, and all that remains is still there.
    SensorAdapter deaf =
        new SensorAdapter() {
          @Override
          public String name() {
            return "deaf";
          }

          @Override
          public void read(ByteBuffer bytes, SampleSink sink) {}
        };
    AdapterFeed feed = new AdapterFeed(deaf, kept);
    feed.feed(new byte[1 << 18], 1 << 18);
    assertThat(kept.skippedBytes).isZero();
    feed.feed(new byte[1], 1);
    assertThat(kept.skippedBytes).isEqualTo(1 << 17);
    assertThat(feed.forgetRest()).isEqualTo((1 << 17) + 1);
  }

  @Test
  void whatAnAdapterLeavesIsStillThereWhenMoreRoomIsMade() {
    // Given: an adapter that waits for 20,000 bytes, more than the first buffer holds. Expect: all
    // of them, in their order.
    byte[] given = new byte[20_000];
    for (int i = 0; i < given.length; i++) {
      given[i] = (byte) (31 * i);
    }
    byte[] read = new byte[given.length];
    SensorAdapter patient =
        new SensorAdapter() {
          @Override
          public String name() {
            return "patient";
          }

          @Override
          public void read(ByteBuffer bytes, SampleSink sink) {
            if (bytes.remaining() == read.length) {
              bytes.get(read);
            }
          }
        };
    AdapterFeed feed = new AdapterFeed(patient, kept);
    for (int at = 0; at < given.length; at += 500) {
      feed.feed(Arrays.copyOfRange(given, at, at + 500), 500);
    }
    assertThat(read).isEqualTo(given);
    assertThat(kept.skippedBytes).isZero();
    assertThat(feed.forgetRest()).isZero();
  }

  @Test
  void theFindingAdapterWaitsForSixHundredBytesAndThenIsTheOneFound() {
    FindingAdapter finding = new FindingAdapter();
    byte[] line = withCheck("1.000000,2.0000,3.0000,4.0000,5.00000,6.00000,7.00000");
    ByteBuffer bytes = ByteBuffer.allocate(1 << 12);
    while (bytes.position() + line.length < 600) {
      bytes.put(line);
    }
    int lines = bytes.position() / line.length;
    bytes.flip();
    finding.read(bytes, kept);
    assertThat(finding.found()).isEmpty();
    assertThat(finding.name()).isEqualTo("finding");
    assertThat(kept.samples).isEmpty();
    bytes.position(bytes.limit()).limit(bytes.capacity());
    bytes.put(line).flip();
    finding.read(bytes, kept);
    assertThat(finding.found()).contains("text-line");
    assertThat(finding.name()).isEqualTo("text-line");
    assertThat(kept.samples).hasSize(lines + 1);
  }

  @Test
  void anAdapterIsToldWhenABlockCameBeforeItReadsIt() {
    // Given: a unit without a clock, one byte a sample; blocks of 2 and 1 bytes at 5.25 and 5.5 s
    // of
    // the host, a third of unknown arrival. Expect: told, then read; the samples have no time.
    List<String> heard = new ArrayList<>();
    SensorAdapter clockless =
        new SensorAdapter() {
          @Override
          public String name() {
            return "clockless";
          }

          @Override
          public void arrived(double hostS) {
            heard.add("came " + hostS);
          }

          @Override
          public void read(ByteBuffer bytes, SampleSink sink) {
            heard.add("read " + bytes.remaining());
            while (bytes.hasRemaining()) {
              sink.sample(bytes.get(), 2, 3, 4, 5, 6);
            }
          }
        };
    AdapterFeed feed = new AdapterFeed(clockless, kept);
    feed.feed(new byte[] {1, 2}, 2, 5.25);
    feed.feed(new byte[] {3}, 1, 5.5);
    feed.feed(new byte[] {4}, 1);
    assertThat(heard).containsExactly("came 5.25", "read 2", "came 5.5", "read 1", "read 1");
    assertThat(kept.samples.get(2)).containsExactly(Double.NaN, 3, 2, 3, 4, 5, 6);
    assertThat(kept.samples).hasSize(4);
  }

  @ParameterizedTest
  @CsvSource({"16384, 0", "16386, 8193"})
  void whatNobodyUnderstandsIsPassedOver(int bytes, int skipped) {
    FindingAdapter finding = new FindingAdapter();
    byte[] noise = new byte[bytes];
    Arrays.fill(noise, (byte) 'x');
    ByteBuffer given = ByteBuffer.wrap(noise);
    finding.read(given, kept);
    assertThat(kept.skippedBytes).isEqualTo(skipped);
    assertThat(given.remaining()).isEqualTo(bytes - skipped);
  }

  @Test
  void aCountAddsUp() {
    SampleCount count = new SampleCount();
    UnitHello hello = new UnitHello("a", "b", 1, 2, 3);
    count.hello(hello);
    count.sample(0, 0, 0, 0, 0, 0, 0);
    count.sample(0, 0, 0, 0, 0, 0, 0);
    count.skipped(3);
    count.skipped(4);
    count.lost(5);
    count.lost(6);
    assertThat(count.samples()).isEqualTo(2);
    assertThat(count.skippedBytes()).isEqualTo(7);
    assertThat(count.lostSamples()).isEqualTo(11);
    assertThat(count.hello()).contains(hello);
  }

  @Test
  void aHelloOfNothingIsRefused() {
    assertThatThrownBy(() -> new UnitHello("", "", 0, 1, 1)).hasMessageContaining("0.0 Hz");
    assertThatThrownBy(() -> new UnitHello("", "", 1, 0, 1)).hasMessageContaining("0.0 m/s^2");
    assertThatThrownBy(() -> new UnitHello("", "", 1, 1, 0)).hasMessageContaining("0.0 rad/s");
  }
}
