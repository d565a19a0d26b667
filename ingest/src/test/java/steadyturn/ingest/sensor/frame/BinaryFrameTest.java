package steadyturn.ingest.sensor.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.lab.BinaryFrameEncoder;
import steadyturn.ingest.sensor.KeptSamples;
import steadyturn.ingest.sensor.UnitHello;

/** Binary frames at both sides of what they may be; expect the samples and what was skipped. */
class BinaryFrameTest {

  private final KeptSamples kept = new KeptSamples();

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  private void binary(byte[] frame) {
    new BinaryFrameAdapter().read(ByteBuffer.wrap(frame), kept);
  }

  private static byte[] finished(Consumer<ByteBuffer> fill) {
    ByteBuffer frame = ByteBuffer.allocate(120).order(ByteOrder.LITTLE_ENDIAN);
    fill.accept(frame);
    frame.putInt(BinaryFrameAdapter.crc(frame, frame.position()));
    byte[] stuffed = Cobs.encode(Arrays.copyOf(frame.array(), frame.position()));
    return Arrays.copyOf(stuffed, stuffed.length + 1);
  }

  @Test
  void aSampleIsCountsOfItsRangesEachAxisInItsPlace() {
    // Given: 4 g and 500 deg/s, counts of 2^15 for the whole range. Expect: counts 8192, -8192 and
    // so on as quarters of 4 x 9.80665 m/s^2 and of 500 deg/s.
    byte[] frame =
        finished(
            f -> {
              f.put((byte) 1).putShort((short) 7).putInt(2_500_000).put((byte) 4);
              f.putShort((short) 500);
              for (int counts : new int[] {8192, -8192, 16384, -16384, 4096, -32768}) {
                f.putShort((short) counts);
              }
            });
    binary(frame);
    double[] sample = kept.samples.get(0);
    double[] expected = {
      2.5,
      9.80665,
      -9.80665,
      2 * 9.80665,
      Math.toRadians(-250),
      Math.toRadians(62.5),
      Math.toRadians(-500)
    };
    assertThat(sample).containsExactly(expected, within(1e-12));
  }

  @Test
  void rangesAndTimeUseAllTheirBits() {
    // Given: 255 g, 65535 deg/s, a clock at its last microsecond. Expect: none taken as negative.
    byte[] frame =
        new BinaryFrameEncoder(255, 65_535)
            .sample(
                0xFFFF,
                0xFFFF_FFFFL,
                new double[] {100 * 9.80665, 0, 0},
                new double[] {0, 0, Math.toRadians(-30_000)});
    binary(frame);
    double[] sample = kept.samples.get(0);
    assertThat(sample[0]).isCloseTo(4294.967295, within(1e-9));
    assertThat(sample[1]).isCloseTo(980.665, within(255 * 9.80665 / 65_536));
    assertThat(sample[6]).isCloseTo(Math.toRadians(-30_000), within(Math.toRadians(1.001)));
    assertThat(kept.lostSamples).isZero();
  }

  @Test
  void theClockGoesOnWhenItsBitsAreUsedUp() {
    // Given: microseconds in 32 bits, 1 ms before their end and 1 ms after. Expect: 2 ms apart.
    BinaryFrameEncoder encoder = new BinaryFrameEncoder(16, 2000);
    BinaryFrameAdapter adapter = new BinaryFrameAdapter();
    for (long micros : new long[] {(1L << 32) - 1000, (1L << 32) + 1000}) {
      adapter.read(ByteBuffer.wrap(encoder.sample(0, micros, new double[3], new double[3])), kept);
    }
    assertThat(kept.samples.get(1)[0] - kept.samples.get(0)[0]).isCloseTo(0.002, within(1e-9));
  }

