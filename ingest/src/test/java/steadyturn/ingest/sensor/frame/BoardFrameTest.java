package steadyturn.ingest.sensor.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.sensor.AdapterFeed;
import steadyturn.ingest.sensor.KeptSamples;

/** The C file for boards writes the frames that are printed in the format's page and read here. */
class BoardFrameTest {

  private static final String MAIN =
      """
      #include <stdio.h>
      #include "steadyturn_frame.h"

      int main(void) {
        uint8_t out[STEADYTURN_MOST_BYTES];
        const int16_t accel[3] = {104, -209, 2048};
        const int16_t gyro[3] = {94, -188, 282};
        fwrite(out, 1, steadyturn_hello(out, 500, 16, 2000, "pelvis", "T-001"), stdout);
        fwrite(out, 1, steadyturn_sample(out, 258, 12345678, 16, 2000, accel, gyro), stdout);
        for (int k = 0; k < 2000; k++) {
          const int16_t a[3] = {(int16_t)(k * 7919), (int16_t)-k, (int16_t)(k << 8)};
          const int16_t g[3] = {(int16_t)(k & 1), (int16_t)(k * 31), (int16_t)(-256 * k)};
          fwrite(out, 1,
                 steadyturn_sample(out, (uint16_t)(65000 + k), 4294000000u + 2000u * k, 16, 2000,
                                   a, g),
                 stdout);
        }
        return 0;
      }
      """;

  @TempDir private Path folder;

  @BeforeEach
  void needsACompiler() {
    boolean isThere = Files.exists(Path.of("/usr/bin/cc"));
    boolean mustBeThere = "1".equals(System.getenv("STEADYTURN_CHECK"));
    assumeTrue(isThere || mustBeThere, "left out: there is no C compiler (cc)");
  }

  private byte[] written() throws IOException, InterruptedException {
    Path board = Path.of("..", "docs", "board").toAbsolutePath();
    Files.writeString(folder.resolve("main.c"), MAIN);
    run(
        "cc",
        "-std=c99",
        "-Wall",
        "-Wextra",
        "-Werror",
        "-I" + board,
        "-o",
        folder.resolve("frames").toString(),
        folder.resolve("main.c").toString(),
        board.resolve("steadyturn_frame.c").toString());
    return run(folder.resolve("frames").toString());
  }

  private static byte[] run(String... words) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(words).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    byte[] out = process.getInputStream().readAllBytes();
    assertThat(process.waitFor()).as(String.join(" ", words)).isZero();
    return out;
  }

  private static byte[] golden(String name) throws IOException {
    List<String> lines = Files.readAllLines(Path.of("..", "docs", "formats-live.md"));
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).startsWith(name + " |")) {
        return HexFormat.ofDelimiter(" ").parseHex(lines.get(i + 1));
      }
    }
    throw new IllegalStateException("no golden bytes of " + name);
  }

  @Test
  void theBoardsFramesAreTheGoldenOnesAndEveryOneIsRead() throws Exception {
    byte[] bytes = written();
    byte[] hello = golden("binary-frame hello");
    byte[] sample = golden("binary-frame sample");
    assertThat(bytes).startsWith(hello);
    assertThat(java.util.Arrays.copyOfRange(bytes, hello.length, hello.length + sample.length))
        .isEqualTo(sample);
    KeptSamples kept = new KeptSamples();
    new AdapterFeed(new BinaryFrameAdapter(), kept).feed(bytes, bytes.length);
    assertThat(kept.hellos).hasSize(1);
    assertThat(kept.samples).hasSize(2001);
    assertThat(kept.skippedBytes).isZero();
    // Given: sample k at 4294000000 + 2000 k us, which wraps after 483 of them. Expect: steps of 2
    // ms.
    // Within 1e-9 s: whole microseconds in a double.
    for (int k = 1; k < 2000; k++) {
      double stepS = kept.samples.get(1 + k)[0] - kept.samples.get(k)[0];
      assertThat(stepS).isCloseTo(0.002, within(1e-9));
      assertThat(kept.samples.get(1 + k)[2]).isCloseTo(-k * 16 * 9.80665 / 32768, within(1e-9));
      double turn = (short) (k * 31) * Math.toRadians(2000) / 32768;
      assertThat(kept.samples.get(1 + k)[5]).isCloseTo(turn, within(1e-9));
    }
  }
}
