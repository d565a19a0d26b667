package steadyturn.cli.terminal;

import java.util.ArrayList;
import java.util.List;

/** Lines that a terminal of 80 columns need not break. */
public final class Wrapping {

  private static final int WIDTH = 80;

  private static final String FURTHER = "  ";

  private Wrapping() {}

  /** Breaks at spaces; a word longer than the width stands alone. */
  public static List<String> wrapped(String sentence, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : sentence.strip().split("\\s+", -1)) {
      if (!line.isEmpty() && line.length() + 1 + word.length() > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.isEmpty() ? "" : " ").append(word);
    }
    lines.add(line.toString());
    return lines;
  }

  /** A warning or failure: one line for programs, short ones where a person watches. */
  static String said(String line, boolean isWatched) {
    return isWatched ? String.join("\n" + FURTHER, wrapped(line, WIDTH - FURTHER.length())) : line;
  }
}
