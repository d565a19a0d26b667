package steadyturn.ingest.sensor.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sensor.KeptSamples;

/** Where a frame begins and ends in a stream of bytes, at both sides of each limit. */
class FrameCuttingTest {

  private final KeptSamples kept = new KeptSamples();

  @Test
  void brokenStuffingIsRefused() {
    for (byte[] broken : new byte[][] {{0}, {3, 1}, {1, 0}, {5, 1, 2, 3}}) {
      int length = Cobs.decode(ByteBuffer.wrap(broken), 0, broken.length, new byte[8]);
      assertThat(length).isEqualTo(-1);
    }
    ByteBuffer stuffed = ByteBuffer.wrap(new byte[] {3, 7, 8});
    assertThat(Cobs.decode(stuffed, 0, 3, new byte[2])).isEqualTo(-1);
    assertThat(Cobs.decode(stuffed, 0, 3, new byte[3])).isEqualTo(2);
  }

  @ParameterizedTest
  @CsvSource({"8, 1, 0", "9, 0, 10"})
  void aStuffedFrameMayBeAsLongAsTheLongest(int stuffedBytes, int frames, int skipped) {
    List<Integer> lengths = new ArrayList<>();
    CobsFrames cut = new CobsFrames(8, (frame, sink) -> lengths.add(frame.remaining()));
    byte[] plain = new byte[stuffedBytes - 1];
    Arrays.fill(plain, (byte) 5);
    byte[] stuffed = Cobs.encode(plain);
    ByteBuffer given = ByteBuffer.wrap(Arrays.copyOf(stuffed, stuffedBytes + 1));
    cut.read(given, kept);
    assertThat(lengths).hasSize(frames);
    assertThat(lengths).allMatch(n -> n == stuffedBytes - 1);
    assertThat(kept.skippedBytes).isEqualTo(skipped);
    assertThat(given.remaining()).isZero();
  }

  @ParameterizedTest
  @CsvSource({"8, 8, 0", "9, 0, 9"})
  void anUnfinishedFrameIsLeftUntilItIsTooLong(int bytes, int left, int skipped) {
    byte[] some = new byte[bytes];
    Arrays.fill(some, (byte) 9);
    ByteBuffer given = ByteBuffer.wrap(some);
    new CobsFrames(8, (frame, sink) -> true).read(given, kept);
    assertThat(given.remaining()).isEqualTo(left);
    assertThat(kept.skippedBytes).isEqualTo(skipped);
  }

  @Test
  void theBeginningOfAFrameMustFitIt() {
    assertThatThrownBy(() -> new SyncFrames(new byte[0], 4, (f, s) -> true))
        .hasMessageContaining("begin with 0");
    assertThatThrownBy(() -> new SyncFrames(new byte[5], 4, (f, s) -> true))
        .hasMessageContaining("begin with 5");
    new SyncFrames(new byte[] {1, 2}, 2, (f, s) -> true)
        .read(ByteBuffer.wrap(new byte[] {1, 2, 1, 2}), kept);
    assertThat(kept.skippedBytes).isZero();
  }

  @Test
  void noiseToTheEndIsSkippedAtOnce() {
    ByteBuffer given = ByteBuffer.wrap(new byte[] {1, 2, 3});
    new SyncFrames(new byte[] {9}, 3, (f, s) -> true).read(given, kept);
    assertThat(kept.skippedBytes).isEqualTo(3);
    assertThat(given.remaining()).isZero();
  }

  @Test
  void framesInARowAreReadWithNothingBetween() {
    List<Integer> read = new ArrayList<>();
    SyncFrames frames = new SyncFrames(new byte[] {9}, 3, (f, s) -> read.add((int) f.getShort(1)));
    ByteBuffer given = ByteBuffer.wrap(new byte[] {9, 1, 0, 9, 0, 1, 7, 9, 2, 0, 9, 1});
    frames.read(given, kept);
    assertThat(read).containsExactly(1, 256, 2); // little endian
    assertThat(kept.skippedBytes).isEqualTo(1);
    assertThat(given.remaining()).isEqualTo(2);
  }
}
