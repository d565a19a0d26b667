package steadyturn.cli.command.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.cli.command.Commands;

class CompareCommandTest {

  @TempDir static Path folder;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  /** Eight balls of one player, four with each club, seed 5. */
  @BeforeAll
  static void aLessonWithTwoClubs() {
    String[] simulate = {
      "simulate",
      "--out",
      folder.toString(),
      "--swings",
      "8",
      "--club",
      "7-iron,driver",
      "--style",
      "steady-turner",
      "--player",
      "mika",
      "--lesson",
      "01",
      "--seed",
      "5",
      "--rate",
      "200"
    };
    var nowhere = new PrintWriter(new StringWriter());
    assertThat(Commands.run(nowhere, nowhere, simulate)).isZero();
  }

  @Test
  void likeClubsOfAPlayerAreNotCalledDifferent() {
    // Given: two clubs drawn from the same habits. Expect: no "real" in the table, at most 80
    // columns, and the warning that the clubs were hit in blocks.
    assertThat(run("compare", folder.toString())).isZero();
    assertThat(out.toString().lines()).allMatch(line -> line.length() <= 80);
    assertThat(out.toString()).contains("7-iron (4 swings) against driver (4 swings)");
    assertThat(out.toString().lines().map(String::strip)).noneMatch("real"::equals);
    assertThat(out.toString()).contains("one after the other");
  }

  @Test
  void theObjectForScriptsHasARowForEveryMeasureAndPosition() throws Exception {
    assertThat(
            run(
                "compare",
                folder.toString(),
                "--format",
                "json",
                "--measure",
                "pelvis.turn@top",
                "--measure",
                "pelvis.slide-per-turn"))
        .isZero();
    JsonNode root = new ObjectMapper().readTree(out.toString());
    List<String> rows = new ArrayList<>();
    root.path("rows")
        .forEach(r -> rows.add(r.path("measure").asText() + "@" + r.path("at").asText()));
    assertThat(rows)
        .contains("pelvis.turn@top", "pelvis.slide-per-turn@top", "pelvis.slide-per-turn@impact")
        .doesNotContain("pelvis.turn@impact");
    assertThat(root.path("rows").get(0).path("first").path("swings").asInt()).isEqualTo(4);
    assertThat(root.path("rows").get(0).path("low").isNumber()).isTrue();
  }

  @Test
  void oneGroupAloneIsToldWithWhatToDo() {
    assertThat(run("compare", folder.toString(), "--by", "lesson")).isEqualTo(1);
    assertThat(err.toString()).contains("one group only").contains("clubs in the events file");
  }

  @Test
  void anUnknownMeasureIsWrongUsage() {
    assertThat(run("compare", folder.toString(), "--measure", "pelvis.spin")).isEqualTo(2);
    assertThat(err.toString()).contains("pelvis.spin");
  }

  @Test
  void turnToSlideIsRefusedWithItsTwoGoodForms() {
    assertThat(run("compare", folder.toString(), "--measure", "pelvis.turn-to-slide")).isEqualTo(2);
    assertThat(err.toString()).contains("pelvis.slide-per-turn");
  }

  @Test
  void twoSwingsStandSideBySide() {
    // Given: swings 2 and 7 of the same lesson. Expect: both with their intervals, the difference
    // with its range, what is usual for this player, and below it words, in at most 80 columns.
    assertThat(run("compare", folder.toString(), "--swings", "2,7")).isZero();
    assertThat(out.toString().lines()).allMatch(line -> line.length() <= 80);
    assertThat(out.toString())
        .contains("swing 2 (7-iron, hit) against swing 7 (driver, hit)")
        .containsPattern(
            "turn deg +-?[\\d.]+ ±[\\d.]+ +-?[\\d.]+ ±[\\d.]+ +-?[\\d.]+ \\(.* to .*\\)")
        .contains("usual");
  }

