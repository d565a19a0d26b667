package steadyturn.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** No text waits in the bundle for a reader that is gone. */
class KeysInUseTest {

  private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");

  /** A place in a text that names a group of texts: {channel:channel}. */
  private static final Pattern GROUP = Pattern.compile("\\{\\w+:([a-z][\\w.-]*)}");

  @Test
  void everyKeyIsNamedInTheCodeOrBuiltFromAPartNamedThere() throws IOException {
    // Given: all string literals of the product, and the groups that texts name. Expect: each key
    // is one of them, or one with another behind it that begins with a dot, or begins with one that
    // ends in a dot, or with a group and a dot.
    ResourceBundle bundle = ResourceBundle.getBundle("steadyturn.cli.words.Words");
    Set<String> whole = new TreeSet<>();
    Set<String> begins = new TreeSet<>();
    for (Path file : SourceFiles.main()) {
      Matcher literal = LITERAL.matcher(Files.readString(file));
      while (literal.find()) {
        (literal.group(1).endsWith(".") ? begins : whole).add(literal.group(1));
      }
    }
    for (String key : bundle.keySet()) {
      Matcher group = GROUP.matcher(bundle.getString(key));
      while (group.find()) {
        begins.add(group.group(1) + ".");
      }
    }
    begins.remove(".");
    List<String> ends = whole.stream().filter(text -> text.matches("\\.[a-z]+")).toList();
    List<String> unused =
        bundle.keySet().stream()
            .filter(key -> !whole.contains(key))
            .filter(key -> ends.stream().noneMatch(end -> whole.contains(without(key, end))))
            .filter(key -> begins.stream().noneMatch(key::startsWith))
            .sorted()
            .toList();
    assertThat(unused).isEmpty();
  }

  private static String without(String key, String end) {
    return key.endsWith(end) ? key.substring(0, key.length() - end.length()) : "";
  }
}
