package steadyturn.cli.command.mat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.cli.CommandLineProcess;
import steadyturn.cli.CommandLineRun;
import steadyturn.ingest.serial.HostTime;

/**
 * A short rehearsed lesson in a browser: a player, three virtual units, a wear step that is done
 * wrong and repeated, a ball that is left out with a note, the program killed and started anew,
 * another ball, the end. The whole one is {@code src/test/scripts/walk-a-lesson}.
 */
class LessonWalkTest {

  private static final Path NODE = Path.of("src", "test", "node");
  private static final Pattern ADDRESS = Pattern.compile("http://\\S+");

  @TempDir Path folder;

  private Optional<CommandLineProcess> lesson = Optional.empty();

  private static void needs(String file) {
    boolean isThere = Files.exists(Path.of(file));
    if (!isThere && System.getenv("STEADYTURN_CHECK") != null) {
      throw new IllegalStateException("the walk through a lesson needs " + file);
    }
    assumeTrue(isThere, "needs " + file);
  }

  private String start() throws IOException {
    CommandLineProcess its =
        CommandLineProcess.start(
            folder, "lesson", "--rehearse", "--no-browser", "--into", archive());
    lesson = Optional.of(its);
    for (int look = 0; look < 600; look++) {
      Matcher address = ADDRESS.matcher(its.out());
      if (address.find()) {
        return address.group();
      }
      HostTime.pause(100);
    }
    throw new IllegalStateException("no page within a minute: " + its.err());
  }

  private String archive() {
    return folder.resolve("archive").toString();
  }

  private JsonNode walk(String half) throws Exception {
    String said = node("walk-lesson.mjs", start(), "1", half);
    lesson.orElseThrow().process().destroyForcibly().waitFor(); // as a power cut would
    Files.writeString(folder.resolve(half), said);
    JsonNode seen = new ObjectMapper().readTree(said);
    for (String what : List.of("errors", "requests", "violations")) {
      assertThat(seen.path(what)).as("%s of the %s half", what, half).isEmpty();
    }
    return seen;
  }

  private static String node(String... command) throws Exception {
    ProcessBuilder builder =
        new ProcessBuilder(Stream.concat(Stream.of("node"), Arrays.stream(command)).toList())
            .directory(NODE.toFile())
            .redirectErrorStream(true);
    Process process = builder.start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    return said;
  }

  @AfterEach
  void end() {
    lesson.ifPresent(its -> its.process().destroyForcibly());
  }

  @Test
  void aLessonIsWalkedFromThePlayerToThePageToSendThroughAKillOfTheProgram() throws Exception {
    // Expect: the browser's console and axe-core 4.14 find nothing, in light and dark; figures have
    // a contrast of 7 (WCAG 2.2, 1.4.6) and the main one a sixth of 800 px; page and analyze give
    // the same figures; what was said of the ball before the kill is in its recording.
    needs(System.getenv().getOrDefault("CHROMIUM", "/usr/bin/chromium"));
    needs(NODE.resolve("node_modules").toString());
    needs("/usr/bin/socat");
    JsonNode first = walk("first");
    assertThat(first.path("mainHeight").asDouble()).isGreaterThan(800.0 / 6);
    walk("second");
    String analysed = CommandLineRun.of("analyze", "--format", "json", archive()).out();
    Path results = Files.writeString(folder.resolve("analysed.json"), analysed);
    node("same-figures.mjs", folder.resolve("second").toString(), results.toString());
    List<String> flags =
        new ObjectMapper()
            .readTree(analysed).findValues("flags").stream().map(JsonNode::toString).toList();
    assertThat(flags).hasSize(2);
    assertThat(flags.get(0)).contains("left-out");
    assertThat(flags.get(1)).doesNotContain("left-out");
    try (Stream<Path> files = Files.walk(Path.of(archive()))) {
      assertThat(files.filter(f -> f.toString().endsWith("_run-01_events.tsv")))
          .singleElement()
          .satisfies(f -> assertThat(Files.readString(f)).contains("left heel stayed down"));
    }
  }
}
