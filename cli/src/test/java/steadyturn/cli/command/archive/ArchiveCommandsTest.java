package steadyturn.cli.command.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.cli.CommandLineRun;

/** A teacher keeps two players; a copy of the bundled lesson is Mika's. */
class ArchiveCommandsTest {

  @TempDir Path root;

  private String archive = "";

  @BeforeEach
  void copyTheBundledLesson() throws IOException {
    Path bundled = Path.of("..", "sample-recordings");
    try (Stream<Path> files = Files.walk(bundled)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        if (!file.toString().endsWith("_motion.tsv") || file.toString().contains("pelvis")) {
          Path copy = root.resolve(bundled.relativize(file).toString());
          Files.createDirectories(copy.getParent());
          Files.copy(file, copy);
        }
      }
    }
    archive = root.toString();
  }

  @Test
  void aTeacherNamesFindsHandsOverAndForgetsAPlayer() throws IOException {
    assertThat(out("players", "name", "mika", "Mika Sand", archive))
        .isEqualTo("mika is shown as \"Mika Sand\"\n");
    out("players", "consent", "mika", "2026-05-04", archive, "--by", "Jo Sand");
    assertThat(out("players", archive, "--find", "SAND"))
        .contains("mika         Mika Sand ", "2026-05-04 by Jo Sand");
    assertThat(CommandLineRun.of("players", archive, "--find", "noor").exitCode()).isEqualTo(1);
    assertThat(out("lessons", archive, "--sums")).contains("sub-mika_ses-01", "more are kept");
    assertThat(out("lessons", archive, "--sums", "--player", "mika"))
        .contains("files are as they were; sums of 0 more");
    Path zip = root.resolve("mika.zip");
    out("players", "pack", "mika", zip.toString(), archive);
    Path other = Files.createDirectories(root.resolve("other"));
    assertThat(out("players", "take", zip.toString(), other.toString())).startsWith("mika: ");
    Files.delete(zip);
    assertThat(out("players", "--format", "json", other.toString()))
        .contains("\"shownName\" : \"Mika Sand\"", "\"consentBy\" : \"Jo Sand\"");

    CommandLineRun asked = CommandLineRun.of("forget", "mika", other.toString());
    assertThat(asked.exitCode()).isEqualTo(1);
    assertThat(asked.err()).contains("Mika Sand: 1 lessons", "Add --yes to do it.");
    assertThat(other.resolve("sub-mika")).isDirectory();
    assertThat(out("forget", "mika", other.toString(), "--yes")).startsWith("mika is forgotten: ");
    assertThat(CommandLineRun.of("players", other.toString()).err()).contains("no player is here");
  }

  @Test
  void aRecordingThatWasChangedIsNamed() throws IOException {
    out("lessons", archive, "--sums");
    Path table;
    try (Stream<Path> files = Files.walk(root)) {
      table = files.filter(f -> f.toString().endsWith("_motion.tsv")).findFirst().orElseThrow();
    }
    Files.writeString(table, "0\n");
    CommandLineRun looked = CommandLineRun.of("lessons", archive, "--sums");
    assertThat(looked.exitCode()).isEqualTo(1);
    assertThat(looked.out()).contains("_motion.tsv is not as it was written");
  }

  @Test
  void labelsAreChangedAndMistakesAreOneLine() {
    assertThat(out("players", "rename", "mika", "mara", archive)).startsWith("mika is mara now");
    assertThat(out("lessons", archive, "--format", "json")).contains("\"player\" : \"mara\"");
    CommandLineRun none = CommandLineRun.of("players", "rename", "mika", "noor", archive);
    assertThat(none.exitCode()).isEqualTo(1);
    assertThat(none.err()).contains("knows no player \"mika\"").hasLineCount(1);
    CommandLineRun future = CommandLineRun.of("players", "consent", "mara", "2999-01-01", archive);
    assertThat(future.exitCode()).isEqualTo(2);
  }

  private static String out(String... words) {
    CommandLineRun run = CommandLineRun.of(words);
    assertThat(run.exitCode()).as(run.err()).isZero();
    return run.out();
  }
}
