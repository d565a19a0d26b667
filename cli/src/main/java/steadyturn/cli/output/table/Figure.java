package steadyturn.cli.output.table;

import java.util.Locale;
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
      return mark(value) + "≥" + down(value.low(), value.measure());
    }
    double half = Math.max(value.high() - value.value(), value.value() - value.low());
    return mark(value) + nearest(value.value(), value.measure()) + " ±" + up(half, value.measure());
  }

  /** As {@link #narrow}, with both ends where the interval is lopsided. */
  static String wide(MeasureValue value) {
    double above = value.high() - value.value();
    double below = value.value() - value.low();
    boolean even = Math.abs(above - below) <= 0.2 * Math.max(above, below);
    if (!value.given() || Double.isInfinite(value.high()) || even) {
      return narrow(value);
    }
    return String.format(
        Locale.ROOT,
        "%s%s (%s to %s)",
        mark(value),
        nearest(value.value(), value.measure()),
        down(value.low(), value.measure()),
        up(value.high(), value.measure()));
  }

  /** A plain number in the rounding of a measure, for means and spreads. */
  static String nearest(double number, Measure measure) {
    int decimals = PlainWords.decimals(measure);
    double rounded = Math.rint(number * Math.pow(10, decimals)) / Math.pow(10, decimals);
    return Words.inUse().decimal(rounded + 0.0, decimals);
  }

  /** The same; {@code -} for what is no number. */
  static String ifAny(double number, Measure measure) {
    return Double.isFinite(number) ? nearest(number, measure) : WITHHELD;
  }

  /** The same with its unit. */
  static String withUnit(double number, Measure measure) {
    return (nearest(number, measure) + " " + PlainWords.unit(measure)).strip();
  }

  private static String up(double number, Measure measure) {
    double step = Math.pow(10, -PlainWords.decimals(measure));
    return nearest(Math.ceil(number / step - 1e-9) * step, measure);
  }

  private static String down(double number, Measure measure) {
    double step = Math.pow(10, -PlainWords.decimals(measure));
    return nearest(Math.floor(number / step + 1e-9) * step, measure);
  }

  private static String mark(MeasureValue value) {
    return value.grade() == Grade.ESTIMATED ? "~" : "";
  }
}
