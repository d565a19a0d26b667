package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.cli.CommandLineRun;

/** The page of a simulated left-handed slider, eight balls at 200 Hz, seed 11. */
class ReportPageTest {

  private static final Path JUDGE = Path.of("src", "test", "node");
  private static final Path BROWSER =
      Path.of(System.getenv().getOrDefault("CHROMIUM", "/usr/bin/chromium"));

  @TempDir static Path folder;

  @BeforeAll
  static void writeTheLesson() {
    run(
        "simulate",
        "--out",
        lesson(),
        "--swings",
        "8",
        "--style",
        "slider",
        "--handed",
        "left",
        "--player",
        "nele",
        "--lesson",
        "02",
        "--seed",
        "11",
        "--rate",
        "200");
    run("report", lesson(), "--out", pages(), "--for", "player");
    run("report", lesson(), "--out", pages(), "--for", "teacher", "--model", lesson());
    run("report", lesson(), "--out", pages(), "--for", "teacher", "--format", "json");
    run("report", lesson(), "--out", pages() + "-in", "--units", "imperial");
  }

  private static String lesson() {
    return folder.resolve("lesson").toString();
  }

  private static String pages() {
    return folder.resolve("pages").toString();
  }

  private static String run(String... args) {
    CommandLineRun run = CommandLineRun.of(args);
    assertThat(run.exitCode()).as(run.err()).isZero();
    return run.out();
  }

  private static String page(String name) throws IOException {
    return Files.readString(folder.resolve("pages").resolve("sub-nele_ses-02_page-" + name));
  }

  @ParameterizedTest
  @ValueSource(strings = {"player.html", "teacher.html"})
  void thePageNeedsNothingButItself(String name) throws IOException {
    // Given: a page. Expect: no script but the player's replay, which loads nothing; no address but
    // the name of the SVG language; type is inside.
    String replay = "<script>(?s:(?!fetch|XMLHttp|import|eval|innerHTML).)*?</script>";
    String html = page(name).replace("http://www.w3.org/2000/svg", "");
    html = name.startsWith("player") ? html.replaceFirst(replay, "") : html;
    assertThat(html).contains("url(data:font/woff2;base64,");
    html = html.replace("url(data:font/woff2;base64,", "");
    assertThat(html).doesNotContain("<script", "http:", "https:", "url(", "@import", "src=");
  }

  @ParameterizedTest
  @ValueSource(strings = {"player.html", "teacher.html"})
  void everyPictureHasATitleAndADescription(String name) throws IOException {
    String html = page(name);
    int pictures = html.split("<svg ", -1).length - 1;
    assertThat(pictures).isGreaterThanOrEqualTo(3);
    assertThat(html.split("<desc id=", -1).length - 1).isEqualTo(pictures);
    assertThat(html.split("role=\"img\"", -1).length - 1).isEqualTo(pictures);
  }

  @Test
  void thePlayersPageHasTheHingeTwiceItsExamplesTheDrillAndTheCautions() throws IOException {
    String html = page("player.html");
    assertThat(html.split("<svg ", -1)).hasSize(7); // the replay is the sixth
    assertThat(html)
        .contains("Turn on the spot, slide less", "Take care", "Stop if anything hurts")
        .contains("hinge-now", "hinge-goal", "example-turns", "example-slides", "drill-title");
  }

  @Test
  void thePlayersPageUsesNoTermToLookUp() throws IOException {
    // Given: the player's page without markup. Expect: none of the words only a teacher uses.
    String words = words(page("player.html"));
    var terms =
        Pattern.compile(
            "\\b(pelvis|lead arm|trail|cock|thrust|plateau|lateral|interval|deviation|impact)\\b",
            Pattern.CASE_INSENSITIVE);
    assertThat(terms.matcher(words).results().map(m -> m.group())).isEmpty();
  }

