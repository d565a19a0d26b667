package steadyturn.cli.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import steadyturn.cli.words.Words;

/** The page's scripts and the bundle hold together. */
class PageWordsTest {

  private static final Path SCRIPTS = Path.of("src/main/resources/steadyturn/cli/live");
  private static final Pattern SAID = Pattern.compile("\\bsay\\(['`]([a-z][\\w.-]*)(['`$])");

  private static List<String> scripts() throws IOException {
    List<String> texts = new ArrayList<>();
    try (Stream<Path> files = Files.list(SCRIPTS)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".js")).toList()) {
        texts.add(Files.readString(file));
      }
    }
    return texts;
  }

  @Test
  void everyWordThatThePageSaysIsInTheBundle() throws IOException {
    // Given: each call of say in the scripts. Expect: its key, or keys that begin as it does.
    Set<String> keys = new TreeSet<>(Words.english().group("mat.").keySet());
    int said = 0;
    for (String text : scripts()) {
      Matcher call = SAID.matcher(text);
      while (call.find()) {
        String key = "mat." + call.group(1);
        boolean isWhole = !call.group(2).equals("$");
        assertThat(keys).anyMatch(k -> isWhole ? k.equals(key) : k.startsWith(key));
        said++;
      }
    }
    assertThat(said).isGreaterThan(80);
  }

  @Test
  void noScriptWritesMarkupOrRunsText() throws IOException {
    // Whatever a player is called, it is shown as text: nothing here makes markup or code of it.
    for (String text : scripts()) {
      assertThat(text)
          .doesNotContainPattern(
              "innerHTML|outerHTML|insertAdjacentHTML|document\\.write|\\beval\\(")
          .doesNotContain("https:");
    }
  }
}
