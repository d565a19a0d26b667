package steadyturn.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The language of the machine changes no byte of what a machine reads. */
class LocaleTest {

  /** Other digits, decimal commas, a dotless i, the year 2569. */
  private static final List<String> TAGS =
      List.of(
          "ar-EG-u-nu-arab",
          "fa-IR-u-nu-arabext",
          "tr-TR",
          "de-DE",
          "fr-FR",
          "hi-IN-u-nu-deva",
          "th-TH-u-ca-buddhist-nu-thai");

  private static final Locale BEFORE = Locale.getDefault();

  @TempDir private Path folder;

  @AfterEach
  void asBefore() {
    Locale.setDefault(BEFORE);
  }

  @Test
  void everyFileAndEveryResultIsTheSameInSevenLanguages() throws IOException {
    // Given: a lesson simulated, two imports of one table (so that one becomes run-01), analyzed,
    // checked, reported. Expect: the same bytes as in English, file by file, and on the screen.
    Map<String, String> english = wholeWay("en-US");
    assertThat(english.keySet()).anyMatch(name -> name.contains("run-01")).hasSizeGreaterThan(30);
    for (String tag : TAGS) {
      Map<String, String> other = wholeWay(tag);
      assertThat(other.keySet()).as(tag).isEqualTo(english.keySet());
      english.forEach((name, text) -> assertThat(other).as(tag).containsEntry(name, text));
    }
  }

  @Test
  void theseLanguagesWouldShow() {
    // Given: the same number formatted without a locale. Expect: a different text in each of the
    // seven; otherwise the test above could not fail. Turkish shows in letters.
    for (String tag : TAGS) {
      Locale locale = Locale.forLanguageTag(tag);
      String text = String.format(locale, "%.1f %s", 12.5, "TITLE".toLowerCase(locale));
      boolean isThai = tag.startsWith("th");
      assertThat(text).as(tag).isNotEqualTo("12.5 title");
      assertThat(isThai && text.startsWith("12")).isFalse();
    }
  }

  private Map<String, String> wholeWay(String tag) throws IOException {
    Locale.setDefault(Locale.forLanguageTag(tag));
    Path root = Files.createDirectories(folder.resolve(tag));
    String lesson = root.resolve("lesson").toString();
    String table = root.resolve("table.csv").toString();
    writeTable(Path.of(table));
    Map<String, String> all = new TreeMap<>();
    keep(
        all,
        root,
        "simulate",
        "--out",
        lesson,
        "--swings",
        "1",
        "--waggles",
        "0",
        "--seed",
        "3",
        "--rate",
        "100");
    for (int k = 0; k < 2; k++) {
      keep(
          all,
          root,
          "import",
          "--unchecked",
          "--map",
          "time-g-degrees",
          "--player",
          "noor",
          "--out",
          root.resolve("imported").toString(),
          table);
    }
    keep(all, root, "check", lesson);
    String results = root.resolve("results").toString();
    keep(all, root, "analyze", lesson, "--format", "json", "--out", results);
    keep(all, root, "report", lesson, "--out", root.toString());
    try (Stream<Path> files = Files.walk(root)) {
      for (Path file : files.filter(LocaleTest::isComparable).toList()) {
        all.put(root.relativize(file).toString(), text(file));
      }
    }
    return all;
  }

  /** Not what is kept of a lesson: it notes the times and numbers of the files it rests on. */
  private static boolean isComparable(Path file) {
    return Files.isRegularFile(file) && !file.toString().endsWith("_lesson.bin");
  }

  private static String text(Path file) throws IOException {
    return Files.readString(file, StandardCharsets.UTF_8);
  }

  private static void keep(Map<String, String> all, Path root, String... args) {
    CommandLineRun run = CommandLineRun.of(args);
    assertThat(run.exitCode()).as(run.err()).isZero();
    String name = all.size() + " " + String.join(" ", args);
    all.put(name.replace(root.toString(), ""), run.out().replace(root.toString(), ""));
  }

  private static void writeTable(Path file) throws IOException {
    StringBuilder rows = new StringBuilder("Time (s)");
    for (String sensor : List.of("Gyroscope %s (deg/s)", "Accelerometer %s (g)")) {
      for (String axis : List.of("X", "Y", "Z")) {
        rows.append(',').append(sensor.replace("%s", axis));
      }
    }
    rows.append('\n');
    for (int i = 0; i < 600; i++) {
      rows.append(i / 100.0).append(",0.01,-0.02,0.03,0.001,0.002,").append(1 + 0.001 * (i % 3));
      rows.append('\n');
    }
    Files.writeString(file, rows);
  }
}
