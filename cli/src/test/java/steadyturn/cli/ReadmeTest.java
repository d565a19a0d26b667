package steadyturn.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What README and the pages show is what the program does. */
final class ReadmeTest {

  private static final Path HOME = CommandLineRun.projectFolder();

  /** Digits become #, so that a better estimate does not break the page, a changed layout does. */
  private static List<String> masked(Stream<String> lines) {
    return lines
        .map(line -> line.replaceAll("[-~]?[0-9]+([.][0-9]+)?", "#").replaceAll("[# ]+", " "))
        .map(String::strip)
        .distinct()
        .toList();
  }

  @Test
  void theOutputInTheReadmeIsTheOutputOfTheDemo(@TempDir Path out) throws IOException {
    System.setProperty("steadyturn.home", HOME.toString());
    CommandLineRun demo = CommandLineRun.of("demo", "--out", out.toString());
    assertThat(demo.exitCode()).as(demo.err()).isZero();
    assertThat(demo.out().lines().filter(line -> !line.contains(out.toString())))
        .allMatch(line -> line.length() <= 100);
    List<String> readme = Files.readAllLines(HOME.resolve("README.md"));
    int from = readme.indexOf("<!-- output of ./steadyturn demo -->") + 2;
    int to = from + readme.subList(from, readme.size()).indexOf("```");
    List<String> shown = readme.subList(from, to);
    assertThat(shown).hasSizeGreaterThan(20);
    assertThat(masked(demo.out().lines().filter(line -> !line.contains(out.toString()))))
        .as("cli/src/test/scripts/refresh-readme puts the new output in")
        .containsAll(masked(shown.stream().filter(line -> !line.contains("out/demo"))));
  }

  @Test
  void whatTheTextsTellOfTheBundledLessonIsWhatItSays() throws IOException {
    // Given: the bundled lesson. Expect: the sentences of README and first lesson have its means
    // with the 7-iron; within 1 deg and 3 mm, so that a better estimate does not break a page that
    // is still true. Each swing by --each fits on a screen of 24 lines, its flags with it.
    String lesson = HOME.resolve("sample-recordings").toString();
    String run = CommandLineRun.of("analyze", lesson, "--each").out();
    double[] means = numbers(run, "\n  mean +(\\S+) +(\\S+) +\\S+ +(\\S+) +(\\S+)");
    for (String page : List.of("README.md", "docs/first-lesson.md")) {
      double[] told =
          numbers(
              Files.readString(HOME.resolve(page)).replaceAll("\\s+", " "),
              "turned (?:only )?(\\d+) degrees.{0,20}slid (\\d+) mm away from the target; at impact the"
                  + " middle of her hips lies ()(\\d+) mm towards it");
      assertThat(told[0]).as(page + ", turn at the top").isCloseTo(-means[0], within(1.0));
      assertThat(told[1]).as(page + ", slide at the top").isCloseTo(-means[1], within(3.0));
      assertThat(told[3]).as(page + ", slide at impact").isCloseTo(means[3], within(3.0));
    }
    String[] swings = run.substring(run.indexOf("\nSwing 1: ") + 1).split("\n\n", -1);
    assertThat(swings).hasSizeGreaterThan(11);
    for (int k = 0; k < 12; k++) {
      assertThat(swings[k].lines()).as(swings[k]).hasSizeLessThanOrEqualTo(24);
    }
  }

  /** The numbers that a form finds, NaN for an empty one. */
  private static double[] numbers(String text, String form) {
    Matcher found = Pattern.compile(form).matcher(text);
    assertThat(found.find()).as(form).isTrue();
    return IntStream.rangeClosed(1, found.groupCount())
        .mapToObj(found::group)
        .mapToDouble(number -> number.isEmpty() ? Double.NaN : Double.parseDouble(number))
        .toArray();
  }

  @Test
  void everyCommandThatAPageNamesExists() throws IOException {
    Pattern command = Pattern.compile("\\./steadyturn ([a-z]+)");
    String help = CommandLineRun.of("--help").out();
    for (Path page : pages()) {
      Matcher found = command.matcher(Files.readString(page));
      while (found.find()) {
        assertThat(help)
            .as(page + " names " + found.group())
            .contains("\n  " + found.group(1) + " ");
      }
    }
  }

  @Test
  void everyLinkBetweenPagesLeadsSomewhere() throws IOException {
    Pattern link = Pattern.compile("\\]\\((?!http)([^)#]+)");
    List<String> broken = new ArrayList<>();
    for (Path page : pages()) {
      Matcher found = link.matcher(Files.readString(page));
      while (found.find()) {
        if (!Files.exists(page.resolveSibling(found.group(1)))) {
          broken.add(HOME.relativize(page) + " -> " + found.group(1));
        }
      }
    }
    assertThat(broken).isEmpty();
  }

  private static List<Path> pages() throws IOException {
    try (Stream<Path> files = Files.walk(HOME.resolve("docs"))) {
      Stream<Path> top = Stream.of("README.md", "DEVELOPERS.md").map(HOME::resolve);
      return Stream.concat(top, files.filter(f -> f.toString().endsWith(".md"))).toList();
    }
  }
}
