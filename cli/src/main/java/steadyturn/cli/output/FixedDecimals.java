package steadyturn.cli.output;

/** Numbers in plain decimal notation, fast enough for tables of millions of rows. */
public final class FixedDecimals {

  private static final long[] POWERS = {
    1L, 10L, 100L, 1_000L, 10_000L, 100_000L, 1_000_000L, 10_000_000L, 100_000_000L, 1_000_000_000L
  };

  private FixedDecimals() {}

  /** Appends several numbers, each behind a mark. */
  public static void cells(StringBuilder to, char mark, int decimals, double... numbers) {
    for (double number : numbers) {
      append(to.append(mark), number, decimals);
    }
  }

  /**
   * Appends a number with so many decimals (at most 9), rounded half up; {@code n/a} for NaN and
   * what is too large to be a time, a quaternion or an angle.
   */
  public static void append(StringBuilder to, double number, int decimals) {
    if (!(Math.abs(number) < 1e9)) {
      to.append("n/a");
      return;
    }
    long power = POWERS[decimals];
    long scaled = Math.round(Math.abs(number) * power);
    if (number < 0 && scaled > 0) {
      to.append('-');
    }
    to.append(scaled / power);
    if (decimals > 0) {
      String digits = Long.toString(scaled % power);
      to.append('.').append("0".repeat(decimals - digits.length())).append(digits);
    }
  }
}
