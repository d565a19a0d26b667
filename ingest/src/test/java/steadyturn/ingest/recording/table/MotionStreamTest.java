package steadyturn.ingest.recording.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.ingest.sample.UnitStream;

/** Tables of a few lines written by hand; expect the numbers of the text, in SI units. */
@SuppressWarnings("StringConcatToTextBlock") // the bytes of a table, line by line
class MotionStreamTest {

  private static final String THREE =
      "10\t1\t2\t3\t4\t5\t6\n20\t-1\t-2\t-3\t-4\t-5\t-6\n40\t7\t8\t9\t10\t11\t12\n";

  private static void expectThree(UnitStream unit) {
    assertThat(unit.size()).isEqualTo(3);
    for (int axis = 0; axis < 3; axis++) {
      assertThat(unit.accelColumnMps2(axis)).containsExactly(1 + axis, -1 - axis, 7 + axis);
      assertThat(unit.gyroColumnRadPerS(axis)).containsExactly(4 + axis, -4 - axis, 10 + axis);
    }
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({"s, 1", "ms, 1e-3", "us, 1e-6", "ns, 1e-9", "min, 60"})
  void timeIsTakenIntoSecondsAndBeginsAtTheFirstSample(String unit, double factor) {
    // Given: 10, 20, 40 of a unit. Expect: 0, 10, 30 of it in s; within a rounding.
    UnitStream read = MotionBytes.usual(unit).read(THREE);
    expectThree(read);
    assertThat(read.timeColumnS())
        .containsExactly(new double[] {0, 10 * factor, 30 * factor}, within(1e-14 * factor * 100));
  }

  @Test
  void eachColumnGoesWhereItsChannelSaysInSiUnits() {
    // Given: columns in another order, rates in deg/s, acceleration in g (9.80665 m/s^2 by
    // definition), columns of no use between. Expect: axes and units put right.
    MotionBytes table =
        new MotionBytes()
            .column("GYRO", "z", "deg/s")
            .column("ACCEL", "y", "g")
            .column("MAGN", "x", "uT")
            .column("ACCEL", "x", "g")
            .column("GYRO", "x", "deg/s")
            .column("LATENCY", "n/a", "s")
            .column("ACCEL", "z", "mg")
            .column("GYRO", "y", "rad/s")
            .column("MISC", "n/a", "n/a");
    UnitStream read =
        table.read("180\t2\t17\t-1\t-90\t5\t500\t0.25\tword\n1\t1\t1\t1\t1\t6\t1\t1\t\n");
    assertThat(read.timeColumnS()).containsExactly(0, 1);
    assertThat(read.accelMps2(0, 0)).isEqualTo(-9.80665);
    assertThat(read.accelMps2(1, 0)).isEqualTo(2 * 9.80665);
    assertThat(read.accelMps2(2, 0)).isCloseTo(0.5 * 9.80665, within(1e-14));
    assertThat(read.gyroRadPerS(0, 0)).isCloseTo(-Math.PI / 2, within(1e-15));
    assertThat(read.gyroRadPerS(1, 0)).isEqualTo(0.25);
    assertThat(read.gyroRadPerS(2, 0)).isCloseTo(Math.PI, within(1e-15));
    assertThat(table.notices).hasSize(1);
    assertThat(table.notices.get(0)).contains("MAGN, MISC");
  }

  @Test
  void withoutATimeColumnSamplesAreCounted() {
    UnitStream read =
        new MotionBytes().six().countedAt(200).read("1\t2\t3\t4\t5\t6\n\n1\t2\t3\t4\t5\t6\n");
    assertThat(read.timeColumnS()).containsExactly(0, 0.005);
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n"})
  void lineEndsOfAllKindsAndAMissingLastOneMakeNoDifference(String end) {
    String text = THREE.replace("\n", end);
    expectThree(MotionBytes.usual("ms").read(text));
    expectThree(MotionBytes.usual("ms").read(text.substring(0, text.length() - end.length())));
    expectThree(MotionBytes.usual("ms").read(end + text + end + end));
    expectThree(MotionBytes.usual("ms").read("\uFEFF" + text));
  }

  @Test
  void aLostValueInAnyFormIsNaNAndTheFirstIsTold() {
    MotionBytes table = MotionBytes.usual("s");
    UnitStream read =
        table.read("0\t1\t2\t3\t4\t5\t6\n1\tn/a\t2\tN/A\t4\t5\t6\n2\t1\tNaN\t3\tnan\t5\t\n");
    assertThat(read.accelColumnMps2(0)).containsExactly(1, Double.NaN, 1);
    assertThat(read.accelColumnMps2(1)).containsExactly(2, 2, Double.NaN);
    assertThat(read.accelColumnMps2(2)).containsExactly(3, Double.NaN, 3);
    assertThat(read.gyroColumnRadPerS(0)).containsExactly(4, 4, Double.NaN);
    assertThat(read.gyroColumnRadPerS(2)).containsExactly(6, 6, Double.NaN);
    assertThat(table.notices)
        .containsExactly(
            "made_motion.tsv, line 2: the first of 5 lost values (n/a, NaN or an empty cell).");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "n/b", "x/a", "nax", "na", "n.a", "nxn", "abc", "1,5", "--1", "1-", "0x1", "1 2", "inf"
      })
  void whatIsNoNumberIsRefusedWithItsPlace(String cell) {
    assertThatThrownBy(
            () ->
                MotionBytes.usual("s")
                    .read(
                        "0\t1\t2\t3\t4\t5\t6\n1\t1\t"
                            + cell
                            + "\t3\t4\t5\t6\n2\t1\t2\t3\t4\t5\t6\n"))
        .isInstanceOf(RecordingException.class)
        .hasMessageStartingWith("made_motion.tsv, line 2, column ACCELy: \"" + cell + "\" is not");
  }

  @Test
  void aSampleAtTheSameTimeIsLeftOutAndOneEarlierRefused() {
    MotionBytes table = MotionBytes.usual("s");
    UnitStream read =
        table.read(
            "5\t1\t2\t3\t4\t5\t6\n5\t9\t9\t9\t9\t9\t9\n6\t1\t2\t3\t4\t5\t6\n"
                + "6\t9\t9\t9\t9\t9\t9\nn/a\t9\t9\t9\t9\t9\t9\n");
    assertThat(read.timeColumnS()).containsExactly(0, 1);
    assertThat(read.accelColumnMps2(0)).containsExactly(1, 1);
    assertThat(String.join("|", table.notices))
        .contains("line 2: the first of 2 samples that repeat")
        .contains(": 1 samples without a time left out.");
    assertThatThrownBy(
            () -> MotionBytes.usual("s").read("5\t1\t2\t3\t4\t5\t6\n4.5\t1\t2\t3\t4\t5\t6\n"))
        .hasMessageContaining("line 2: time runs backwards, from 0.0 s to -0.5 s");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2.00\t1.00\t2.00\t3.00\t4.00\t5.00", // a column less at the end
        "2.00\t1.00\t2.00\t3.00\t4.00\t5.00\tn/", // a word cut short
        "2.00\t1.00\t2.00\t3.00\t4.00\t5.00\t6.0", // fewer decimals than in the line before
        "2.00\t1.00\t2.0",
        "2.00"
      })
  void aLastLineThatWasCutIsLeftOut(String line) {
    MotionBytes table = MotionBytes.usual("s");
    String whole =
        "0.00\t1.00\t2.00\t3.00\t4.00\t5.00\t6.00\n1.00\t1.00\t2.00\t3.00\t4.00\t5.00\t6.00\n";
    UnitStream read = table.read(whole + line);
    assertThat(read.size()).isEqualTo(2);
    assertThat(table.notices)
        .containsExactly("made_motion.tsv, line 3: the last line is cut short; it was left out.");
  }

