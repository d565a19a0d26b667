package steadyturn.ingest.archive;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Labels that stand alone, without {@code sub-} before them, where a file says that they are one:
 * the column {@code player} of a table, and the members {@code player} and, beside it, {@code
 * lesson} of an object. Elsewhere such a word may mean anything.
 */
record BareLabels(String from, String to, Map<String, String> lessons) {

  private static final String COLUMN = "player";

  /** The content of a file with the new labels. */
  String moved(String fileName, String text) {
    return fileName.endsWith(".tsv")
        ? table(text)
        : fileName.endsWith(".json") ? object(text) : text;
  }

  private String table(String text) {
    List<String> lines = new ArrayList<>(Arrays.asList(text.split("\n", -1)));
    int column = Arrays.asList(lines.get(0).split("\t", -1)).indexOf(COLUMN);
    if (column < 0) {
      return text;
    }
    return lines.stream()
        .map(
            line -> {
              String[] cells = line.split("\t", -1);
              if (column < cells.length && cells[column].equals(from)) {
                cells[column] = to;
              }
              return String.join("\t", cells);
            })
        .collect(Collectors.joining("\n"));
  }

  /** Everything but the labels stays as it is written. */
  private String object(String text) {
    Matcher player = member(COLUMN, from, "(?:\\{\\s*\"id\"\\s*:\\s*)?").matcher(text);
    if (!player.find()) {
      return text;
    }
    String moved = player.replaceAll("$1" + to + "\"");
    for (Map.Entry<String, String> lesson : lessons.entrySet()) {
      Matcher its = member("lesson", lesson.getKey(), "").matcher(moved);
      if (!lesson.getKey().equals(lesson.getValue()) && its.find()) {
        return its.replaceAll("$1" + lesson.getValue() + "\"");
      }
    }
    return moved;
  }

  private static Pattern member(String name, String value, String between) {
    return Pattern.compile(
        "(\"" + name + "\"\\s*:\\s*" + between + "\")" + Pattern.quote(value) + "\"");
  }
}
