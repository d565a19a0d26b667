package steadyturn.ingest.recording.table;

import java.util.Locale;
import java.util.OptionalDouble;
import steadyturn.ingest.sample.StandardGravity;

/** Units as people spell them, turned into a factor to SI. */
public final class UnitWords {

  private UnitWords() {}

  /** Factor from the named unit to m/s^2; empty when the word is not known. */
  public static OptionalDouble accelToMps2(String word) {
    return switch (plain(word)) {
      case "m/s^2", "m/s2", "m/s/s", "ms^-2", "ms-2", "ms2" -> OptionalDouble.of(1);
      case "g", "gn", "g0" -> OptionalDouble.of(StandardGravity.MPS2);
      case "mg" -> OptionalDouble.of(StandardGravity.MPS2 / 1000);
      case "cm/s^2", "cm/s2" -> OptionalDouble.of(0.01);
      default -> OptionalDouble.empty();
    };
  }

  /** Factor from the named unit to rad/s; empty when the word is not known. */
  public static OptionalDouble rateToRadPerS(String word) {
    return switch (plain(word)) {
      case "rad/s", "rad/sec", "rads^-1", "rads-1" -> OptionalDouble.of(1);
      case "mrad/s" -> OptionalDouble.of(0.001);
      case "deg/s", "deg/sec", "degs^-1", "degs-1", "dps", "degree/s", "degrees/s", "o/s" ->
          OptionalDouble.of(Math.PI / 180);
      case "mdeg/s", "mdps" -> OptionalDouble.of(Math.PI / 180_000);
      default -> OptionalDouble.empty();
    };
  }

  /** Factor from the named unit to s; empty when the word is not known. */
  public static OptionalDouble timeToS(String word) {
    return switch (plain(word)) {
      case "s", "sec", "second", "seconds" -> OptionalDouble.of(1);
      case "ms", "millisecond", "milliseconds" -> OptionalDouble.of(1e-3);
      case "us", "microsecond", "microseconds" -> OptionalDouble.of(1e-6);
      case "ns", "nanosecond", "nanoseconds" -> OptionalDouble.of(1e-9);
      case "min", "minute", "minutes" -> OptionalDouble.of(60);
      default -> OptionalDouble.empty();
    };
  }

  /** One spelling for the degree sign, superscripts, dots, the micro sign and blanks. */
  private static String plain(String word) {
    return word.strip()
        .toLowerCase(Locale.ROOT)
        .replace("°", "deg")
        .replace("º", "deg")
        .replace("²", "^2")
        .replace("⁻¹", "^-1")
        .replace("⁻^2", "^-2")
        .replace("µ", "u")
        .replace("μ", "u")
        .replace("**", "^")
        .replaceAll("[\\s·⋅*]", "");
  }
}