  @Test
  void aLastLineWithoutItsLineEndIsWhole() {
    MotionBytes table = MotionBytes.usual("s");
    assertThat(table.read("0\t1\t2\t3\t4\t5\t6.25\n1\t1\t2\t3\t4\t5\t6.25").size()).isEqualTo(2);
    assertThat(table.notices).isEmpty();
  }

  @Test
  void linesFarBeyondOneBufferAreReadToTheLast() {
    // Given: 60,000 lines of random numbers (seed 5), some 3 MB, handed over in odd pieces. Expect:
    // every value, in its line.
    int n = 60_000;
    Random random = new Random(5);
    StringBuilder text = new StringBuilder();
    double[] accel = new double[n];
    for (int i = 0; i < n; i++) {
      accel[i] = random.nextInt(2_000_000) / 1000.0 - 1000;
      text.append(i).append('\t').append(accel[i]).append("\t2.5\t3\t4\t5\t6.125").append('\n');
    }
    byte[] bytes = text.toString().getBytes(StandardCharsets.US_ASCII);
    InputStream inPieces =
        new ByteArrayInputStream(bytes) {
          @Override
          public synchronized int read(byte[] into, int at, int length) {
            return super.read(into, at, Math.min(length, 4093));
          }
        };
    UnitStream read = MotionBytes.usual("ms").read(inPieces);
    assertThat(read.size()).isEqualTo(n);
    assertThat(read.accelColumnMps2(0)).containsExactly(accel);
    assertThat(read.gyroColumnRadPerS(2)).containsOnly(6.125);
  }

  @Test
  void anEmptyTableAndOneWithoutAWholeSampleAreToldApart() {
    assertThatThrownBy(() -> MotionBytes.usual("s").read("")).hasMessageContaining("is empty.");
    assertThatThrownBy(() -> MotionBytes.usual("s").read("n/a\t1\t2\t3\t4\t5\t6\n"))
        .hasMessageContaining("holds no whole sample.");
  }

  @ParameterizedTest
  @CsvSource({"8, 8 columns", "6, 6 columns", "1, 1 column "})
  void aWrongNumberOfColumnsIsRefused(int columns, String told) {
    String line = "1" + "\t1".repeat(columns - 1) + "\n";
    assertThatThrownBy(() -> MotionBytes.usual("s").read(THREE + line + THREE))
        .hasMessageContaining("line 4: " + told)
        .hasMessageContaining("names 7.");
  }
}
