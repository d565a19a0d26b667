package steadyturn.ingest.sensor;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sensor.frame.LengthFrames;
import steadyturn.ingest.sensor.frame.SlipFrames;

/** What an adapter may use beside reading: wishes, the way back, facts, frames of other makes. */
class ContractTwoTest {

  private final KeptSamples kept = new KeptSamples();
  private final List<String> read = new ArrayList<>();

  @Test
  void wishesAreReadAndTheUsualOneHoldsOtherwise() {
    UnitOptions options = UnitOptions.of("rate=100,gain=2.5", 3);
    assertThat(options.unit()).isEqualTo(3);
    assertThat(options.oneOf("rate", 200, 100, 50)).isEqualTo(100);
    assertThat(options.oneOf("bandwidth", 98, 42)).isEqualTo(98);
    assertThat(options.number("gain", 1, 0, 2.5)).isEqualTo(2.5);
    assertThat(options.number("scale", Double.POSITIVE_INFINITY, 0, 1)).isInfinite();
    assertThat(options.has("gain")).isTrue();
    assertThat(options.has("other")).isFalse();
    options.requireAllAsked("tiny");
    assertThat(UnitOptions.none().unit()).isZero();
  }

  @Test
  void whatCannotBeIsRefusedWithWhatCan() {
    UnitOptions options = UnitOptions.of("rate=99,gain=2.6,colour=red", 0);
    assertThatThrownBy(() -> options.oneOf("rate", 200, 100))
        .hasMessage("rate is one of 200, 100, not 99");
    assertThatThrownBy(() -> options.number("gain", 1, 0, 2.5))
        .hasMessage("gain is a number from 0 to 2.5, not 2.6");
    assertThatThrownBy(() -> options.requireAllAsked("tiny"))
        .hasMessage("tiny does not know colour; it knows gain, rate");
    for (String broken : new String[] {"rate", "=5", "rate="}) {
      assertThatThrownBy(() -> UnitOptions.of(broken, 0)).hasMessageContaining("key=value");
    }
  }

  @Test
  void whatAUnitDoesNotTellIsTakenFromWhatIsKnownOfItsKind() {
    KnownUnit kind = KnownUnit.ofRanges(16, 2000).withSerialNumber("A").withRateHz(100);
    KnownUnit told = KnownUnit.NOTHING.withSerialNumber("B");
    UnitFacts facts = told.or(kind).facts(BodyPoint.PELVIS, 500);
    assertThat(facts.serialNumber()).isEqualTo("B");
    assertThat(facts.nominalRateHz()).isEqualTo(100);
    assertThat(facts.accelFullScaleMps2()).isCloseTo(16 * 9.80665, within(1e-9));
    assertThat(Math.toDegrees(facts.gyroFullScaleRadPerS())).isCloseTo(2000, within(1e-9));
    assertThat(kind.or(told)).isEqualTo(kind);
    assertThat(told.facts(BodyPoint.PELVIS, 500).nominalRateHz()).isEqualTo(500);
    KnownUnit slow = new UnitHello("", "C", 50, 5, 6).known();
    assertThat(slow).isEqualTo(new KnownUnit("C", OptionalDouble.of(50), 5, 6));
    assertThatThrownBy(() -> KnownUnit.ofRanges(0, 5)).hasMessageContaining("above 0");
    assertThatThrownBy(() -> kind.withRateHz(0)).hasMessageContaining("above 0");
  }

  @Test
  void twiceTheShareOfChanceMayPassACheck() {
    assertThat(FrameCheck.NONE.mostInvented()).isEqualTo(1);
    assertThat(FrameCheck.BITS_8.mostInvented()).isEqualTo(1 / 128.0);
    assertThat(FrameCheck.BITS_16.mostInvented()).isEqualTo(1 / 32768.0);
  }

  /** {@code #}, length of all, then bytes; {@code ~} begins a weak one. */
  private static final class Marked implements LengthFrames.Head {
    @Override
    public int length(ByteBuffer bytes, int at) {
      if (bytes.get(at) != '#' && bytes.get(at) != '~') {
        return NO_FRAME;
      }
      return at + 1 < bytes.limit() ? bytes.get(at + 1) - '0' : NOT_YET;
    }

