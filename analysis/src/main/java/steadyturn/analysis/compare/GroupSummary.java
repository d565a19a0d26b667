package steadyturn.analysis.compare;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.stat.StatUtils;
import steadyturn.analysis.measure.MeasureValue;

/**
 * One measure at one key position over one group, in the measure's unit.
 *
 * @param count swings with a value
 * @param withheld swings without one
 * @param mean mean of the values, NaN without any
 * @param spread standard deviation between swings (n - 1), NaN under two swings
 * @param ownError 1 SD of the measuring error that is each swing's own; the spread contains it
 * @param sharedError 1 SD of the measuring error that the swings of a lesson share
 * @param lessonParts part of the swings that came from each lesson, adding up to 1
 */
public record GroupSummary(
    String group,
    int count,
    int withheld,
    double mean,
    double spread,
    double ownError,
    double sharedError,
    Map<String, Double> lessonParts) {

  public GroupSummary {
    lessonParts = Map.copyOf(lessonParts);
  }

  /** Collects the values of a group; a value with an open end ("at least") counts as withheld. */
  public static GroupSummary of(SwingGroup group, MeasureAt what, ErrorSplit split) {
    List<MeasureValue> values = new ArrayList<>();
    Map<String, Integer> counts = new HashMap<>();
    for (LessonSwing swing : group.swings()) {
      what.in(swing.swing())
          .filter(MeasureValue::isBounded)
          .ifPresent(
              value -> {
                values.add(value);
                counts.merge(swing.lesson(), 1, Integer::sum);
              });
    }
    int n = values.size();
    Map<String, Double> parts = new HashMap<>();
    counts.forEach((lesson, its) -> parts.put(lesson, its / (double) n));
    double[] numbers = values.stream().mapToDouble(MeasureValue::value).toArray();
    double variance = values.stream().mapToDouble(v -> v.sd() * v.sd()).average().orElse(0);
    double shared = split.sharedPart(what);
    return new GroupSummary(
        group.name(),
        n,
        group.swings().size() - n,
        StatUtils.mean(numbers),
        n < 2 ? Double.NaN : Math.sqrt(StatUtils.variance(numbers)),
        Math.sqrt((1 - shared) * variance),
        Math.sqrt(shared * variance),
        parts);
  }

  /**
   * Half-width of the 95 % interval of the mean: the player's spread over so few swings, and the
   * error that the swings share, which no number of swings can take away.
   */
  public double halfWidthOfMean() {
    double shared = sharedVarianceOfMean();
    return new TwoSpreads(varianceOfMean(), count - 1, 0, count - 1, shared).upperQuantile(0.025);
  }

  /** The same player and tool with another number of swings. */
  public GroupSummary withCount(int otherCount) {
    return new GroupSummary(
        group, otherCount, withheld, mean, spread, ownError, sharedError, lessonParts);
  }

  /**
   * The smallest difference to a group of so many more swings of the same lesson that could be
   * shown (95 %), were they to wander as these do.
   */
  public double detectableAgainst(int others) {
    double leftover = ErrorSplit.defaults().leftover();
    return MeanDifference.of(this, withCount(others), leftover, 0, 0.05).detectable();
  }

  private double sharedVarianceOfMean() {
    double parts = lessonParts.values().stream().mapToDouble(part -> part * part).sum();
    return parts * sharedError * sharedError;
  }

  /**
   * Variance of the mean from swing to swing. Never below what each swing's own measuring error
   * alone would give: three swings that happen to agree do not make a perfect tool.
   */
  double varianceOfMean() {
    return Math.max(spread * spread, ownError * ownError) / count;
  }
}
