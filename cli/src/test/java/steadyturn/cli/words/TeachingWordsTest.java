package steadyturn.cli.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.Rule;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.coach.teaching.TeachingReader;

class TeachingWordsTest {

  private static final Words WORDS = Words.of(Locale.ENGLISH);
  private static final Pattern TERMS =
      Pattern.compile(
          "\\b(pelvis|pelvic|lead arm|lead hip|trail|cock|uncock\\w*|thrust|plateau|lateral"
              + "|axis|sequence|interval|deviation|measure\\w* error|mid-hip|impact|azimuth)\\b",
          Pattern.CASE_INSENSITIVE);

  @Test
  void everyShippedEntryHasItsWords() {
    Teaching teaching = TeachingReader.shipped();
    List<String> keys = new ArrayList<>();
    teaching.asks().forEach(a -> keys.add("ask." + a));
    for (Rule rule : teaching.findings()) {
      keys.add("finding." + rule.name() + ".name");
      keys.add("finding." + rule.name() + ".teacher");
      keys.add("finding." + rule.name() + ".player");
      keys.add("finding." + rule.name() + ".aim");
      keys.add("confidence." + rule.confidence());
    }
    teaching.good().forEach(r -> keys.add("good." + r.name() + ".player"));
    teaching.consequences().forEach(c -> keys.add("consequence." + c.name() + ".teacher"));
    for (Drill drill : teaching.drills()) {
      keys.add("drill." + drill.name() + ".name");
      keys.add("drill." + drill.name() + ".do");
      keys.add("drill." + drill.name() + ".feel");
      keys.add("measure." + drill.judgedBy().measure().id());
      keys.add("plain." + drill.judgedBy().measure().id());
      drill.cautions().forEach(c -> keys.add("caution." + c));
    }
    assertThat(keys).allMatch(WORDS::has);
  }

  @Test
  void noSentenceForThePlayerHasATermToLookUp() {
    // Given: everything under .player, drills, cautions and plain names. Expect: none of the words
    // that only a teacher uses.
    var bundle = ResourceBundle.getBundle("steadyturn.cli.words.Words", Locale.ENGLISH);
    for (String key : bundle.keySet()) {
      boolean forPlayer =
          key.contains(".player")
              || key.endsWith(".aim")
              || key.startsWith("drill.")
              || key.startsWith("caution.")
              || key.startsWith("plain.");
      if (forPlayer) {
        assertThat(TERMS.matcher(bundle.getString(key)).find())
            .as(key + ": " + bundle.getString(key))
            .isFalse();
      }
    }
  }

  @Test
  void sentencesForThePlayerAreShort() {
    // Given: findings and drills. Expect: no sentence over 30 words; our choice, a breath.
    var bundle = ResourceBundle.getBundle("steadyturn.cli.words.Words", Locale.ENGLISH);
    for (String key : bundle.keySet()) {
      if (key.endsWith(".player") || key.startsWith("drill.")) {
        for (String sentence : bundle.getString(key).split("[.:;] ?", -1)) {
          assertThat(sentence.split(" ", -1)).as(key + ": " + sentence).hasSizeLessThan(31);
        }
      }
    }
  }

  @Test
  void anEntryWithoutWordsIsToldByItsName() {
    assertThat(WORDS.text("drill.my-own-drill")).isEqualTo("my own drill");
  }

  @Test
  void valuesTakeTheirPlaces() {
    assertThat(WORDS.text("page.swings", 9, "7-iron")).isEqualTo("9 full swings, 7-iron");
  }
}
