package steadyturn.analysis.compare;

import java.util.Map;
import java.util.Optional;
import steadyturn.analysis.measure.Measure;

/**
 * The difference that does not matter, by unit. Our choice: about what a good measurement of ten
 * swings can tell apart and a teacher would not mention.
 */
public final class Margins {

  private static final Map<String, Double> BY_UNIT =
      Map.of(
          "deg", 2.0, "mm", 10.0, "mm/deg", 0.2, "%", 3.0, "ms", 4.0, "s", 0.02, "deg/s", 50.0, "1",
          0.1);

  private Margins() {}

  /** The margin of a measure, in its unit; {@code 1} is that of the tempo ratio. */
  public static double of(Measure measure) {
    return Optional.ofNullable(BY_UNIT.get(measure.unit()))
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "no margin for " + measure.unit() + " of " + measure.id() + ": " + BY_UNIT));
  }
}
