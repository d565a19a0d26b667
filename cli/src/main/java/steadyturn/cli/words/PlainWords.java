package steadyturn.cli.words;

import steadyturn.analysis.measure.Measure;
import steadyturn.ingest.sample.BodyPoint;

/** The words a teacher reads for the words of the output contract. */
public final class PlainWords {

  private PlainWords() {}

  /** The name of a measure, without its unit. */
  public static String of(Measure measure) {
    return Words.say("name." + measure.id());
  }

  /** The unit as printed: nothing for a ratio. */
  public static String unit(Measure measure) {
    return measure.unit().equals("1") ? "" : measure.unit();
  }

  /** Decimals of a measure that are worth reading. */
  public static int decimals(Measure measure) {
    return switch (measure.unit()) {
      case "deg", "deg/cm", "1" -> 1;
      case "s", "mm/deg" -> 2;
      default -> 0;
    };
  }

  /** The name of a key position from its word in the contract. */
  public static String keyPosition(String word) {
    return Words.say("position." + word);
  }

  /** A flag as a sentence part. */
  public static String flag(String word) {
    return Words.say("flag." + word);
  }

  /** A number of swings. */
  public static String swings(int number) {
    return number == 1 ? Words.say("swings.one") : Words.say("swings.many", number);
  }

  /** The name of a measure with its unit. */
  public static String withUnit(Measure measure) {
    return (of(measure) + " " + unit(measure)).strip();
  }

  public static String bodyPoint(BodyPoint point) {
    return Words.say("point." + point.trackedPoint().replace('_', '-'));
  }
}
