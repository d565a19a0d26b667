package steadyturn.analysis.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.math3.distribution.TDistribution;
import steadyturn.analysis.measure.MeasureValue;

/**
 * How a measure wandered off from the first ball to the last, whatever the club: warming up,
 * tiring, a unit that slips. One slope over all groups, each about its own mean in its own lesson,
 * so that a difference of clubs is no drift.
 *
 * @param change from the first ball of a lesson to its last, in the measure's unit
 * @param low lower end of its range, which allows for all measures looked at (Bonferroni)
 * @param high upper end
 * @param inDifference what it adds to the difference of two groups: nothing where they were hit in
 *     a balanced order
 */
public record Drift(double change, double low, double high, double inDifference) {

  private static final int LEAST_FREEDOM = 3;

  /** A value with its place among the balls of its lesson: 0 the first, 1 the last. */
  private record Ball(String group, String lesson, double place, double value) {}

  /** Whether it cannot be chance. */
  public boolean isSure() {
    return low > 0 || high < 0;
  }

  /** The same between two groups, by how far apart they lie among the balls. */
  Drift between(SwingGroup first, SwingGroup second, List<SwingGroup> all) {
    return new Drift(change, low, high, change * (meanPlace(second, all) - meanPlace(first, all)));
  }

  /** Fits the slope; empty with too few balls, or where all were hit at one place. */
  static Optional<Drift> of(List<SwingGroup> groups, MeasureAt what, double level) {
    Map<String, int[]> ends = ends(groups);
    List<Ball> balls = new ArrayList<>();
    for (SwingGroup group : groups) {
      for (LessonSwing each : group.swings()) {
        what.in(each.swing())
            .filter(MeasureValue::isBounded)
            .ifPresent(
                v ->
                    balls.add(new Ball(group.name(), each.lesson(), place(each, ends), v.value())));
      }
    }
    return fitted(balls, level);
  }

  private static Optional<Drift> fitted(List<Ball> balls, double level) {
    double xx = 0;
    double xy = 0;
    double yy = 0;
    var cells = balls.stream().collect(Collectors.groupingBy(b -> List.of(b.group(), b.lesson())));
    for (List<Ball> cell : cells.values()) {
      double x = cell.stream().mapToDouble(Ball::place).average().orElse(0);
      double y = cell.stream().mapToDouble(Ball::value).average().orElse(0);
      for (Ball ball : cell) {
        xx += (ball.place() - x) * (ball.place() - x);
        xy += (ball.place() - x) * (ball.value() - y);
        yy += (ball.value() - y) * (ball.value() - y);
      }
    }
    int freedom = balls.size() - cells.size() - 1;
    if (freedom < LEAST_FREEDOM || xx < 1e-9) {
      return Optional.empty();
    }
    double slope = xy / xx;
    double error = Math.sqrt(Math.max(0, yy - slope * xy) / freedom / xx);
    double half = error * new TDistribution(freedom).inverseCumulativeProbability(1 - level / 2);
    return Optional.of(new Drift(slope, slope - half, slope + half, 0));
  }

  private static double meanPlace(SwingGroup group, List<SwingGroup> all) {
    Map<String, int[]> ends = ends(all);
    return group.swings().stream().mapToDouble(s -> place(s, ends)).average().orElse(0.5);
  }

  private static double place(LessonSwing each, Map<String, int[]> ends) {
    int[] from = ends.getOrDefault(each.lesson(), new int[] {0, 0});
    return from[1] == from[0] ? 0.5 : (each.ball() - from[0]) / (double) (from[1] - from[0]);
  }

  /** Number of the first ball and of the last, by lesson. */
  private static Map<String, int[]> ends(List<SwingGroup> groups) {
    return groups.stream()
        .flatMap(group -> group.swings().stream())
        .collect(
            Collectors.toMap(
                LessonSwing::lesson,
                s -> new int[] {s.ball(), s.ball()},
                (a, b) -> new int[] {Math.min(a[0], b[0]), Math.max(a[1], b[1])}));
  }
}
