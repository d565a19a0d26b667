package steadyturn.cli.terminal;

import java.io.PrintWriter;
import java.io.Writer;
import java.util.Arrays;

/**
 * The way out of the program to a screen. Names, notes and messages come from files and units that
 * others wrote; a control character in them could move the cursor, change colours or hide text, so
 * each becomes a visible mark. Only this class itself moves the cursor.
 */
public final class Terminal extends PrintWriter {

  private static final char SHOWN = '\uFFFD';

  public Terminal(Writer to, boolean flushesEachLine) {
    super(to, flushesEachLine);
  }

  /** Writes a line over the one that the cursor is in. */
  public void over(String line) {
    control("\r\033[K");
    print(line);
    flush();
  }

  /** Writes over the last lines. */
  public void overLast(long lines, String text) {
    control(lines == 0 ? "" : "\033[" + lines + "A\033[J");
    print(text);
    flush();
  }

  private void control(String sequence) {
    super.write(sequence, 0, sequence.length());
  }

  @Override
  public void write(String text, int from, int length) {
    if (isPlain(text, from, from + length)) {
      super.write(text, from, length);
    } else {
      write(text.substring(from, from + length).toCharArray(), 0, length);
    }
  }

  private static boolean isPlain(String text, int from, int to) {
    for (int i = from; i < to; i++) {
      char c = text.charAt(i);
      if ((c < ' ' && c != '\n') || c > '~') {
        return false;
      }
    }
    return true;
  }

  @Override
  public void write(char[] text, int from, int length) {
    super.write(safe(Arrays.copyOfRange(text, from, from + length)), 0, length);
  }

  /** The text with a visible mark for each character that could do more than be read. */
  static String safe(String text) {
    return new String(safe(text.toCharArray()));
  }

  private static char[] safe(char[] text) {
    for (int i = 0; i < text.length; i++) {
      boolean endsLine = i + 1 < text.length && text[i + 1] == '\n';
      text[i] = isSafe(text[i], endsLine) ? text[i] : SHOWN;
    }
    return text;
  }

  /**
   * Neither a control character but line end and tab (a return counts with the line end behind it)
   * nor a mark that turns the direction of writing.
   */
  private static boolean isSafe(char c, boolean endsLine) {
    if (c >= ' ' && c <= '~') {
      return true; // nearly all
    }
    return switch (c) {
      case '\n', '\t' -> true;
      case '\r' -> endsLine;
      default ->
          !Character.isISOControl(c)
              && !(c >= '\u202A' && c <= '\u202E')
              && !(c >= '\u2066' && c <= '\u2069');
    };
  }

  @Override
  public void write(int character) {
    write(new char[] {(char) character}, 0, 1);
  }
}
