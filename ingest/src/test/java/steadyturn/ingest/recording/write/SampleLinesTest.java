package steadyturn.ingest.recording.write;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@SuppressWarnings("StringConcatToTextBlock") // the bytes of a table, line by line
class SampleLinesTest {

  private static final long SEED = 20260403;

  private static String line(double timeS, double accel, double gyro) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    SampleLines lines = new SampleLines(bytes);
    lines.write(timeS, new double[] {accel, 0, 1}, new double[] {gyro, 0, -1});
    lines.flush();
    return bytes.toString(StandardCharsets.US_ASCII);
  }

  @Test
  void aLineIsTimeThenAccelerationThenRateEachAxisInItsPlace() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (SampleLines lines = new SampleLines(bytes)) {
      lines.write(0, new double[] {1, -2, 9.80665}, new double[] {0.5, -0.25, 34.906585});
      lines.write(0.002, new double[] {Double.NaN, 4, 5}, new double[] {6, Double.NaN, 8});
    }
    assertThat(bytes.toString(StandardCharsets.US_ASCII))
        .isEqualTo(
            "0.000000\t1.00000\t-2.00000\t9.80665\t0.500000\t-0.250000\t34.906585\n"
                + "0.002000\tn/a\t4.00000\t5.00000\t6.000000\tn/a\t8.000000\n");
  }

  @ParameterizedTest
  @CsvSource({
    "0.0000004, 0.000000",
    "0.0000006, 0.000001",
    "-0.0000006, -0.000001",
    "-0.0000004, 0.000000",
    "0.1234567, 0.123457",
    "9.999999, 9.999999",
    "9.9999996, 10.000000",
    "10, 10.000000",
    "3599.999999, 3599.999999",
    "999999999, 999999999.000000",
    "1000000000, 1000000000.000000",
    "12345678901, 12345678901.000000",
    "-12345678901, -12345678901.000000",
    "Infinity, n/a",
    "-Infinity, n/a",
    "NaN, n/a"
  })
  void aTimeHasSixDecimals(double timeS, String expected) throws IOException {
    assertThat(line(timeS, 0, 0))
        .isEqualTo(expected + "\t0.00000\t0.00000\t1.00000\t0.000000\t0.000000\t-1.000000\n");
  }

  @Test
  void everyNumberIsTheNearestOfItsDecimals() throws IOException {
    // Given: 2000 random numbers of eight magnitudes, seed 20260403. Expect: what BigDecimal rounds
    // them to; random doubles lie on no tie.
    Random random = new Random(SEED);
    for (int i = 0; i < 2000; i++) {
      double accel = random.nextGaussian() * Math.pow(10, i % 8 - 2);
      String[] cells = line(0, accel, accel).split("\t", -1);
      assertThat(cells[1]).isEqualTo(rounded(accel, 5));
      assertThat(cells[4]).isEqualTo(rounded(accel, 6));
    }
  }

  private static String rounded(double number, int decimals) {
    BigDecimal rounded = new BigDecimal(number).setScale(decimals, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0
        ? BigDecimal.ZERO.setScale(decimals).toPlainString()
        : rounded.toPlainString();
  }

  @Test
  void evenTheLargestDoubleIsALine() throws IOException {
    String[] cells = line(0, Double.MAX_VALUE, -Double.MAX_VALUE).split("\t", -1);
    assertThat(cells).hasSize(7);
    assertThat(Double.parseDouble(cells[1])).isEqualTo(Double.MAX_VALUE);
    assertThat(Double.parseDouble(cells[4])).isEqualTo(-Double.MAX_VALUE);
  }

  @Test
  void flushAndCloseReachTheStream() throws IOException {
    StringBuilder heard = new StringBuilder();
    OutputStream out =
        new OutputStream() {
          @Override
          public void write(int b) {}

          @Override
          public void flush() {
            heard.append("flush ");
          }

          @Override
          public void close() {
            heard.append("close");
          }
        };
    SampleLines lines = new SampleLines(out);
    lines.flush();
    lines.close();
    assertThat(heard.toString()).isEqualTo("flush close");
  }
}