  @Test
  void everyMeasuredNumberForThePlayerSaysAbout() throws IOException {
    // Given: the list of what was measured. Expect: "about" in each of its lines.
    String html = page("player.html");
    String measured = html.substring(html.indexOf("class=\"seen-by\""), html.indexOf("hinge-now"));
    measured = measured.substring(0, measured.indexOf("</ul>"));
    List<String> lines = List.of(measured.split("<li>", -1));
    assertThat(lines.size()).isGreaterThan(1);
    assertThat(lines.subList(1, lines.size())).allMatch(line -> line.contains("about "));
  }

  @Test
  void everyMeanForTheTeacherHasItsRange() throws IOException {
    // Given: the table of means. Expect: a range in brackets in every row.
    String html = page("teacher.html");
    String table = html.substring(html.indexOf("The numbers")).replace('\u00a0', ' ');
    table = table.substring(table.indexOf("<tbody>"), table.indexOf("</tbody>"));
    List<String> rows = List.of(table.split("<tr>", -1));
    assertThat(rows.size()).isGreaterThan(8);
    assertThat(rows.subList(1, rows.size())).allMatch(row -> row.matches("(?s).*\\(.* to .*\\).*"));
  }

  @Test
  void theObjectForScriptsSaysTheSame() throws IOException {
    JsonNode root = new ObjectMapper().readTree(page("teacher.json"));
    String html = page("teacher.html");
    assertThat(root.path("priority").path("id").asText()).isEqualTo("slide-for-turn");
    assertThat(html).contains(root.path("priority").path("name").asText());
    assertThat(root.path("numbers").size()).isGreaterThan(8);
    assertThat(root.path("priority").path("evidence").get(0).path("low").isNumber()).isTrue();
    assertThat(root.path("meanSlideMmTurnDeg").size()).isGreaterThan(50);
    for (JsonNode ask : root.path("asks")) {
      assertThat(html).contains(ask.asText());
    }
  }

  @Test
  void aRightHandedModelIsHeldAgainstALeftHandedPlayerAsItIs() throws IOException {
    // Given: the left-handed player of this lesson, and the same player mirrored as the model (same
    // seed, right-handed). Expect: no difference in any value, as every sign is free of handedness;
    // within 0.05 of a unit, as the numbers in the files are rounded. The turn itself is far from
    // zero.
    String right = folder.resolve("right").toString();
    run(
        "simulate",
        "--out",
        right,
        "--swings",
        "8",
        "--style",
        "slider",
        "--handed",
        "right",
        "--player",
        "rika",
        "--lesson",
        "02",
        "--seed",
        "11",
        "--rate",
        "200");
    run("report", lesson(), "--out", pages() + "-lr", "--model", right, "--format", "json");
    JsonNode root =
        new ObjectMapper()
            .readTree(
                Path.of(pages() + "-lr").resolve("sub-nele_ses-02_page-teacher.json").toFile());
    assertThat(root.path("besideTheModel").size()).isGreaterThan(5);
    for (JsonNode gap : root.path("besideTheModel")) {
      assertThat(gap.path("difference").asDouble()).as(gap.toString()).isCloseTo(0, within(0.05));
    }
    assertThat(root.path("besideTheModel").get(0).path("model").asDouble()).isLessThan(-15);
    assertThat(page("teacher.html")).contains("Beside the model swing");
  }

  @Test
  void inchesAreInchesEverywhere() throws IOException {
    String html =
        Files.readString(Path.of(pages() + "-in").resolve("sub-nele_ses-02_page-teacher.html"));
    assertThat(words(html).replace('\u00a0', ' ')).contains(" in (").doesNotContain(" mm");
  }

  @Test
  void aTeachersOwnLimitIsHeeded() throws IOException {
    // Given: a file that calls only a share of turn under 5 % too little. Expect: another priority.
    Path own = folder.resolve("own.toml");
    Files.writeString(own, "[limit]\nshare-low = { value = 5, unit = \"%\" }\n");
    run(
        "report",
        lesson(),
        "--out",
        pages() + "-own",
        "--format",
        "json",
        "--teaching",
        own.toString());
    String json =
        Files.readString(Path.of(pages() + "-own").resolve("sub-nele_ses-02_page-teacher.json"));
    assertThat(new ObjectMapper().readTree(json).path("priority").path("id").asText())
        .isNotEqualTo("slide-for-turn");
  }

