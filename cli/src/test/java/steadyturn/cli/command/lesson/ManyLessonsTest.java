package steadyturn.cli.command.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.cli.CommandLineRun;

/** Six lessons would make fifteen tables: who asks for no pair gets the ones that tell most. */
class ManyLessonsTest {

  @TempDir static Path archive;

  /** One ball, seed 3, at 100 Hz, copied to six lessons of May; lesson 01 is the latest of them. */
  @BeforeAll
  static void sixLessons() throws IOException {
    CommandLineRun made =
        CommandLineRun.of(
            ("simulate --swings 1 --waggles 0 --rate 100 --player mika --lesson 01 --seed 3 --out "
                    + archive)
                .split(" "));
    assertThat(made.exitCode()).isZero();
    for (int k = 2; k <= 6; k++) {
      copy("0" + k, "2026-05-0" + k);
    }
    Path scans = archive.resolve("sub-mika/ses-01/sub-mika_ses-01_scans.tsv");
    Files.writeString(scans, Files.readString(scans).replaceAll("\t[0-9-]{10}T", "\t2026-05-20T"));
  }

  private static void copy(String label, String day) throws IOException {
    Path from = archive.resolve("sub-mika/ses-01");
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        String name = from.relativize(file).toString().replace("ses-01", "ses-" + label);
        Path copy = archive.resolve("sub-mika/ses-" + label).resolve(name);
        Files.createDirectories(copy.getParent());
        String text = Files.readString(file).replace("ses-01", "ses-" + label);
        Files.writeString(copy, text.replaceAll("\t[0-9-]{10}T", "\t" + day + "T"));
      }
    }
  }

  @Test
  void ofSixLessonsTheFirstTheOneBeforeTheLatestAndTheLatestAreCompared() throws IOException {
    // Given: lesson 02 is of 2 May, 06 of 6 May, 01 of 20 May. Expect: 02, 06, 01, and it is said.
    CommandLineRun run = compare("");
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(groups(run))
        .containsExactly("sub-mika_ses-02", "sub-mika_ses-06", "sub-mika_ses-01");
    assertThat(run.err()).contains("6 lessons would make 15 tables", "sub-mika_ses-06", "--only");
  }

  @Test
  void lessonsAreChosenByTheirLabels() throws IOException {
    CommandLineRun run = compare("--only 04 --only sub-mika_ses-03");
    assertThat(groups(run)).containsExactly("sub-mika_ses-03", "sub-mika_ses-04");
    assertThat(run.err()).isEmpty();
  }

  @Test
  void aChoiceThatIsNoneIsWrongUsage() {
    assertThat(compare("--only 17").exitCode()).isEqualTo(2);
    assertThat(compare("--only 17").err()).contains("--only 17");
    CommandLineRun six = compare("--only 01 --only 02 --only 03 --only 04 --only 05 --only 06");
    assertThat(six.exitCode()).isEqualTo(2);
    assertThat(six.err()).contains("6 groups would make 15 tables");
    assertThat(compare("--only 03").err()).contains("one group only, [sub-mika_ses-03]");
  }

  private static CommandLineRun compare(String more) {
    String words = "compare " + archive + " --by lesson --format json --measure pelvis.turn@top";
    return CommandLineRun.of((words + " " + more).strip().split(" "));
  }

  private static List<String> groups(CommandLineRun run) throws IOException {
    List<String> names = new ArrayList<>();
    new ObjectMapper().readTree(run.out()).path("groups").forEach(g -> names.add(g.asText()));
    return names;
  }
}
