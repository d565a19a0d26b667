package steadyturn.ingest.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.ingest.lab.BinaryFrameEncoder;
import steadyturn.ingest.lab.TextLineEncoder;

/** Frames and lines at both sides of what they may be; expect the samples and what was skipped. */
class FramesAtTheirLimitsTest {

  private final KeptSamples kept = new KeptSamples();

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  private static byte[] withCheck(String body) {
    return ascii(body + "*" + TextLineAdapter.check(body) + "\n");
  }

  private void textLine(byte[] line) {
    new TextLineAdapter().read(ByteBuffer.wrap(line), kept);
  }

  // --- wrapping counter

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

  // --- text line

  @Test
  void aLineIsTimeThenAccelerationThenRate() {
    textLine(withCheck("12.5,1,-2,3.25,-.5,6.,7"));
    assertThat(kept.samples).hasSize(1);
    assertThat(kept.samples.get(0)).containsExactly(12.5, 1, -2, 3.25, -0.5, 6, 7);
    assertThat(kept.skippedBytes).isZero();
  }

  @Test
  void theCheckIsThatOfNmeaAndACrcBehindIt() {
    // NMEA 0183: exclusive or of all bytes before the star; of "123456789" 0x31; CRC 0x29B1.
    assertThat(TextLineAdapter.check("123456789")).isEqualTo("3129B1");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1,2,3,4,5,6",
        "1,2,3,4,5,6,7,8",
        "1,2,3,4,5,6,",
        "1,2,3,4,5,6,.",
        "1,2,3,4,5,6,-",
        "1,2,3,4,5,6,1.2.3",
        "1,2,3,4,5,6,1e3",
        "1,2,3,4,5,6,+1",
        "1,2,3,4,5,6,1-",
        "1,2,3,4,5,6,/",
        "1,2,3,4,5,6,:",
        "x,2,3,4,5,6,7",
        "hello,a,b,100,2",
        "hello,a,b,100,2,3,4",
        "hello,a,b,x,2,3",
        "hello,a,b,100,x,3",
        "hello,a,b,100,2,x",
        "hello,a,b,0,2,3",
        "hello,a,b,100,0,3",
        "hello,a,b,100,2,0",
        "hallo,a,b,100,2,3"
      })
  void whatIsNoSampleAndNoHelloIsSkippedWhole(String body) {
    byte[] line = withCheck(body);
    textLine(line);
    assertThat(kept.samples).isEmpty();
    assertThat(kept.hellos).isEmpty();
    assertThat(kept.skippedBytes).isEqualTo(line.length);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1,2,3,4,5,6,7", "1,2,3,4,5,6,7*0029B1", "*", "", "*000000"})
  void aLineWithoutItsCheckIsSkipped(String line) {
    textLine(ascii(line + "\n"));
    assertThat(kept.samples).isEmpty();
    assertThat(kept.skippedBytes).isEqualTo(line.length() + 1);
  }

  @Test
  void aHelloTellsNameSerialRateAndRanges() {
    textLine(withCheck("hello,pelvis,A-1,200,157,35"));
    assertThat(kept.hellos).containsExactly(new UnitHello("pelvis", "A-1", 200, 157, 35));
  }

  @Test
  void aHelloTravelsInPlainLettersAndWithDots() {
    byte[] line = new TextLineEncoder().hello(new UnitHello("Lead hand,2", "7/8", 500, 9.5, 0.25));
    assertThat(new String(line, StandardCharsets.US_ASCII))
        .startsWith("hello,Lead-hand-2,7-8,500.000,9.5000,0.25000*")
        .endsWith("\r\n");
  }

  @ParameterizedTest
  @CsvSource({"20, 1", "21, 0"})
  void aLineMayBeAsLongAsTheLongest(int length, int lines) {
    // Given: a longest line of 20 bytes. Expect: longer ones skipped with their end.
    List<String> read = new ArrayList<>();
    LineProtocol protocol = new LineProtocol(20, (line, sink) -> read.add(line));
    protocol.read(ByteBuffer.wrap(ascii("x".repeat(length) + "\r\nok\n")), kept);
    assertThat(read).hasSize(lines + 1);
    assertThat(read.get(read.size() - 1)).isEqualTo("ok");
    assertThat(kept.skippedBytes).isEqualTo(lines == 1 ? 0 : length + 2);
  }

  @ParameterizedTest
  @CsvSource({"20, 20, 0", "21, 0, 21"})
  void anUnfinishedLineIsLeftUntilItIsTooLong(int bytes, int left, int skipped) {
    LineProtocol protocol = new LineProtocol(20, (line, sink) -> true);
    ByteBuffer given = ByteBuffer.wrap(ascii("a\n" + "x".repeat(bytes)));
    protocol.read(given, kept);
    assertThat(given.remaining()).isEqualTo(left);
    assertThat(kept.skippedBytes).isEqualTo(skipped);
  }

  @Test
  void anEmptyLineIsALine() {
    List<String> read = new ArrayList<>();
    new LineProtocol(20, (line, sink) -> read.add(line))
        .read(ByteBuffer.wrap(ascii("\n\r\na")), kept);
    assertThat(read).containsExactly("", "");
  }

  // --- binary frame

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

  // --- byte stuffing and its frames

  @Test
  void brokenStuffingIsRefused() {
    for (byte[] broken : new byte[][] {{0}, {3, 1}, {1, 0}, {5, 1, 2, 3}}) {
      assertThatThrownBy(() -> Cobs.decode(broken)).hasMessageContaining("not byte-stuffed");
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

  // --- frames that begin with known bytes

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
  void framesInARowAreReadWithNothingBetween() {
    List<Integer> read = new ArrayList<>();
    SyncFrames frames = new SyncFrames(new byte[] {9}, 3, (f, s) -> read.add((int) f.getShort(1)));
    ByteBuffer given = ByteBuffer.wrap(new byte[] {9, 1, 0, 9, 0, 1, 7, 9, 2, 0, 9, 1});
    frames.read(given, kept);
    assertThat(read).containsExactly(1, 256, 2); // little endian
    assertThat(kept.skippedBytes).isEqualTo(1);
    assertThat(given.remaining()).isEqualTo(2);
  }

  // --- what feeds and finds an adapter

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