  @Test
  void aBrokenTeachingFileIsToldInOneLine() throws IOException {
    Path own = Files.writeString(folder.resolve("broken.toml"), "[[finding]]\nname = \"a\"\n");
    CommandLineRun run = CommandLineRun.of("report", lesson(), "--teaching", own.toString());
    assertThat(run.exitCode()).isEqualTo(1);
    assertThat(run.err().lines()).hasSize(1);
    assertThat(run.err()).contains("broken.toml", "finding a");
  }

  @Test
  void aClubThatWasNotHitIsToldWithThoseThatWere() {
    CommandLineRun run = CommandLineRun.of("report", lesson(), "--club", "spoon");
    assertThat(run.exitCode()).isEqualTo(1);
    assertThat(run.err()).contains("no full swing with spoon", "7-iron");
  }

  @Test
  void twoSwingsAreTooFewToSayAnything() throws IOException {
    // Given: a lesson of two balls. Expect: a page that says so and names no finding.
    String few = folder.resolve("few").toString();
    run("simulate", "--out", few, "--swings", "2", "--player", "ole", "--rate", "100");
    String file = run("report", few, "--out", pages(), "--for", "player").strip();
    assertThat(Files.readString(Path.of(file)))
        .contains("too few swings")
        .doesNotContain("seen-by\"");
  }

  @Test
  void aBrowserFindsNoErrorNoRequestAndNoBarrier() throws Exception {
    // Given: headless Chromium and axe-core; player, teacher with a model, teacher in inches.
    // Expect: no console error, no request beyond the file, no serious or critical violation,
    // nothing wider than a phone of 390 px; one page of A4 for the player, two for the teacher.
    JsonNode found =
        judged(
            "pages/sub-nele_ses-02_page-player.html",
            "pages/sub-nele_ses-02_page-teacher.html",
            "pages-in/sub-nele_ses-02_page-teacher.html");
    assertThat(found).hasSize(3);
    for (JsonNode page : found) {
      assertThat(page.path("errors")).isEmpty();
      assertThat(page.path("requests")).isEmpty();
      List<String> barriers = new ArrayList<>();
      for (JsonNode violation : page.path("violations")) {
        if (violation.path("impact").asText().matches("serious|critical")) {
          barriers.add(violation.toString());
        }
      }
      assertThat(barriers).isEmpty();
      assertThat(page.path("widthOnPhone").asInt()).isLessThanOrEqualTo(390);
    }
    assertThat(found.get(0).path("printedPages").asInt()).isEqualTo(1);
    assertThat(found.get(1).path("printedPages").asInt()).isEqualTo(2);
    assertThat(found.get(2).path("printedPages").asInt()).isEqualTo(2);
  }

  private static JsonNode judged(String... pages) throws Exception {
    needs(Files.exists(BROWSER), "Chromium (Debian: apt install chromium)");
    needs(
        Files.isDirectory(JUDGE.resolve("node_modules")),
        "the node packages of cli/src/test/node (npm ci)");
    List<String> command = new ArrayList<>(List.of("node", "judge-page.mjs"));
    for (String page : pages) {
      command.add(folder.resolve(page).toAbsolutePath().toString());
    }
    Process process =
        new ProcessBuilder(command)
            .directory(JUDGE.toFile())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(out).isZero();
    return new ObjectMapper().readTree(out);
  }

  /** In a full check a missing tool is a failure, else the test is left out with the reason. */
  private static void needs(boolean there, String what) {
    if (!there && System.getenv("STEADYTURN_CHECK") != null) {
      throw new IllegalStateException("the check of pages needs " + what);
    }
    assumeTrue(there, "needs " + what);
  }

  private static String words(String html) {
    return html.replaceAll("(?s)<style>.*?</style>", "").replaceAll("<[^>]+>", " ");
  }
}
