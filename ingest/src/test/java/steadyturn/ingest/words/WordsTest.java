package steadyturn.ingest.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.Test;

class WordsTest {

  @Test
  void aNumberIsShownWithTheDecimalsThatTheTextAsksFor() {
    // Given: "{0} gap(s), the longest {1:2} s." Expect: a count as it is, a length with two
    // decimals.
    assertThat(Words.say("quality.gap", 3, 0.12345)).isEqualTo("3 gap(s), the longest 0.12 s.");
  }

  @Test
  void aValueWithSignsOfAPatternIsTakenAsItIs() {
    assertThat(Words.say("table.found", 2, "$1 \\ {0}")).isEqualTo("2 found: $1 \\ {0}");
  }

  @Test
  void aTranslationIsAFileAndWhatItLacksStaysEnglish() {
    // Given: Words_eo.properties of these tests, with one sentence.
    Words other = Words.of(Locale.forLanguageTag("eo"));
    assertThat(other.text("quality.slow", 50.4))
        .isEqualTo("La sensilo donas nur 50 valorojn en sekundo.");
    assertThat(other.text("table.none-found")).isEqualTo("none found");
  }
}
