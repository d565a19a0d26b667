package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import steadyturn.analysis.coach.teaching.GoalVerdict;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.cli.output.json.Json;
import steadyturn.cli.words.PlainWords;
import steadyturn.cli.words.Words;

/**
 * A value as it is read from three metres: no finer than a person can change it, no sign, but the
 * direction in words.
 */
final class BigFigure {

  /** Half a centimetre, five milliseconds; else whole numbers, but for times and ratios. */
  private static final double LENGTH_STEP_MM = 5;

  private static final double TIME_STEP_MS = 5;

  private BigFigure() {}

  /** Number, unit, half-width and direction, each ready to be shown. */
  static ObjectNode of(MeasureValue value) {
    Measure measure = value.measure();
    ObjectNode node = Json.object().put("unit", unit(measure));
    if (!value.given()) {
      return node.put("number", "–")
          .put("half", "")
          .put("way", PageUnits.of(value.why()))
          .put("isThere", false);
    }
    double half = Math.max(value.high() - value.value(), value.value() - value.low());
    boolean isBounded = Double.isFinite(half);
    String number = plain(measure, value.value());
    return node.put("number", (isBounded ? "" : "≥ ") + number)
        .put("half", isBounded ? "± " + number(measure, half) : "")
        .put("way", way(value))
        .put("short", hasWay(measure) ? Words.say(shortKey(measure, value.value())) : "")
        .put("isThere", true);
  }

  /** How a value lies to a goal, by a code and in words; nothing where either is not there. */
  static void verdict(ObjectNode node, MeasureValue value, double over, double under) {
    boolean isOver = Double.isFinite(over);
    boolean isUnder = Double.isFinite(under);
    if (value.given() && (isOver || isUnder)) {
      GoalVerdict its =
          GoalVerdict.of(
              value,
              isOver ? over : Double.NEGATIVE_INFINITY,
              isUnder ? under : Double.POSITIVE_INFINITY);
      node.put("verdict", its.word());
      if (its == GoalVerdict.CANNOT_BE_TOLD) {
        boolean leansOut = value.value() < over || value.value() > under; // false beside NaN
        node.put("lean", (leansOut ? GoalVerdict.OUTSIDE : GoalVerdict.INSIDE).word());
      }
    }
  }

  /** {@code 0.5 cm away (2 away to 1 towards)}. */
  static String change(Measure measure, double value, double low, double high) {
    return Words.say(
        "mat.drill.change",
        (plain(measure, value) + " " + unit(measure)).replace(" °", "°").strip(),
        shortWay(measure, value),
        plain(measure, low) + shortWay(measure, low),
        plain(measure, high) + shortWay(measure, high));
  }

  private static String shortWay(Measure measure, double value) {
    return hasWay(measure) ? " " + Words.say(shortKey(measure, value)) : "";
  }

  private static String shortKey(Measure measure, double value) {
    String of = measure.unit().equals("ms") ? "time" : "place";
    return "mat.short." + of + (value < 0 ? ".minus" : ".plus");
  }

  /**
   * What is usual, in the same words; empty where nothing is yet.
   *
   * @param beside the value that it stands beside, whose direction is not said twice
   */
  static String usual(MeasureValue beside, double usual) {
    return Double.isFinite(usual) ? Words.say("mat.usual", amount(beside, usual)) : "";
  }

  /** The goal, in the same words: {@code goal 40 to 62°}. */
  static String goal(MeasureValue beside, double over, double under) {
    boolean isOver = Double.isFinite(over);
    boolean isUnder = Double.isFinite(under);
    if (isOver && isUnder) {
      Measure measure = beside.measure();
      boolean isBackward = hasWay(measure) && under <= 0;
      double first = isBackward ? under : over;
      boolean isOneWay = !hasWay(measure) || over * under >= 0;
      double last = isBackward ? over : under;
      return Words.say(
          "mat.goal.between",
          isOneWay
              ? plain(measure, first)
              : plain(measure, first) + " " + unit(measure) + shortWay(measure, first),
          isOneWay ? amount(beside, last) : amount(measure, last, true));
    }
    return isOver
        ? Words.say("mat.goal.over", amount(beside, over))
        : isUnder ? Words.say("mat.goal.under", amount(beside, under)) : "";
  }

  private static String amount(MeasureValue beside, double value) {
    boolean isSaid = beside.given() && beside.value() * value >= 0;
    return amount(beside.measure(), value, !isSaid);
  }

  static String amount(Measure measure, double value, boolean saysWay) {
    String way = saysWay && hasWay(measure) ? Words.say(wayKey(measure, value)) : "";
    return Words.say("mat.amount", plain(measure, value), unit(measure), way)
        .replace(" °", "°")
        .replaceAll(" +", " ")
        .strip();
  }

  private static String plain(Measure measure, double value) {
    return number(measure, hasWay(measure) ? Math.abs(value) : value);
  }

  private static boolean hasWay(Measure measure) {
    return Words.inUse().has("mat.way." + measure.id() + ".plus");
  }

  /** {@code away from the target}; nothing for a measure without a direction. */
  private static String way(MeasureValue value) {
    return hasWay(value.measure()) ? Words.say(wayKey(value.measure(), value.value())) : "";
  }

  private static String wayKey(Measure measure, double value) {
    return "mat.way." + measure.id() + (value < 0 ? ".minus" : ".plus");
  }

  private static String number(Measure measure, double value) {
    return switch (measure.unit()) {
      case "mm" -> {
        double cm = Math.rint(value / LENGTH_STEP_MM) * LENGTH_STEP_MM / 10;
        yield minus(Words.inUse().decimal(cm, cm == Math.rint(cm) ? 0 : 1));
      }
      case "ms" -> minus(Words.inUse().decimal(Math.rint(value / TIME_STEP_MS) * TIME_STEP_MS, 0));
      case "deg", "%" -> minus(Words.inUse().decimal(value, 0));
      default -> minus(Words.inUse().decimal(value, PlainWords.decimals(measure)));
    };
  }

  private static String minus(String number) {
    return number.replace('-', '−');
  }

  private static String unit(Measure measure) {
    return switch (measure.unit()) {
      case "deg" -> "°";
      case "mm" -> "cm";
      case "1" -> "";
      default -> measure.unit();
    };
  }
}
