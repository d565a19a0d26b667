package steadyturn.cli.command.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.cli.CommandLineRun;
import steadyturn.ingest.lab.Frames55Encoder;

/** Bytes of units, brought into the archive by their adapters. */
class CapturedImportTest {

  @TempDir private Path folder;

  private CommandLineRun imported(String adapter, String table, String... more) {
    String[] words = {
      "import", "--adapter", adapter, table, "--player", "mika", "--out", archive().toString()
    };
    String[] all = java.util.Arrays.copyOf(words, words.length + more.length);
    System.arraycopy(more, 0, all, words.length, more.length);
    return CommandLineRun.of(all);
  }

  private Path archive() {
    return folder.resolve("archive");
  }

  @Test
  void aLoggersFileIsReadAndRefusedForItsNarrowRange() {
    // Given: 11,320 samples of an AX6 at 16 g and 250 deg/s (repo wadpac/GGIRread@45ef623c,
    // Apache-2.0). Expect: all of them, and a check that says what to set.
    Path file = Path.of("../../shared/data/units/ax6_testfile.cwa");
    assumeTrue(
        Files.exists(file),
        "left out: the open recordings are not at ../shared/data beside the project");
    CommandLineRun run = imported("ax6-cwa", "pelvis=" + file);
    assertThat(run.exitCode()).isZero();
    assertThat(run.out()).contains("pelvis, 11320 samples").contains("at 100.00 Hz");
    CommandLineRun check = CommandLineRun.of("check", archive().toString());
    assertThat(check.exitCode()).isEqualTo(1);
    assertThat(check.out()).contains("no more than 250 deg/s").contains("Set its range to 2000");
  }

  @Test
  void aUnitWithoutATimeNeedsItsRate() throws IOException {
    Frames55Encoder unit = new Frames55Encoder(true);
    Path file = folder.resolve("capture.bin");
    StringBuilder bytes = new StringBuilder();
    for (int k = 0; k < 400; k++) {
      double[] still = {0, 0, 9.80665};
      bytes.append(
          new String(unit.sample(k, 0, still, new double[3]), StandardCharsets.ISO_8859_1));
    }
    Files.writeString(file, bytes, StandardCharsets.ISO_8859_1);
    CommandLineRun without = imported("frames-55", "pelvis=" + file);
    assertThat(without.exitCode()).isEqualTo(1);
    assertThat(without.err()).contains("sends no time").contains("--rate");
    CommandLineRun with = imported("frames-55", "pelvis=" + file, "--rate", "100");
    assertThat(with.exitCode()).isZero();
    assertThat(with.out()).contains("pelvis, 399 samples, 4.0 s at 100.00 Hz");
  }

  @Test
  void oneOfSeveralUnitsInAFileIsNamedByItsNumber() throws IOException {
    StringBuilder text = new StringBuilder();
    for (int k = 0; k < 500; k++) {
      String line = "%sI,%d,0.0000,0.0000,0.0000,0.0000,0.0000,1.0000%n";
      text.append(String.format(Locale.ROOT, line, "^A", 5000 * k));
      text.append(String.format(Locale.ROOT, line, "^B", 5000 * k));
    }
    Path file = folder.resolve("log.ximu3");
    Files.writeString(file, text);
    String[] hand = {"lead_hand=" + file + "#2", "--one-clock"};
    CommandLineRun untold = imported("x-imu3", "pelvis=" + file + "#1", hand[0]);
    assertThat(untold.exitCode()).isEqualTo(1);
    assertThat(untold.err()).contains("lead_hand: nothing in its movement tells", "--one-clock");
    CommandLineRun run = imported("x-imu3", "pelvis=" + file + "#1", hand);
    assertThat(run.exitCode()).isZero();
    assertThat(run.out()).contains("pelvis, 500 samples").contains("lead hand, 500 samples");
    CommandLineRun none = imported("x-imu3", "pelvis=" + file + "#3");
    assertThat(none.err()).contains("finds 0 samples");
  }

  @Test
  void howToReadItMustBeSaidOnce() {
    CommandLineRun run =
        CommandLineRun.of("import", "x.bin", "--player", "mika", "--out", archive().toString());
    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(run.err()).contains("--adapter NAME");
    CommandLineRun wrong = imported("frames-55:rate=7", "pelvis=x.bin");
    assertThat(wrong.exitCode()).isEqualTo(2);
    assertThat(wrong.err()).contains("rate is one of 200, 100, 50, 20, 10, not 7");
    CommandLineRun nowhere = imported("frames-55", "x.bin");
    assertThat(nowhere.err()).contains("say where it was worn");
  }
}
