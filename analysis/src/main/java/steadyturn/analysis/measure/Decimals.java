package steadyturn.analysis.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers as files and scripts get them: plain decimal notation, rounded, never -0 or NaN. */
public final class Decimals {

  /** Decimals of a value in deg, mm, % and so on: finer than any interval printed beside it. */
  public static final int OF_VALUE = 3;

  /** Decimals of a time in s: a tenth of a millisecond's tenth. */
  public static final int OF_TIME_S = 5;

  private Decimals() {}

  /** Rounds half up. Only for finite numbers. */
  public static BigDecimal round(double number, int decimals) {
    double scaled = number * Math.pow(10, decimals);
    long whole = Math.round(scaled);
    // near a half the digits decide, and those are dear
    boolean clear = Math.abs(scaled) < 1e9 && Math.abs(scaled - whole) < 0.4999;
    BigDecimal rounded =
        clear
            ? BigDecimal.valueOf(whole, decimals)
            : BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros();
  }

  /** The number as a cell of a table file; {@code n/a} for what is not there or has no end. */
  public static String cell(double number, int decimals) {
    return Double.isFinite(number) ? round(number, decimals).toPlainString() : "n/a";
  }
}
