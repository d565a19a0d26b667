package steadyturn.cli.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.cli.command.Commands;

/**
 * The bundled lesson read by a reader of another language, as a user starts the program. Given in
 * all: {@code -Dsteadyturn.language=eo} and the partial Words_eo.properties of these tests; numbers
 * in Esperanto have a decimal comma (Unicode CLDR).
 */
class OtherLanguageTest {

  private static final String LESSON = Path.of("..", "sample-recordings").toString();

  private static final Pattern DRAWN =
      Pattern.compile("<(line|polyline|polygon|path|circle) [^>]*>");

  @TempDir private Path folder;

  private String other(String... words) throws Exception {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Dsteadyturn.language=eo",
                "-Dfile.encoding=UTF-8",
                "-XX:TieredStopAtLevel=1", // a short life: half the processor time
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                "steadyturn.cli.Main"));
    command.addAll(List.of(words));
    Path out = folder.resolve("out.txt");
    Process process =
        new ProcessBuilder(command)
            .redirectOutput(out.toFile())
            .redirectError(folder.resolve("err.txt").toFile())
            .start();
    assertThat(process.waitFor(5, TimeUnit.MINUTES)).isTrue();
    assertThat(process.exitValue()).as(Files.readString(folder.resolve("err.txt"))).isZero();
    return Files.readString(out);
  }

  private static String english(String... words) throws IOException {
    StringWriter out = new StringWriter();
    assertThat(Commands.run(new PrintWriter(out), new PrintWriter(new StringWriter()), words))
        .isZero();
    return out.toString();
  }

  @Test
  void whatMachinesReadIsTheSameInEveryLanguage() throws Exception {
    // Expect: reasons in English, byte for byte as an English reader's program writes them; the
    // files beside the recordings too.
    String eo = folder.resolve("eo").toString();
    String en = folder.resolve("en").toString();
    assertThat(other("analyze", LESSON, "--format", "json", "--out", eo))
        .isEqualTo(english("analyze", LESSON, "--format", "json", "--out", en))
        .contains("\"reason\" : \"aim.seen\"", "by the aim step the hips stood 0.4 deg open");
    assertThat(contents(folder.resolve("eo")))
        .hasSizeGreaterThan(3)
        .isEqualTo(contents(folder.resolve("en")));
  }

  @Test
  void theTableSpeaksTheReadersLanguageWithItsDecimalMark() throws Exception {
    // Expect: notices and names in Esperanto, every figure of a table with a comma; what the bundle
    // lacks stays English.
    String table = other("analyze", LESSON).replaceAll("\\s+", " ");
    assertThat(table)
        .contains("la koksoj staris 0,4 gradojn malfermite (95 %: 3,3 gradojn fermite ĝis 4,2")
        .contains("antaŭa mano: En 6 valoroj", "Nenio farendas.", "Svingoj")
        .contains("Target line")
        .containsPattern("\\d,\\d ±\\d,\\d")
        .doesNotContainPattern("\\d\\.\\d ±")
        // a row of means whole: turn, slide, pivot, turn, slide, release, tempo
        .containsPattern(" -\\d\\d,\\d -\\d\\d \\d+ \\d\\d,\\d \\d+ \\d+ \\d,\\d ")
        .doesNotContainPattern(" -\\d\\d\\.\\d ");
  }

  private static Map<String, String> contents(Path root) throws IOException {
    Map<String, String> contents = new TreeMap<>();
    try (Stream<Path> files = Files.walk(root)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        contents.put(root.relativize(file).toString(), Files.readString(file));
      }
    }
    return contents;
  }

  @Test
  void thePageSpeaksItTooAndDrawsAlike() throws Exception {
    // Given: the page of the lesson in both languages. Expect: its language named, figures with a
    // comma, and the same places in the pictures.
    String foreign = page(other("report", LESSON, "--out", folder.resolve("eo").toString()));
    String own = page(english("report", LESSON, "--out", folder.resolve("en").toString()));
    assertThat(foreign)
        .contains("<html lang=\"eo\">", "Kion ĉi tio ne povas diri")
        .containsPattern("−\\d\\d,\\d deg")
        .doesNotContainPattern("−\\d\\d\\.\\d deg");
    assertThat(own).contains("<html lang=\"en\">").containsPattern("−\\d\\d\\.\\d deg");
    assertThat(drawn(foreign)).hasSizeGreaterThan(50).isEqualTo(drawn(own));
  }

  private static String page(String printed) throws IOException {
    return Files.readString(Path.of(printed.strip()));
  }

  private static List<String> drawn(String page) {
    return DRAWN.matcher(page).results().map(MatchResult::group).toList();
  }
}
