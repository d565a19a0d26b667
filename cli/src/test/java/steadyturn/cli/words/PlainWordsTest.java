package steadyturn.cli.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.CommandLineRun;

/** Given: docs/measures.md, the look-up page of ids and flags. */
final class PlainWordsTest {

  private static String page() throws IOException {
    return Files.readString(CommandLineRun.projectFolder().resolve("docs/measures.md"));
  }

  @Test
  void everyFlagOfThePageHasPlainWords() throws IOException {
    String flags = page().substring(page().indexOf("## Flags of a swing"));
    List<String> words =
        Pattern.compile("\\| `([a-z-]+)` \\|")
            .matcher(flags)
            .results()
            .map(r -> r.group(1))
            .toList();
    assertThat(words).hasSizeGreaterThan(8).allMatch(word -> Words.english().has("flag." + word));
  }

  @Test
  void everyMeasureIsOnThePageAndHasAName() throws IOException {
    List<String> ids =
        Pattern.compile("`([a-z]+\\.[a-z-]+)`")
            .matcher(page())
            .results()
            .map((MatchResult r) -> r.group(1))
            .toList();
    for (Measure measure : Measure.values()) {
      assertThat(ids).contains(measure.id());
      assertThat(Words.inUse().has("name." + measure.id())).isTrue();
    }
  }
}
