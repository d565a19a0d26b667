package steadyturn.cli.page;

import java.util.Locale;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.words.Words;

/**
 * Numbers as a reader of the page gets them: rounded to what is worth reading, a true minus sign,
 * millimetres or inches, and for the player rounded once more with "about".
 */
final class Amounts {

  private static final double MM_PER_INCH = 25.4;

  private static final double MM_PER_CM = 10;

  private final LengthUnits units;
  private final boolean centimetres;
  private final boolean inFull;

  /** Metric lengths in centimetres for the player, in millimetres for the teacher. */
  Amounts(LengthUnits units, Audience audience) {
    this.units = units;
    this.inFull = audience == Audience.PLAYER;
    this.centimetres = units == LengthUnits.METRIC && audience == Audience.PLAYER;
  }

  /** The unit as printed; nothing for a ratio. */
  String unit(Measure measure) {
    String unit = measure.unit();
    if (units == LengthUnits.IMPERIAL) {
      unit = unit.replace("mm", "in");
    } else if (centimetres && unit.equals("mm")) {
      unit = "cm";
    }
    if (inFull && unit.equals("deg")) {
      return Words.say("amount.degrees");
    }
    return unit.equals("1") ? "" : unit;
  }

  /** A number in a measure's unit, without the unit. */
  String number(double value, Measure measure) {
    return decimal(value * factor(measure), decimals(measure));
  }

  /** A number with its unit. */
  String amount(double value, Measure measure) {
    return (number(value, measure) + " " + unit(measure)).strip();
  }

  /** A number that someone set, such as a limit: without zeros at its end. */
  String asSet(double value, Measure measure) {
    String text = number(value, measure);
    return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
  }

  /** {@code -45.2 deg (-47.1 to -43.3)}. */
  String ranged(double value, double low, double high, Measure measure, String form) {
    return form.replace("{0}", amount(value, measure))
        .replace("{1}", number(low, measure))
        .replace("{2}", number(high, measure));
  }

  /** For the player, without a sign and rounded to what the hand can show. */
  String plain(double value, Measure measure) {
    double size = Math.abs(value);
    return switch (measure.unit()) {
      case "deg" -> Words.say("amount.deg", decimal(Math.rint(size), 0));
      case "mm" -> plainLength(size);
      case "s" -> Words.say("amount.s", decimal(size, 2));
      case "ms" -> Words.say("amount.ms", decimal(Math.rint(size / 5) * 5, 0));
      case "1" -> Words.say("amount.times", decimal(size, 1));
      default -> decimal(Math.rint(size), 0) + " " + measure.unit();
    };
  }

  private String plainLength(double sizeMm) {
    if (units == LengthUnits.IMPERIAL) {
      double inches = Math.rint(2 * sizeMm / MM_PER_INCH) / 2;
      return inches == 1
          ? Words.say("amount.in.one")
          : Words.say("amount.in", decimal(inches, 1).replace(".0", ""));
    }
    return Words.say("amount.cm", decimal(Math.rint(sizeMm / 5) / 2, 1).replace(".0", ""));
  }

  /** What a number is multiplied with before it is printed. */
  double factor(Measure measure) {
    if (units == LengthUnits.IMPERIAL && measure.unit().startsWith("mm")) {
      return 1 / MM_PER_INCH;
    }
    return centimetres && measure.unit().equals("mm") ? 1 / MM_PER_CM : 1;
  }

  private int decimals(Measure measure) {
    boolean inches = units == LengthUnits.IMPERIAL;
    return switch (measure.unit()) {
      case "deg", "deg/cm", "1" -> 1;
      case "s" -> 2;
      case "mm/deg" -> inches ? 3 : 2;
      case "mm" -> inches || centimetres ? 1 : 0;
      default -> 0;
    };
  }

  static String decimal(double value, int decimals) {
    if (!Double.isFinite(value)) {
      return "–";
    }
    String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
    boolean zero = text.chars().noneMatch(c -> c >= '1' && c <= '9');
    return zero ? text.replace("-", "") : text.replace('-', '−');
  }
}