  @Test
  void twoSwingsForScriptsSayWhatWasFound() throws Exception {
    String[] args = {
      "compare",
      folder.toString(),
      "--swings",
      "2,7",
      "--measure",
      "pelvis.turn@top",
      "--format",
      "json"
    };
    assertThat(run(args)).isZero();
    JsonNode row = new ObjectMapper().readTree(out.toString()).path("rows").get(0);
    double difference =
        row.path("second").path("value").asDouble() - row.path("first").path("value").asDouble();
    // Within 0.02: three numbers rounded to two decimals.
    assertThat(row.path("difference").asDouble()).isCloseTo(difference, within(0.02));
    assertThat(row.path("usual").asDouble()).isPositive();
    assertThat(row.path("found").asText())
        .isIn("alike", "within-usual", "beyond-usual", "usual-unknown");
  }

  @Test
  void aSwingThatIsNotThereIsWrongUsage() {
    assertThat(run("compare", folder.toString(), "--swings", "2,99")).isEqualTo(2);
    assertThat(err.toString()).contains("there is no swing 99");
    assertThat(run("compare", folder.toString(), "--swings", "2")).isEqualTo(2);
  }

  @Test
  void aFormThatACommandDoesNotHaveIsWrongUsage() {
    assertThat(run("compare", folder.toString(), "--format", "tsv")).isEqualTo(2);
    assertThat(err.toString()).contains("--format takes table or json or html here, not tsv");
    assertThat(run("compare", folder.toString(), "--swings", "2,7", "--format", "html"))
        .isEqualTo(2);
  }

  @Test
  void aCardForThePlayerTellsWhatTheTableTells() throws Exception {
    // Given: two like clubs. Expect: a file of its own that names the lesson and both clubs in
    // full, shows two pictures, says that nothing differs, and has the ranges of the JSON.
    Path pages = folder.resolve("pages");
    assertThat(run("compare", folder.toString(), "--format", "html", "--out", pages.toString()))
        .isZero();
    String card = Files.readString(pages.resolve("sub-mika_compare-club.html"));
    assertThat(card)
        .contains("Lesson 01", "4 full swings, 7-iron", "4 full swings, driver")
        .contains("none differs beyond doubt", "Nearest to an answer")
        .contains("hinge-0", "hinge-1", "one after the other")
        .doesNotContain("http://localhost");
    out.getBuffer().setLength(0);
    assertThat(run("compare", folder.toString(), "--format", "json")).isZero();
    JsonNode row = new ObjectMapper().readTree(out.toString()).path("rows").get(0);
    String range =
        tenth(row.path("difference").asDouble())
            + " deg ("
            + tenth(row.path("low").asDouble())
            + " to "
            + tenth(row.path("high").asDouble())
            + ")";
    assertThat(card).contains(range);
    assertThat(row.path("further").path("balls").asInt()).isPositive();
    assertThat(row.path("further").path("power").asDouble()).isEqualTo(0.8);
  }

  @Test
  void aPlanIsPrintedBeforeTheFirstBall() {
    assertThat(run("plan", "7-iron", "7-iron shaft=stiff", "--balls", "12")).isZero();
    assertThat(out.toString().lines().toList())
        .contains(
            "  round 1   3 x 7-iron, 3 x 7-iron shaft=stiff",
            "  round 2   3 x 7-iron shaft=stiff, 3 x 7-iron",
            "  round 4   3 x 7-iron, 3 x 7-iron shaft=stiff")
        .allMatch(line -> line.length() <= 80);
    assertThat(run("plan", "7-iron")).isEqualTo(2);
    assertThat(run("plan", "7-iron", "7-iron")).isEqualTo(2);
    assertThat(run("plan", "7-iron", "driver", "--balls", "1")).isEqualTo(2);
  }

  private int run(String... args) {
    return Commands.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
  }

  /** As a page prints it: to a tenth, with a true minus. */
  private static String tenth(double value) {
    return String.format(Locale.ROOT, "%.1f", value).replace('-', '\u2212');
  }
}
