package steadyturn.cli.output.table;

import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.cli.words.PlainWords;
import steadyturn.cli.words.Words;

/**
 * A value as a person reads it: rounded to what is worth reading, its 95 % interval beside it,
 * {@code ~} before an estimated one, {@code -} for a withheld one. Interval ends are rounded
 * outwards.
 */
final class Figure {

  static final String WITHHELD = "-";

  private Figure() {}

  /** Narrow: {@code -45.2 ±0.9}; where the interval is lopsided, its longer side. */
  static String narrow(MeasureValue value) {
    if (!value.given()) {
      return WITHHELD;
    }
    if (Double.isInfinite(value.high())) {
      return mark(value) + "≥" + down(value.low(), PlainWords.decimals(value.measure()));
    }
    double half = Math.max(value.high() - value.value(), value.value() - value.low());
    int decimals = decimals(value, half);
    return mark(value) + nearest(value.value(), decimals) + " ±" + up(half, decimals);
  }

  /**
   * Decimals that are worth reading beside such an interval: none for a value that is less than its
   * interval or known no better than to one.
   */
  private static int decimals(MeasureValue value, double half) {
    boolean coarse = half >= 1 || half >= Math.abs(value.value());
    return coarse ? 0 : PlainWords.decimals(value.measure());
  }

  /** A plain number in the rounding of a measure, for means and spreads. */
  static String nearest(double number, Measure measure) {
    return nearest(number, PlainWords.decimals(measure));
  }

  private static String nearest(double number, int decimals) {
    double rounded = Math.rint(number * Math.pow(10, decimals)) / Math.pow(10, decimals);
    return Words.inUse().decimal(rounded + 0.0, decimals);
  }

  /** A number in the rounding of a value that stands beside it. */
  static String beside(double number, MeasureValue value) {
    double half = Math.max(value.high() - value.value(), value.value() - value.low());
    return nearest(
        number, value.given() ? decimals(value, half) : PlainWords.decimals(value.measure()));
  }

  /** A number that someone set, such as a limit: without zeros at its end; {@code -} for none. */
  static String asSet(double number, Measure measure) {
    int decimals = PlainWords.decimals(measure);
    while (decimals > 0 && isRound(number * Math.pow(10, decimals - 1))) {
      decimals--;
    }
    return Double.isFinite(number) ? nearest(number, decimals) : WITHHELD;
  }

  private static boolean isRound(double number) {
    return Math.abs(number - Math.rint(number)) < 1e-6;
  }

  /** The same; {@code -} for what is no number. */
  static String ifAny(double number, Measure measure) {
    return Double.isFinite(number) ? nearest(number, measure) : WITHHELD;
  }

  /** The same with its unit. */
  static String withUnit(double number, Measure measure) {
    return (nearest(number, measure) + " " + PlainWords.unit(measure)).strip();
  }

  private static String up(double number, int decimals) {
    double step = Math.pow(10, -decimals);
    return nearest(Math.ceil(number / step - 1e-9) * step, decimals);
  }

  private static String down(double number, int decimals) {
    double step = Math.pow(10, -decimals);
    return nearest(Math.floor(number / step + 1e-9) * step, decimals);
  }

  private static String mark(MeasureValue value) {
    return value.grade() == Grade.ESTIMATED ? "~" : "";
  }
}
