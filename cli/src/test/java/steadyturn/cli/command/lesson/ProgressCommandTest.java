package steadyturn.cli.command.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.cli.command.Commands;

class ProgressCommandTest {

  @TempDir static Path folder;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  /** Two lessons of an invented player, left-handed: four balls as a slider, four turning well. */
  @BeforeAll
  static void twoLessons() {
    simulate("01", "slider", "41");
    simulate("02", "steady-turner", "43");
  }

  private static void simulate(String lesson, String style, String seed) {
    var nowhere = new PrintWriter(new StringWriter());
    List<String> args = new ArrayList<>(List.of("simulate", "--out", folder.toString()));
    args.addAll(List.of("--swings", "4", "--waggles", "0", "--rate", "200", "--handed", "left"));
    args.addAll(List.of("--player", "mika", "--lesson", lesson, "--style", style, "--seed", seed));
    assertThat(Commands.run(nowhere, nowhere, args.toArray(String[]::new))).isZero();
  }

  @Test
  void theTableHasEachLessonAndTheRealChange() {
    // Given: a turn of about -28 and about -46 deg (the styles of the simulator). Expect: both
    // lessons, the turn at the top called a real change, at most 100 columns.
    assertThat(run("progress", "mika", folder.toString())).isZero();
    assertThat(out.toString().lines()).allMatch(line -> line.length() <= 100);
    assertThat(out.toString()).contains("lesson 01", "lesson 02", "Drill given after each lesson");
    assertThat(out.toString().lines().dropWhile(line -> !line.startsWith("Since the lesson")))
        .anyMatch(line -> line.strip().startsWith("turn deg, top") && line.endsWith("real"));
    assertThat(out.toString()).doesNotContain("Since the first lesson");
  }

  @Test
  void theObjectForScriptsHasMeansWithRanges() throws Exception {
    assertThat(run("progress", "mika", folder.toString(), "--format", "json")).isZero();
    JsonNode root = new ObjectMapper().readTree(out.toString());
    assertThat(root.path("lessons")).hasSize(2);
    JsonNode turn = root.path("lessons").get(1).path("means").get(0);
    assertThat(turn.path("measure").asText()).isEqualTo("pelvis.turn");
    assertThat(turn.path("low").asDouble()).isLessThan(turn.path("mean").asDouble());
    assertThat(root.path("sinceLast").get(0).path("verdict").asText()).isEqualTo("real");
    assertThat(root.path("sinceFirst")).isEmpty();
  }

  @Test
  void thePageNeedsNothingFromANetwork() throws Exception {
    String pages = folder.resolve("pages").toString();
    assertThat(run("progress", "mika", folder.toString(), "--format", "html", "--out", pages))
        .isZero();
    String html = Files.readString(Path.of(out.toString().strip()));
    assertThat(html).contains("mika: from lesson to lesson", "a real change");
    assertThat(html).contains("Take care").doesNotContain("''", "progress.");
    String named = html.replace("http://www.w3.org/2000/svg", ""); // the name of the SVG language
    assertThat(named).doesNotContain("http:", "https:", "<script");
  }

  @Test
  void anUnknownPlayerIsToldWithWhatToDo() {
    assertThat(run("progress", "nobody", folder.toString())).isEqualTo(1);
    assertThat(err.toString()).contains("\"nobody\"").contains("steadyturn analyze");
  }

  private int run(String... args) {
    return Commands.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
  }
}
