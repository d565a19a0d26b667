package steadyturn.analysis.measure;

import java.util.List;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.reason.ReasonCode;

/**
 * One value that reaches a person. Withheld: value, low and high are NaN and {@code why} says the
 * reason.
 *
 * @param at the key position it holds for ({@code top}, {@code impact}), or an empty string for the
 *     whole swing
 * @param value in the measure's unit
 * @param low lower end of the 95 % interval
 * @param high upper end of the 95 % interval; infinite for "at least" values
 * @param why reason of a withheld value, caveat of an estimated one, else none
 */
public record MeasureValue(
    Measure measure, String at, double value, double low, double high, Grade grade, Reason why) {

  /** Half-width of a 95 % interval in standard deviations of a normal distribution. */
  public static final double Z95 = 1.959964;

  public MeasureValue {
    if (grade == Grade.WITHHELD ? why.isNone() : !(low <= value && value <= high)) {
      throw new IllegalArgumentException(
          measure.id()
              + " @ "
              + at
              + ": "
              + grade
              + ", low, value and high "
              + List.of(low, value, high));
    }
  }

  /** A value with a symmetric 95 % interval from its standard deviation. */
  public static MeasureValue of(
      Measure measure, String at, double value, double sd, Grade grade, Reason why) {
    return new MeasureValue(measure, at, value, value - Z95 * sd, value + Z95 * sd, grade, why);
  }

  /** A value that cannot be given honestly, with the reason. */
  public static MeasureValue withheld(Measure measure, String at, Reason why) {
    return new MeasureValue(measure, at, Double.NaN, Double.NaN, Double.NaN, Grade.WITHHELD, why);
  }

  /** The same value under the name of another measure of the same unit. */
  public MeasureValue as(Measure other) {
    return new MeasureValue(other, at, value, low, high, grade, why);
  }

  /** The same value with one more independent error in it; withheld stays withheld. */
  public MeasureValue widened(double sd) {
    double down = Math.hypot(value - low, Z95 * sd);
    double up = Math.hypot(high - value, Z95 * sd);
    return given()
        ? new MeasureValue(measure, at, value, value - down, value + up, grade, why)
        : this;
  }

  /** A value that cannot be given honestly, with the code of the reason and its arguments. */
  public static MeasureValue withheld(Measure measure, String at, ReasonCode why, Object... args) {
    return withheld(measure, at, Reason.of(why, args));
  }

  /** Standard deviation that the interval stands for, as if it were even. */
  public double sd() {
    return (high - low) / (2 * Z95);
  }

  /**
   * The same value as an estimate for this reason, before those it has; withheld stays withheld.
   */
  public MeasureValue estimated(Reason reason) {
    return given()
        ? new MeasureValue(measure, at, value, low, high, Grade.ESTIMATED, reason)
        : this;
  }

  /** Whether there is a value with an interval of finite length. */
  public boolean isBounded() {
    return given() && Double.isFinite(low) && Double.isFinite(high);
  }

  public boolean given() {
    return grade != Grade.WITHHELD;
  }
}