  @Test
  void whatIsBeyondTheRangeStaysAtItsEnd() {
    byte[] frame =
        new BinaryFrameEncoder(2, 250)
            .sample(0, 0, new double[] {50, -50, 0}, new double[] {0, 99, -99});
    binary(frame);
    double[] sample = kept.samples.get(0);
    assertThat(sample[1]).isCloseTo(2 * 9.80665 * 32_767 / 32_768, within(1e-12));
    assertThat(sample[2]).isCloseTo(-2 * 9.80665, within(1e-12));
    assertThat(sample[5]).isCloseTo(Math.toRadians(250) * 32_767 / 32_768, within(1e-12));
    assertThat(sample[6]).isCloseTo(-Math.toRadians(250), within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({"0, 100", "256, 100", "16, 0", "16, 65536"})
  void rangesMustFitTheirFields(int accelG, int gyroDegPerS) {
    assertThatThrownBy(() -> new BinaryFrameEncoder(accelG, gyroDegPerS))
        .hasMessageContaining("were " + accelG + " g, " + gyroDegPerS);
    assertThat(new BinaryFrameEncoder(1, 1).hello(new UnitHello("", "", 1, 1, 1))).isNotEmpty();
    assertThat(new BinaryFrameEncoder(255, 65_535).hello(new UnitHello("", "", 1, 1, 1)))
        .isNotEmpty();
  }

  @ParameterizedTest
  @CsvSource({"1, 0", "2, 1", "32768, 32767", "32769, 0", "65000, 0"})
  void aJumpOfTheCounterIsLossUpToHalfOfIt(int step, int lost) {
    // A larger jump is a unit that began anew. 16 bits, so half of it is 32768.
    BinaryFrameEncoder encoder = new BinaryFrameEncoder(16, 2000);
    BinaryFrameAdapter adapter = new BinaryFrameAdapter();
    for (int counter : new int[] {100, 100 + step}) {
      adapter.read(
          ByteBuffer.wrap(encoder.sample(counter, counter, new double[3], new double[3])), kept);
    }
    assertThat(kept.lostSamples).isEqualTo(lost);
  }

  private static Consumer<ByteBuffer> hello(
      int version, int rate, int accel, int gyro, String name, int saidBytes, String serial) {
    return f -> {
      f.put((byte) 2).put((byte) version).putShort((short) rate).put((byte) accel);
      f.putShort((short) gyro);
      f.put((byte) name.length()).put(ascii(name));
      f.put((byte) saidBytes).put(ascii(serial));
    };
  }

  @Test
  void aHelloFrameTellsNameSerialRateAndRanges() {
    binary(finished(hello(1, 40_000, 200, 40_000, "pelvis", 3, "A-1")));
    assertThat(kept.hellos).hasSize(1);
    UnitHello hello = kept.hellos.get(0);
    assertThat(hello.name()).isEqualTo("pelvis");
    assertThat(hello.serialNumber()).isEqualTo("A-1");
    assertThat(hello.rateHz()).isEqualTo(40_000);
    assertThat(hello.accelFullScaleMps2()).isCloseTo(1961.33, within(1e-9));
    assertThat(hello.gyroFullScaleRadPerS()).isCloseTo(Math.toRadians(40_000), within(1e-9));
    KeptSamples nameless = new KeptSamples();
    new BinaryFrameAdapter()
        .read(ByteBuffer.wrap(finished(hello(1, 100, 2, 250, "", 0, ""))), nameless);
    assertThat(nameless.hellos.get(0).name()).isEmpty();
  }

  @Test
  void aHelloThatContradictsItselfIsSkipped() {
    List<Consumer<ByteBuffer>> wrong =
        List.of(
            hello(2, 100, 2, 250, "a", 1, "b"),
            hello(1, 0, 2, 250, "a", 1, "b"),
            hello(1, 100, 0, 250, "a", 1, "b"),
            hello(1, 100, 2, 0, "a", 1, "b"),
            hello(1, 100, 2, 250, "a", 2, "b"),
            hello(1, 100, 2, 250, "a", 0, "b"),
            f -> f.put((byte) 2).put((byte) 1),
            f -> f.put((byte) 2).put((byte) 1).putShort((short) 100).put(new byte[3]),
            f ->
                f.put((byte) 2)
                    .put((byte) 1)
                    .putShort((short) 100)
                    .put((byte) 2)
                    .putShort((short) 9)
                    .put((byte) 9));
    for (Consumer<ByteBuffer> each : wrong) {
      byte[] frame = finished(each);
      KeptSamples own = new KeptSamples();
      new BinaryFrameAdapter().read(ByteBuffer.wrap(frame), own);
      assertThat(own.hellos).isEmpty();
      assertThat(own.skippedBytes).isEqualTo(frame.length);
    }
  }

  @Test
  void aFrameOfAnotherKindOrLengthIsSkipped() {
    for (Consumer<ByteBuffer> each :
        List.<Consumer<ByteBuffer>>of(
            f -> f.put((byte) 3).put(new byte[21]),
            f -> f.put((byte) 1).put(new byte[20]),
            f -> f.put((byte) 1).put(new byte[22]))) {
      byte[] frame = finished(each);
      KeptSamples own = new KeptSamples();
      new BinaryFrameAdapter().read(ByteBuffer.wrap(frame), own);
      assertThat(own.samples).isEmpty();
      assertThat(own.skippedBytes).isEqualTo(frame.length);
    }
    KeptSamples own = new KeptSamples();
    new BinaryFrameAdapter().read(ByteBuffer.wrap(new byte[] {0, 1, 1, 0}), own);
    assertThat(own.skippedBytes).isEqualTo(4);
  }

  @Test
  void aLongNameIsCutToFortyBytes() {
    UnitHello said = new UnitHello("n".repeat(41), "s".repeat(40), 100, 1, 1);
    binary(new BinaryFrameEncoder(2, 250).hello(said));
    assertThat(kept.hellos.get(0).name()).isEqualTo("n".repeat(40));
    assertThat(kept.hellos.get(0).serialNumber()).isEqualTo("s".repeat(40));
  }
}
