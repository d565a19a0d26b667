package steadyturn.cli.terminal;

import java.io.PrintWriter;
import java.io.Writer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The way out of the program to a screen. Names, notes and messages come from files and units that
 * others wrote; a control character in them could move the cursor, change colours or hide text, so
 * each becomes a visible mark. Only this class itself moves the cursor.
 */
public final class Terminal extends PrintWriter {

  /**
   * Control characters but line end and tab (a return counts with the line end behind it), and the
   * marks that turn the direction of writing.
   */
  private static final Pattern UNSAFE =
      Pattern.compile("[\\p{Cc}&&[^\\n\\t\\r]]|\\r(?!\\n)|[\\u202A-\\u202E\\u2066-\\u2069]");

  private static final String SHOWN = Matcher.quoteReplacement("\uFFFD");

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
    String part = text.substring(from, from + length);
    String safe = UNSAFE.matcher(part).replaceAll(SHOWN);
    super.write(safe, 0, safe.length());
  }

  @Override
  public void write(char[] text, int from, int length) {
    write(new String(text, from, length), 0, length);
  }

  @Override
  public void write(int character) {
    write(String.valueOf((char) character), 0, 1);
  }
}
