package steadyturn.ingest.sensor.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sensor.WrappingCounter;

class ChecksTest {

  private static final HexFormat HEX = HexFormat.ofDelimiter(" ");

  // Source: the public catalogue of parametrised CRC algorithms; the check is that of "123456789".
  @ParameterizedTest
  @CsvSource({
    "CCITT_FALSE, 29B1",
    "XMODEM, 31C3",
    "ARC, BB3D",
    "KERMIT, 2189",
    "X_25, 906E",
    "MODBUS, 4B37"
  })
  void everyCrcMakesItsCheckValue(Crc16 crc, String expected) {
    byte[] digits = "123456789".getBytes(StandardCharsets.US_ASCII);
    assertThat(String.format("%04X", crc.of(digits))).isEqualTo(expected);
  }

  @Test
  void theCrcOfTheFrameMakesItsCheckValue() {
    byte[] digits = "123456789".getBytes(StandardCharsets.US_ASCII);
    assertThat(BinaryFrameAdapter.crc(java.nio.ByteBuffer.wrap(digits), 9)).isEqualTo(0xCBF43926);
  }

  // Source: examples of Cheshire and Baker as they circulate with open codecs.
  @ParameterizedTest
  @CsvSource({
    "00, 01 01",
    "11 22 00 33, 03 11 22 02 33",
    "11 00 00 00, 02 11 01 01 01",
    "00 11 00, 01 02 11 01"
  })
  void byteStuffingMakesTheKnownExamples(String plain, String stuffed) {
    assertThat(HEX.formatHex(Cobs.encode(HEX.parseHex(plain)))).isEqualTo(stuffed);
    assertThat(HEX.formatHex(Unstuffed.of(HEX.parseHex(stuffed)))).isEqualTo(plain);
  }

  @Test
  void aBlockOf254BytesBecomes255AndOneMoreBeginsTheNext() {
    byte[] full = counting(254);
    byte[] stuffed = Cobs.encode(full);
    assertThat(stuffed).hasSize(255);
    assertThat(stuffed[0]).isEqualTo((byte) 0xFF);
    // 01..FF becomes FF 01..FE 02 FF.
    byte[] longer = Cobs.encode(counting(255));
    assertThat(longer).hasSize(257);
    assertThat(HEX.formatHex(longer, 254, 257)).isEqualTo("fe 02 ff");
  }

  @Test
  void stuffingAndUnstuffingGiveTheSameBytesBack() {
    Random random = new Random(11);
    for (int length = 0; length < 600; length++) {
      byte[] plain = new byte[length];
      for (int i = 0; i < length; i++) {
        plain[i] = (byte) (random.nextInt(4) == 0 ? 0 : random.nextInt(256));
      }
      byte[] stuffed = Cobs.encode(plain);
      assertThat(stuffed).doesNotContain(0);
      assertThat(Unstuffed.of(stuffed)).as("length " + length).isEqualTo(plain);
    }
  }

  private static byte[] counting(int n) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    for (int i = 1; i <= n; i++) {
      bytes.write(i);
    }
    return bytes.toByteArray();
  }

  @Test
  void aCounterGoesOnOverItsWrap() {
    WrappingCounter micros = new WrappingCounter(32);
    assertThat(micros.next(0xFFFFFFF0L)).isEqualTo(0xFFFFFFF0L);
    assertThat(micros.next(0x10)).isEqualTo(0x100000010L);
    assertThat(micros.next(0x20)).isEqualTo(0x100000020L);
  }
}
