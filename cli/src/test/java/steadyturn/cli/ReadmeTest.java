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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** What README and the pages show is what the program does. */
final class ReadmeTest {

  private static final Path HOME = CommandLineRun.projectFolder();
  private static final String REFRESH =
      "cli/src/test/scripts/refresh-readme puts the new output in";
  private static final Pattern NUMBER = Pattern.compile("-?[0-9]+([.][0-9]+)?");

  /** Digits become #, so that a better estimate does not break the page, a changed layout does. */
  private static List<String> masked(Stream<String> lines) {
    return lines.map(ReadmeTest::mask).distinct().toList();
  }

  private static String mask(String line) {
    return line.replaceAll("[-~]?[0-9]+([.][0-9]+)?", "#").replaceAll("[# ]+", " ").strip();
  }

  private static double[] all(String line) {
    return NUMBER.matcher(line).results().mapToDouble(m -> Double.parseDouble(m.group())).toArray();
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
    List<String> printed =
        new ArrayList<>(demo.out().lines().filter(line -> !line.contains(out.toString())).toList());
    assertThat(masked(printed.stream()))
        .as(REFRESH)
        .containsAll(masked(shown.stream().filter(line -> !line.contains("out/demo"))));
    // and its figures: within 3 and a tenth, so that a better estimate does not break the page
    for (String line : shown) {
      String mask = mask(line);
      int at = printed.stream().map(ReadmeTest::mask).toList().indexOf(mask);
      if (at >= 0) {
        double[] is = all(printed.remove(at));
        double[] told = all(line);
        for (int k = 0; k < Math.min(told.length, is.length); k++) {
          assertThat(told[k])
              .as(REFRESH + ": " + line)
              .isCloseTo(is[k], within(3 + 0.1 * Math.abs(is[k])));
        }
      }
    }
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvFileSource(resources = "shown-figures.csv", delimiter = ';', numLinesToSkip = 1)
  void aFigureThatAPageShowsIsThatOfItsRun(
      String page, String sentence, String run, String form, String within) throws IOException {
    // Given: the table shown-figures.csv; a run is done once for all its rows. Expect: the figures
    // of the page within what it says, so that a better estimate does not break a true page.
    double[] told = numbers(Files.readString(HOME.resolve(page)).replaceAll("\\s+", " "), sentence);
    double[] is = numbers(ShownRuns.out(run), form);
    String[] near = within.split(" ", -1);
    assertThat(told).hasSameSizeAs(is).hasSize(near.length);
    for (int k = 0; k < told.length; k++) {
      assertThat(told[k])
          .as(page + ", " + run)
          .isCloseTo(is[k], within(Double.parseDouble(near[k])));
    }
  }

  @Test
  void eachSwingFitsOnAScreen() {
    // Expect: each swing by --each within 24 lines, its flags with it.
    String run = ShownRuns.out("analyze sample-recordings --each");
    String[] swings = run.substring(run.indexOf("\nSwing 1: ") + 1).split("\n\n", -1);
    assertThat(swings).hasSizeGreaterThan(11);
    for (int k = 0; k < 12; k++) {
      assertThat(swings[k].lines()).as(swings[k]).hasSizeLessThanOrEqualTo(24);
    }
  }

  @Test
  void theTableOfAStudyAddsUp() throws IOException {
    // Given: the table that accuracy --comparisons printed, which takes minutes to run. Expect:
    // each part is what was counted of all, within half of its last decimal.
    Matcher row =
        Pattern.compile("\\| (\\d+) \\| (\\d+) \\| ([.\\d]+) \\| \\d+ to \\d+ \\|")
            .matcher(Files.readString(HOME.resolve("docs/how-to/compare-clubs.md")));
    int rows = 0;
    while (row.find()) {
      rows++;
      double part = 100 * Double.parseDouble(row.group(1)) / Double.parseDouble(row.group(2));
      assertThat(Double.parseDouble(row.group(3))).isCloseTo(part, within(0.0501));
    }
    assertThat(rows).isEqualTo(6);
  }

  /** The numbers that a form finds. */
  private static double[] numbers(String text, String form) {
    Matcher found = Pattern.compile(form).matcher(text);
    assertThat(found.find()).as(form).isTrue();
    return IntStream.rangeClosed(1, found.groupCount())
        .mapToDouble(k -> Double.parseDouble(found.group(k)))
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
