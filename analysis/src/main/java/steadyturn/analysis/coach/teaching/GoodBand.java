package steadyturn.analysis.coach.teaching;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import steadyturn.analysis.compare.MeasureAt;

/**
 * What a teacher calls good of one measure, by the limits of the rules for what is good.
 *
 * @param low lower end in the unit of the measure; minus infinity where it has none
 * @param high upper end; infinite where it has none
 */
public record GoodBand(double low, double high) {

  /** The band of a measure; empty where nothing is said of it. */
  public static Optional<GoodBand> of(Teaching teaching, MeasureAt what) {
    List<Need> needs =
        teaching.good().stream()
            .flatMap(rule -> rule.when().stream())
            .filter(need -> need.what().equals(what) && !need.ofSpread())
            .toList();
    double low = bound(teaching, needs, true).orElse(Double.NEGATIVE_INFINITY);
    double high = bound(teaching, needs, false).orElse(Double.POSITIVE_INFINITY);
    return needs.isEmpty() ? Optional.empty() : Optional.of(new GoodBand(low, high));
  }

  private static OptionalDouble bound(Teaching teaching, List<Need> needs, boolean above) {
    return needs.stream()
        .filter(need -> need.above() == above)
        .mapToDouble(need -> teaching.limit(need.limit()).value())
        .findFirst();
  }

  public boolean holds(double value) {
    return value >= low && value <= high;
  }

  /**
   * How much of the way to the band was gone: 1 and more where it is reached, negative away from
   * it; empty where the way began inside.
   */
  public OptionalDouble partOfTheWay(double from, double to) {
    if (holds(from)) {
      return OptionalDouble.empty();
    }
    double edge = from < low ? low : high;
    return OptionalDouble.of((to - from) / (edge - from));
  }
}