    @Override
    public boolean isWeak(ByteBuffer bytes, int at) {
      return bytes.get(at) == '~';
    }
  }

  private LengthFrames frames() {
    return new LengthFrames(
        new Marked(),
        6,
        (frame, sink) -> {
          String text = US_ASCII.decode(frame).toString();
          read.add(text);
          return !text.endsWith("!");
        });
  }

  @ParameterizedTest
  @CsvSource({
    "#3a#4bc, #3a|#4bc, 0, 0", // two in a row
    "xx#3a#4b, #3a, 2, 3", // noise before, an unfinished one behind
    "#3!#3a, #3!|#3a, 3, 0", // a refused one costs one byte, and the search goes on inside
    "#7abcde#3a, #3a, 7, 0", // longer than any may be
    "#0a#3a, '', 0, 6", // a length of nothing: more bytes must come before it is told
    "~3a#3b, ~3a|#3b, 0, 0", // a weak one with its witness
    "~3ax#3b, #3b, 4, 0", // without it
    "~3a#, '', 0, 4", // that is not yet known
    "~3a, '', 0, 3",
  })
  void framesThatTellTheirLengthAreCut(String bytes, String expected, int skipped, int left) {
    ByteBuffer given = ByteBuffer.wrap(bytes.getBytes(US_ASCII));
    frames().read(given, kept);
    assertThat(String.join("|", read)).isEqualTo(expected);
    assertThat(kept.skippedBytes).isEqualTo(skipped);
    assertThat(given.remaining()).isEqualTo(left);
  }

  @Test
  void aReaderIsToldWhetherItsFrameFollowsTheOneBefore() {
    List<Boolean> follows = new ArrayList<>();
    LengthFrames[] cut = new LengthFrames[1];
    cut[0] =
        new LengthFrames(
            new Marked(), 6, (frame, sink) -> follows.add(cut[0].isUnbroken()) && true);
    cut[0].read(ByteBuffer.wrap("#3a#3bx#3c".getBytes(US_ASCII)), kept);
    assertThat(follows).containsExactly(false, true, false);
  }

  /** Pairs of the byte stuffing examples in the x-IMU3 user manual. */
  @ParameterizedTest
  @CsvSource({
    "45 58 41 4D 50 4C 45, 45 58 41 4D 50 4C 45 0A",
    "45 0A 41 4D 50 4C 45, 45 DB DC 41 4D 50 4C 45 0A",
    "45 58 DB 4D 50 4C 45, 45 58 DB DD 4D 50 4C 45 0A",
    "45 58 41 4D 50 DB 0A, 45 58 41 4D 50 DB DD DB DC 0A",
  })
  void stuffedFramesAreThoseOfTheManual(String plain, String stuffed) {
    HexFormat hex = HexFormat.ofDelimiter(" ").withUpperCase();
    SlipFrames.Marks marks = new SlipFrames.Marks(0x0A, 0xDB, 0xDC, 0xDD);
    byte[] bytes = hex.parseHex(stuffed);
    assertThat(SlipFrames.stuffed(marks, hex.parseHex(plain))).isEqualTo(bytes);
    List<String> frames = new ArrayList<>();
    SlipFrames cut =
        new SlipFrames(
            marks,
            12,
            (frame, sink) -> {
              byte[] all = new byte[frame.remaining()];
              frame.get(all);
              return frames.add(hex.formatHex(all));
            });
    cut.read(ByteBuffer.wrap(bytes), kept);
    assertThat(frames).containsExactly(plain);
    assertThat(kept.skippedBytes).isZero();
  }

  @ParameterizedTest
  @ValueSource(strings = {"41 DB 41 0A", "41 DB 0A", "0A", "41 41 41 41 41 0A", "41 41 41 41 41"})
  void brokenStuffingAndFramesTooLongAreSkipped(String bytes) {
    byte[] given = HexFormat.ofDelimiter(" ").parseHex(bytes);
    SlipFrames.Marks marks = new SlipFrames.Marks(0x0A, 0xDB, 0xDC, 0xDD);
    new SlipFrames(marks, 4, (frame, sink) -> true).read(ByteBuffer.wrap(given), kept);
    assertThat(kept.skippedBytes).isEqualTo(given.length);
  }
}
