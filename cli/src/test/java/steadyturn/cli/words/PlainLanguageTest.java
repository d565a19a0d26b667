package steadyturn.cli.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.Properties;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Every text of the player's page can be read at the age of 12, by the Automated Readability Index
 * (Smith and Senter 1967, AMRL-TR-66-220; from memory): 4.71 letters a word + 0.5 words a sentence
 * - 21.43 is a school grade; grade 7 is the age of 12 to 13.
 */
class PlainLanguageTest {

  private static final Pattern PLAYERS_PAGE =
      Pattern.compile(
          "finding\\..*\\.(player|aim)|drill\\..*\\.(do|feel)|caution\\..*|good\\..*\\.player"
              + "|plain\\..*|.*\\.player|page\\.(care|cannot\\.text|private|keep.*|not-enough|no-swing)"
              + "|replay\\..*");

  private static final double GRADE = 7;

  /** Shorter than this a grade says nothing: it is a label. */
  private static final int SENTENCE = 12;

  private record Counted(int letters, int words, int sentences) {

    static Counted of(String text) {
      String plain = text.replaceAll("\\{[^}]*}", "5");
      List<String> words =
          Pattern.compile("[\\p{L}0-9'-]+").matcher(plain).results().map(m -> m.group()).toList();
      int letters = words.stream().mapToInt(w -> w.replaceAll("[^\\p{L}0-9]", "").length()).sum();
      int ends = (int) Pattern.compile("[.!?:;](\\s|$)").matcher(plain).results().count();
      return new Counted(letters, words.size(), Math.max(1, ends));
    }

    double grade() {
      return 4.71 * letters / words + 0.5 * words / sentences - 21.43;
    }
  }

  private static Properties texts() throws IOException {
    Properties texts = new Properties();
    try (Reader reader =
        new InputStreamReader(
            Objects.requireNonNull(Words.class.getResourceAsStream("Words.properties")),
            StandardCharsets.UTF_8)) {
      texts.load(reader);
    }
    return texts;
  }

  @Test
  void theIndexIsThatOfItsFormula() {
    // Given: "The cat sat on the mat." 17 letters, 6 words, 1 sentence. Expect, by hand:
    // 4.71 * 17/6 + 0.5 * 6 - 21.43 = -5.085. Within 1e-9: roundings.
    assertThat(Counted.of("The cat sat on the mat.").grade())
        .isCloseTo(-5.085, org.assertj.core.api.Assertions.within(1e-9));
  }

  @Test
  void everyTextOfThePlayersPageIsReadAtTwelve() throws IOException {
    Properties texts = texts();
    List<String> keys =
        texts.stringPropertyNames().stream()
            .filter(key -> PLAYERS_PAGE.matcher(key).matches())
            .sorted()
            .toList();
    assertThat(keys).hasSizeGreaterThan(90);
    for (String key : keys) {
      Counted counted = Counted.of(texts.getProperty(key));
      if (counted.words() >= SENTENCE) {
        assertThat(counted.grade()).as(key + ": " + texts.getProperty(key)).isLessThan(GRADE);
      }
    }
    String all = keys.stream().map(texts::getProperty).collect(Collectors.joining(". "));
    assertThat(Counted.of(all).grade()).isLessThan(GRADE);
  }
}
