package steadyturn.ingest.recording.table;

import java.util.regex.Pattern;

/**
 * A text as a cell of a table that people open. A spreadsheet runs what begins with = + - or @;
 * such a text gets an apostrophe in front, which a spreadsheet takes for "this is text" and {@link
 * #read} takes off again. Numbers stay numbers.
 */
public final class CellText {

  private static final Pattern RUN = Pattern.compile("'*[=+\\-@].*");
  private static final Pattern NUMBER =
      Pattern.compile("[-+]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][-+]?[0-9]+)?");
  private static final Pattern UNSEEN = Pattern.compile("[\\p{Cntrl}\\u2028\\u2029]+");

  private CellText() {}

  /** The cell for a text: in one line, without control characters, nothing to run. */
  public static String written(String text) {
    String line = UNSEEN.matcher(text).replaceAll(" ").strip();
    boolean isRun = RUN.matcher(line).matches() && !NUMBER.matcher(line).matches();
    return isRun ? "'" + line : line;
  }

  /** The text of a cell. */
  public static String read(String cell) {
    return cell.startsWith("'") && RUN.matcher(cell).matches() ? cell.substring(1) : cell;
  }
}
