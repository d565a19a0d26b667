package steadyturn.ingest.recording.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

class NumbersTest {

  private static final long SEED = 8675309;

  @Test
  void everyNumberIsReadToTheLastBitInEveryNotation() {
    // Given: 20,000 random numbers (seed 8675309) in fixed, short, long and exponent notation, and
    // odd ones. Expect: bit for bit what Double.parseDouble makes of the same text.
    Random random = new Random(SEED);
    List<String> texts =
        new ArrayList<>(
            List.of(
                "0",
                "-0",
                "0.0",
                "-0.000000",
                "+1.5",
                "1.",
                ".5",
                "-.25",
                "00012.50",
                "1e3",
                "-1.5E-7",
                "9007199254740993",
                "0.1234567890123456789",
                "123456789012345",
                "999999999999999.9",
                "1e-320",
                "4.9e-324",
                "1.7976931348623157e308"));
    for (int i = 0; i < 5_000; i++) {
      double value = random.nextGaussian() * Math.pow(10, random.nextInt(9) - 4);
      texts.add(String.format(Locale.ROOT, "%.6f", value));
      texts.add(String.format(Locale.ROOT, "%.12f", value));
      texts.add(Double.toString(value));
      texts.add(String.format(Locale.ROOT, "%.3e", value));
    }
    double[] read = read(texts);
    for (int i = 0; i < texts.size(); i++) {
      assertThat(Double.doubleToRawLongBits(read[i]))
          .as(texts.get(i))
          .isEqualTo(Double.doubleToRawLongBits(Double.parseDouble(texts.get(i))));
    }
  }

  /** Reads the texts as the accelerometer x column of a table without a time column. */
  private static double[] read(List<String> texts) {
    StringBuilder table = new StringBuilder();
    texts.forEach(text -> table.append(text).append("\t0\t0\t0\t0\t0\n"));
    List<Channel> channels = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      channels.add(
          new Channel(
              i + 2,
              "c" + i,
              "xyz".substring(i % 3, i % 3 + 1),
              i < 3 ? "ACCEL" : "GYRO",
              "pelvis",
              i < 3 ? "m/s^2" : "rad/s",
              false,
              Double.NaN,
              false));
    }
    Path file = Path.of("numbers_motion.tsv");
    MotionLayout layout =
        MotionLayout.of(file, channels, word -> Optional.of(BodyPoint.PELVIS), new ArrayList<>());
    SampleColumns columns = new SampleColumns(layout.slots(), 0);
    try (MotionStream stream =
        new MotionStream(
            file,
            new ByteArrayInputStream(table.toString().getBytes(StandardCharsets.UTF_8)),
            layout,
            100)) {
      stream.fill(columns, Double.POSITIVE_INFINITY);
    }
    UnitStream unit =
        columns.handOver(UnitFacts.plain(BodyPoint.PELVIS, 100), MotionLayout.firstSlot(0), 0);
    return unit.accelColumnMps2(0);
  }
}
