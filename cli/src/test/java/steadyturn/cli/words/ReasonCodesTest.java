package steadyturn.cli.words;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import steadyturn.cli.House;
import steadyturn.ingest.reason.ReasonCode;

/** Every code that any room may give has its words, and every word of a reason has its code. */
class ReasonCodesTest {

  private static final ResourceBundle BUNDLE =
      ResourceBundle.getBundle("steadyturn.cli.words.Words", Locale.ENGLISH);

  private static final Pattern NAME = Pattern.compile("\\{([a-zA-Z]\\w*)[:}]");

  private static final List<ReasonCode> CODES = codes();

  /** Codes of all enums of the product, found in the compiled classes. */
  private static List<ReasonCode> codes() {
    List<ReasonCode> codes = new ArrayList<>();
    for (JavaClass each : House.classes()) {
      if (each.isEnum() && each.isAssignableTo(ReasonCode.class) && !each.isNestedClass()) {
        for (Object constant : each.reflect().getEnumConstants()) {
          codes.add((ReasonCode) constant);
        }
      }
    }
    assertThat(codes).hasSizeGreaterThan(70);
    return codes;
  }

  @Test
  void everyCodeHasASentenceWithItsArgumentsAndNoOther() {
    for (ReasonCode code : CODES) {
      String key = "why." + code.word();
      assertThat(BUNDLE.containsKey(key)).as(key).isTrue();
      for (String each : List.of(key, key + ".one", key + ".do")) {
        if (BUNDLE.containsKey(each)) {
          assertThat(code.args()).as(each).containsAll(names(BUNDLE.getString(each)));
        }
      }
    }
  }

  @Test
  void noTwoCodesShareAWordAndNoSentenceIsWithoutItsCode() {
    List<String> words = CODES.stream().map(ReasonCode::word).toList();
    assertThat(words).doesNotHaveDuplicates();
    Set<String> told =
        BUNDLE.keySet().stream()
            .filter(key -> key.startsWith("why.") && !key.equals("why.also"))
            .map(key -> key.substring("why.".length()).replaceAll("\\.(one|do)$", ""))
            .collect(Collectors.toCollection(HashSet::new));
    assertThat(told).containsExactlyInAnyOrderElementsOf(words);
  }

  @Test
  void anArgumentThatIsAQuantityNamesItsUnit() {
    // Given: names ending in a unit, counts, and names of things. Expect: nothing else.
    String unit = ".*(S|Ms|Ppm|Hz|Pct|Deg|DegPerS|Mps|Mps2|G|Mm|Ratio)";
    Set<String> bare =
        Set.of(
            "count",
            "samples",
            "pairs",
            "times",
            "unit",
            "other",
            "channel",
            "position",
            "first",
            "second",
            "swing",
            "others",
            "mistake",
            "word",
            "note",
            "size",
            "handed",
            "place");
    for (ReasonCode code : CODES) {
      assertThat(code.args())
          .as(code.word())
          .allMatch(name -> name.matches(unit) || bare.contains(name));
    }
  }

  @Test
  void everyReasonWithWhatToDoIsOneOfAUnit() {
    // Given: the checks of units end in what to do. Expect: each of them, so that none is silent.
    List<ReasonCode> quality =
        CODES.stream().filter(code -> code.about().equals("quality")).toList();
    assertThat(quality).hasSizeGreaterThan(20);
    assertThat(quality).allMatch(code -> BUNDLE.containsKey("why." + code.word() + ".do"));
  }

  private static List<String> names(String text) {
    return Arrays.stream(text.split("(?=\\{)", -1))
        .map(NAME::matcher)
        .filter(java.util.regex.Matcher::lookingAt)
        .map(m -> m.group(1))
        .toList();
  }
}
