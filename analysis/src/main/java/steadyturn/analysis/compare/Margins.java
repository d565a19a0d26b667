package steadyturn.analysis.compare;

import java.util.Map;
import java.util.Optional;
import steadyturn.analysis.measure.Measure;

/**
 * The difference that does not matter, by unit. Our choice: about what a good measurement of ten
 * swings can tell apart and a teacher would not mention.
 */
public record Margins(Map<String, Double> byUnit) {

  public Margins {
    byUnit = Map.copyOf(byUnit);
    byUnit.forEach(
        (unit, margin) -> {
          if (!(margin > 0)) {
            throw new IllegalArgumentException(
                "margin for " + unit + " must be over 0, was " + margin);
          }
        });
  }

  /** 2 deg, 10 mm, 0.2 mm/deg, 3 %, 4 ms, 0.02 s, 50 deg/s, and 0.1 for the tempo ratio. */
  public static Margins defaults() {
    return new Margins(
        Map.of(
            "deg", 2.0, "mm", 10.0, "mm/deg", 0.2, "%", 3.0, "ms", 4.0, "s", 0.02, "deg/s", 50.0,
            "1", 0.1));
  }

  /** The margin of a measure, in its unit. */
  public double of(Measure measure) {
    return Optional.ofNullable(byUnit.get(measure.unit()))
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "no margin for " + measure.unit() + " of " + measure.id() + ": " + byUnit));
  }
}
