package steadyturn.ingest.recording.table;

import java.nio.charset.StandardCharsets;

/**
 * Decimal numbers from bytes. Up to 15 digits and a power of ten up to 22 the result is one
 * division or product of two exact doubles and so is correctly rounded (W. D. Clinger 1990, How to
 * read floating point numbers accurately, the fast path; from memory); longer forms go to {@link
 * Double#parseDouble}.
 */
final class Numbers {

  static final int EXACT_DIGITS = 15;
  private static final int EXACT_POWER = 22;
  private static final double[] POWER_OF_TEN = new double[EXACT_POWER + 1];

  static {
    double power = 1;
    for (int i = 0; i < POWER_OF_TEN.length; i++) {
      POWER_OF_TEN[i] = power;
      power *= 10;
    }
  }

  private Numbers() {}

  /** digits / 10^decimals, correctly rounded; digits below 10^15, decimals 0 to 22. */
  static double scaled(long digits, int decimals) {
    return decimals == 0 ? digits : digits / POWER_OF_TEN[decimals];
  }

  /** The number in bytes from..to-1; NaN when they are no plain decimal number. */
  static double parse(byte[] bytes, int from, int to) {
    for (int i = from; i < to; i++) {
      byte b = bytes[i];
      boolean plain =
          (b >= '0' && b <= '9') || b == '.' || b == '-' || b == '+' || b == 'e' || b == 'E';
      if (!plain) {
        return Double.NaN;
      }
    }
    try {
      double value =
          Double.parseDouble(new String(bytes, from, to - from, StandardCharsets.US_ASCII));
      return Double.isInfinite(value) ? Double.NaN : value;
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  /** True for the words of a lost value: an empty cell, {@code n/a}, {@code NaN}. */
  static boolean isMissing(byte[] bytes, int from, int to) {
    if (to - from == 0) {
      return true;
    }
    if (to - from != 3 || (bytes[from] | 0x20) != 'n') {
      return false;
    }
    byte second = bytes[from + 1];
    int third = bytes[from + 2] | 0x20;
    return (second == '/' && third == 'a') || ((second | 0x20) == 'a' && third == 'n');
  }

  /** What is wrong with the text of a cell that should be a number, and what to do. */
  static String complaint(String cell) {
    String shown = cell.length() > 24 ? cell.substring(0, 24) + "..." : cell;
    if (cell.matches("[-+]?[0-9]+,[0-9]+")) {
      return "\""
          + shown
          + "\" is not a number. Use a dot as decimal mark, or import the file with a column map"
          + " that names the mark.";
    }
    return "\"" + shown + "\" is not a number. Write a number, or n/a where the value is lost.";
  }
}
