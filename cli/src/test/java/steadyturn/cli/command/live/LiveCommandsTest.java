package steadyturn.cli.command.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.cli.CommandLineRun;
import steadyturn.ingest.recording.disk.ArchiveLock;

class LiveCommandsTest {

  @TempDir private Path folder;

  @Test
  void aPortThatIsNotThereIsNamedByUnits() {
    CommandLineRun run =
        CommandLineRun.of("units", folder.resolve("none").toString(), "--seconds", "0.5");
    assertThat(run.exitCode()).isZero();
    assertThat(run.out())
        .contains("  binary-frame")
        .contains("  frames-55")
        .contains("does not exist");
    // Measured, as docs/units.md says; a sum of 8 bits lets some through.
    assertThat(run.out()).containsPattern("frames-55 +8 bits.*of 10,000,000 damaged");
  }

  @Test
  void aBrokenPlugInIsNamedAndPassedOver() throws java.io.IOException {
    Path plugins = Files.createDirectories(folder.resolve("plugins"));
    Files.writeString(plugins.resolve("broken.jar"), "no archive");
    CommandLineRun run =
        CommandLineRun.of(
            "units",
            folder.resolve("none").toString(),
            "--seconds",
            "0.3",
            "--plugins",
            plugins.toString());
    assertThat(run.exitCode()).isZero();
    assertThat(run.err()).contains("broken.jar was passed over");
    assertThat(run.out()).contains("  binary-frame");
  }

  @Test
  void aRecordingWithoutASampleTellsWhyAndFails() {
    Path root = folder.resolve("lessons");
    CommandLineRun run =
        CommandLineRun.of(
            "record",
            root.toString(),
            "pelvis=" + folder.resolve("none"),
            "--player",
            "mika",
            "--handed",
            "right",
            "--seconds",
            "1.2");
    assertThat(run.exitCode()).isEqualTo(1);
    assertThat(run.err()).contains("none) does not exist").contains("nothing was recorded");
    assertThat(run.out()).contains("0 samples");
    assertThat(root.resolve("participants.tsv")).exists();
  }

  @Test
  void wrongWordsOfTheCommandLineAreRefused() {
    String port = folder.resolve("none").toString();
    String root = folder.resolve("lessons").toString();
    assertThat(CommandLineRun.of("record", root, port, "--handed", "right").exitCode())
        .isEqualTo(2);
    CommandLineRun point =
        CommandLineRun.of("record", root, "knee=" + port, "--player", "a", "--handed", "right");
    assertThat(point.exitCode()).isEqualTo(2);
    assertThat(point.err()).contains("\"knee\" is no body point; there are pelvis");
    CommandLineRun adapter =
        CommandLineRun.of("record", root, port + ",none", "--player", "a", "--handed", "right");
    assertThat(adapter.err()).contains("there is no adapter \"none\"");
    assertThat(CommandLineRun.of("simulate").err()).contains("--out or --serial is needed");
    assertThat(CommandLineRun.of("mark", port, "hit").exitCode()).isEqualTo(2);
  }

  @Test
  void twoUnitsAtOnePointOrOnePortAreRefused() {
    String root = folder.resolve("lessons").toString();
    String[] who = {"--player", "a", "--handed", "right"};
    CommandLineRun points =
        CommandLineRun.of("record", root, "pelvis=a", "pelvis=b", who[0], who[1], who[2], who[3]);
    CommandLineRun ports =
        CommandLineRun.of("record", root, "pelvis=a", "thorax=a", who[0], who[1], who[2], who[3]);
    assertThat(points.exitCode()).isEqualTo(2);
    assertThat(points.err()).contains("two units are to be worn at pelvis");
    assertThat(ports.err()).contains("port a is named twice");
  }

  @Test
  void aMarkIsLeftForTheRecorder() throws Exception {
    CommandLineRun run;
    try (ArchiveLock recorder = ArchiveLock.recording(folder)) {
      assertThat(recorder).isNotNull();
      run =
          CommandLineRun.of("mark", folder.toString(), "hit", "--club", "7-iron", "--note", "thin");
    }
    assertThat(run.exitCode()).isZero();
    assertThat(Files.readString(folder.resolve(".steadyturn-marks.tsv")))
        .endsWith("\t0.0\thit\t7-iron\tthin\n");
  }

  @Test
  void anUnknownWordIsRefusedWithTheNearest() throws Exception {
    try (ArchiveLock recorder = ArchiveLock.recording(folder)) {
      assertThat(recorder).isNotNull();
      CommandLineRun run = CommandLineRun.of("mark", folder.toString(), "quietstance");
      assertThat(run.exitCode()).isEqualTo(2);
      assertThat(run.err()).contains("\"quietstance\" is no word").contains("\"quiet-stance\"");
    }
    assertThat(folder.resolve(".steadyturn-marks.tsv")).doesNotExist();
  }

  @Test
  void aMarkThatNobodyWouldTakeIsNotSaidToBeLeft() {
    CommandLineRun nobody = CommandLineRun.of("mark", folder.toString(), "hit");
    assertThat(nobody.exitCode()).isEqualTo(1);
    assertThat(nobody.err()).contains("nothing records into");
    for (String ago : new String[] {"-1e10", "1e10", "NaN", "-1"}) {
      CommandLineRun run = CommandLineRun.of("mark", folder.toString(), "hit", "--ago=" + ago);
      assertThat(run.exitCode()).as(ago).isEqualTo(2);
    }
    assertThat(folder.resolve(".steadyturn-marks.tsv")).doesNotExist();
  }
}
