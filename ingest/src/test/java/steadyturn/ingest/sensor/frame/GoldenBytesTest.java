package steadyturn.ingest.sensor.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.lab.BinaryFrameEncoder;
import steadyturn.ingest.lab.TextLineEncoder;
import steadyturn.ingest.sensor.AdapterFeed;
import steadyturn.ingest.sensor.KeptSamples;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.UnitHello;

/** The bytes printed in docs/formats-live.md are the bytes that are read and written. */
class GoldenBytesTest {

  private static final double[] ACCEL = {0.5, -1, 9.80665};
  private static final double[] GYRO = {0.1, -0.2, 0.3};
  private static final UnitHello PELVIS =
      new UnitHello("pelvis", "T-001", 500, 16 * 9.80665, Math.toRadians(2000));

  private static Map<String, byte[]> printed() throws IOException {
    Map<String, byte[]> bytes = new HashMap<>();
    List<String> lines = Files.readAllLines(Path.of("..", "docs", "formats-live.md"));
    boolean isGolden = false;
    for (int i = 0; i < lines.size(); i++) {
      isGolden = lines.get(i).startsWith("```") ? lines.get(i).equals("```golden") : isGolden;
      if (isGolden && lines.get(i).contains(" | ")) {
        String name = lines.get(i).substring(0, lines.get(i).indexOf(" | "));
        bytes.put(name, HexFormat.ofDelimiter(" ").parseHex(lines.get(i + 1)));
      }
    }
    return bytes;
  }

  private static KeptSamples read(SensorAdapter adapter, byte[] bytes) {
    KeptSamples kept = new KeptSamples();
    new AdapterFeed(adapter, kept).feed(bytes, bytes.length);
    return kept;
  }

  private static void expectGoldenSample(KeptSamples kept, double accelStep, double gyroStep) {
    assertThat(kept.samples).hasSize(1);
    assertThat(kept.skippedBytes).isZero();
    double[] sample = kept.samples.get(0);
    // Within 1e-9 s: whole microseconds in a double. Within half a step of the values' coding.
    assertThat(sample[0]).isCloseTo(12.345678, within(1e-9));
    for (int axis = 0; axis < 3; axis++) {
      assertThat(sample[1 + axis]).isCloseTo(ACCEL[axis], within(accelStep / 2));
      assertThat(sample[4 + axis]).isCloseTo(GYRO[axis], within(gyroStep / 2));
    }
  }

  @Test
  void theTextLineIsReadAndWrittenAsPrinted() throws IOException {
    Map<String, byte[]> printed = printed();
    byte[] hello = printed.getOrDefault("text-line hello", new byte[0]);
    byte[] sample = printed.getOrDefault("text-line sample", new byte[0]);
    TextLineEncoder encoder = new TextLineEncoder();
    assertThat(encoder.hello(PELVIS)).isEqualTo(hello);
    assertThat(encoder.sample(258, 12_345_678, ACCEL, GYRO)).isEqualTo(sample);
    expectGoldenSample(read(new TextLineAdapter(), sample), 1e-4, 1e-5);
    expectHello(read(new TextLineAdapter(), hello));
  }

  @Test
  void theBinaryFrameIsReadAndWrittenAsPrinted() throws IOException {
    Map<String, byte[]> printed = printed();
    byte[] hello = printed.getOrDefault("binary-frame hello", new byte[0]);
    byte[] sample = printed.getOrDefault("binary-frame sample", new byte[0]);
    BinaryFrameEncoder encoder = new BinaryFrameEncoder(16, 2000);
    assertThat(encoder.hello(PELVIS)).isEqualTo(hello);
    assertThat(encoder.sample(258, 12_345_678, ACCEL, GYRO)).isEqualTo(sample);
    byte[] plain = printed.getOrDefault("binary-frame sample plain", new byte[0]);
    assertThat(Unstuffed.of(java.util.Arrays.copyOf(sample, sample.length - 1))).isEqualTo(plain);
    double gyroStep = Math.toRadians(2000) / 32768;
    expectGoldenSample(read(new BinaryFrameAdapter(), sample), 16 * 9.80665 / 32768, gyroStep);
    expectHello(read(new BinaryFrameAdapter(), hello));
  }

  private static void expectHello(KeptSamples kept) {
    assertThat(kept.skippedBytes).isZero();
    UnitHello hello = kept.hellos.get(0);
    assertThat(hello.name()).isEqualTo("pelvis");
    assertThat(hello.serialNumber()).isEqualTo("T-001");
    assertThat(hello.rateHz()).isEqualTo(500);
    // Within 1e-4: the text line carries that many decimals.
    assertThat(hello.accelFullScaleMps2()).isCloseTo(156.9064, within(1e-4));
    assertThat(hello.gyroFullScaleRadPerS()).isCloseTo(34.90659, within(1e-4));
  }
}
