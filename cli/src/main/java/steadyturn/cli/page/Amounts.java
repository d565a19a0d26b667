package steadyturn.cli.page;

import java.math.BigDecimal;
import java.util.Locale;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.cli.words.PlainWords;
import steadyturn.cli.words.Words;

/**
 * Numbers as a reader of the page gets them: rounded to what is worth reading, a true minus sign,
 * the decimal mark of the words, millimetres or inches, and for the player rounded once more with
 * "about".
 */
final class Amounts {

  private static final double MM_PER_INCH = 25.4;

  private static final double MM_PER_CM = 10;

  private final Words words;
  private final LengthUnits units;
  private final boolean centimetres;
  private final boolean inFull;

  /** Metric lengths in centimetres for the player, in millimetres for the teacher. */
  Amounts(LengthUnits units, Audience audience, Words words) {
    this.words = words;
    this.units = units;
    this.inFull = audience == Audience.PLAYER;
    this.centimetres = units == LengthUnits.METRIC && audience == Audience.PLAYER;
  }

  LengthUnits units() {
    return units;
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
      return words.text("amount.degrees");
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
    return shortest(value * factor(measure), decimals(measure));
  }

  /** The same with its unit. */
  String asSetWithUnit(double value, Measure measure) {
    return (asSet(value, measure) + " " + unit(measure)).strip();
  }

  /** {@code -45.2 deg (-47.1 to -43.3)}. */
  String ranged(double value, double low, double high, Measure measure) {
    return words.text(
        "unit.range", amount(value, measure), number(low, measure), number(high, measure));
  }

  /** For the player, without a sign and rounded to what the hand can show. */
  String plain(double value, Measure measure) {
    double size = Math.abs(value);
    return switch (measure.unit()) {
      case "deg" -> words.text("amount.deg", decimal(Math.rint(size), 0));
      case "mm" -> plainLength(size);
      case "s" -> words.text("amount.s", decimal(size, 2));
      case "ms" -> words.text("amount.ms", decimal(Math.rint(size / 5) * 5, 0));
      case "1" -> words.text("amount.times", decimal(size, 1));
      default -> decimal(Math.rint(size), 0) + " " + measure.unit();
    };
  }

  private String plainLength(double sizeMm) {
    if (units == LengthUnits.IMPERIAL) {
      double inches = Math.rint(2 * sizeMm / MM_PER_INCH) / 2;
      return inches == 1
          ? words.text("amount.in.one")
          : words.text("amount.in", shortest(inches, 1));
    }
    return words.text("amount.cm", shortest(Math.rint(sizeMm / 5) / 2, 1));
  }

  /** What a number is multiplied with before it is printed. */
  double factor(Measure measure) {
    if (units == LengthUnits.IMPERIAL && measure.unit().startsWith("mm")) {
      return 1 / MM_PER_INCH;
    }
    return centimetres && measure.unit().equals("mm") ? 1 / MM_PER_CM : 1;
  }

  private int decimals(Measure measure) {
    String unit = measure.unit();
    boolean finer =
        units == LengthUnits.IMPERIAL ? unit.startsWith("mm") : centimetres && unit.equals("mm");
    return PlainWords.decimals(measure) + (finer ? 1 : 0);
  }

  private String decimal(double value, int decimals) {
    return decimal(value, decimals, words);
  }

  /** Without zeros at its end. */
  private String shortest(double value, int decimals) {
    String all = String.format(Locale.ROOT, "%." + decimals + "f", value);
    return decimal(value, Math.max(0, new BigDecimal(all).stripTrailingZeros().scale()));
  }

  static String decimal(double value, int decimals, Words words) {
    if (!Double.isFinite(value)) {
      return "–";
    }
    String text = words.decimal(value, decimals);
    boolean zero = text.chars().noneMatch(c -> Character.digit(c, 10) > 0);
    return zero ? text.replace("-", "") : text.replace('-', '−');
  }
}
