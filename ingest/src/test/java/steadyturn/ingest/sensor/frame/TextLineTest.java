package steadyturn.ingest.sensor.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.ingest.lab.TextLineEncoder;
import steadyturn.ingest.sensor.KeptSamples;
import steadyturn.ingest.sensor.UnitHello;

/** Text lines at both sides of what they may be; expect the samples and what was skipped. */
class TextLineTest {

  private final KeptSamples kept = new KeptSamples();

  private void textLine(byte[] line) {
    new TextLineAdapter().read(ByteBuffer.wrap(line), kept);
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  private static byte[] withCheck(String body) {
    return ascii(body + "*" + TextLineAdapter.check(body) + "\n");
  }

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
  @CsvSource({"19, 1", "20, 0"})
  void aLineMayBeAsLongAsTheLongest(int length, int lines) {
    // Given: a longest line of 20 bytes, its CR among them. Expect: longer ones skipped with their
    // end, as they are where they come byte by byte.
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
}
