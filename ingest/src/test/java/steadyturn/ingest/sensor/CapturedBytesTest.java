package steadyturn.ingest.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.lab.BinaryFrameEncoder;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sensor.frame.BinaryFrameAdapter;

class CapturedBytesTest {

  @TempDir Path folder;

  @Test
  void anEndInTheMiddleOfAFrameIsToldAsThatNotAsBytesWithoutSense() throws IOException {
    byte[] whole = sent(0, 2000);
    CapturedBytes read = read(Arrays.copyOf(whole, whole.length - 3));
    assertThat(read.skippedBytes()).isZero();
    assertThat(read.unfinishedBytes())
        .isEqualTo(
            new BinaryFrameEncoder(16, 2000).sample(9, 0, new double[3], new double[3]).length - 3);
    assertThat(read.unit().size()).isEqualTo(9);
  }

  @Test
  void narrowerRangesLaterInAFileAreNotTakenForThoseOfItsStart() {
    // Given: ten samples at 2000 deg/s, then ten after a hello of 500. Expect: refused, with where.
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.writeBytes(sent(0, 2000));
    bytes.writeBytes(sent(10, 500));
    assertThatThrownBy(() -> read(bytes.toByteArray()))
        .hasMessageContaining(
            "the unit says 200 Hz, 16 g, 500 deg/s after 10 samples at 200 Hz, 16 g, 2000 deg/s."
                + " Cut the file there, import two.");
  }

  private CapturedBytes read(byte[] bytes) throws IOException {
    Path file = Files.write(folder.resolve("unit.bin"), bytes);
    return CapturedBytes.read(
        file, new BinaryFrameAdapter(), 0, BodyPoint.PELVIS, OptionalDouble.empty());
  }

  private static byte[] sent(int from, int degPerS) {
    BinaryFrameEncoder unit = new BinaryFrameEncoder(16, degPerS);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.writeBytes(
        unit.hello(new UnitHello("pelvis", "A", 200, 16 * 9.80665, Math.toRadians(degPerS))));
    for (int i = from; i < from + 10; i++) {
      bytes.writeBytes(unit.sample(i, 5000L * i, new double[] {0, 0, 9.8}, new double[3]));
    }
    return bytes.toByteArray();
  }
}
