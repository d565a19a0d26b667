package steadyturn.analysis.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.math3.distribution.TDistribution;
import steadyturn.analysis.measure.MeasureValue;

/**
 * Two single swings side by side. Whether they differ at all is judged by the measuring error;
 * whether that matters by how far this player's other swings lie apart.
 *
 * <p>Swings of one lesson share part of their error, which cancels but for a leftover; swings of
 * two lessons do not. The usual difference is t sqrt 2 times the typical error (Hopkins 2000, Weir
 * 2005, see {@link TypicalError}), with Student's t in place of 1.96, as the typical error rests on
 * few swings. The two swings themselves do not count in it.
 *
 * @param rows in the order asked for
 */
public record SwingPair(LessonSwing first, LessonSwing second, List<PairRow> rows) {

  /** Fewer degrees of freedom say nothing of a spread (our choice). */
  private static final int LEAST_FREEDOM = 2;

  public SwingPair {
    rows = List.copyOf(rows);
  }

  /**
   * Compares two swings.
   *
   * @param others more swings of the player; those of one lesson and club are held together
   */
  public static SwingPair of(
      LessonSwing first, LessonSwing second, List<LessonSwing> others, List<MeasureAt> looks) {
    ErrorSplit split = ErrorSplit.defaults();
    List<SwingGroup> groups = groups(first, second, others);
    List<PairRow> rows = new ArrayList<>();
    for (MeasureAt what : looks) {
      Optional<MeasureValue> a = what.in(first.swing()).filter(MeasureValue::isBounded);
      Optional<MeasureValue> b = what.in(second.swing()).filter(MeasureValue::isBounded);
      boolean sameLesson = first.lesson().equals(second.lesson());
      Optional<PairRow.Difference> difference =
          a.flatMap(x -> b.map(y -> difference(x, y, split, what, sameLesson)));
      Optional<Double> usual = usual(groups, what, split);
      rows.add(new PairRow(what, a, b, difference, usual, PairRow.found(difference, usual)));
    }
    return new SwingPair(first, second, rows);
  }

  private static List<SwingGroup> groups(
      LessonSwing first, LessonSwing second, List<LessonSwing> others) {
    return others.stream()
        .filter(each -> !each.equals(first) && !each.equals(second))
        .collect(
            Collectors.groupingBy(
                each -> each.lesson() + " " + each.swing().club() + " " + each.swing().kind(),
                LinkedHashMap::new,
                Collectors.toList()))
        .entrySet()
        .stream()
        .map(group -> new SwingGroup(group.getKey(), group.getValue()))
        .toList();
  }

  private static PairRow.Difference difference(
      MeasureValue a, MeasureValue b, ErrorSplit split, MeasureAt what, boolean sameLesson) {
    double shared = split.sharedPart(what);
    double kept = sameLesson ? split.leftover() * split.leftover() / 2 : 1;
    double variance = (a.sd() * a.sd() + b.sd() * b.sd()) * (1 - shared + kept * shared);
    double value = b.value() - a.value();
    double half = MeasureValue.Z95 * Math.sqrt(variance);
    return new PairRow.Difference(value, value - half, value + half);
  }

  private static Optional<Double> usual(List<SwingGroup> groups, MeasureAt what, ErrorSplit split) {
    List<GroupSummary> summaries =
        groups.stream().map(group -> GroupSummary.of(group, what, split)).toList();
    return TypicalError.pooled(summaries)
        .filter(error -> error.freedom() >= LEAST_FREEDOM)
        .map(
            error ->
                new TDistribution(error.freedom()).inverseCumulativeProbability(0.975)
                    * Math.sqrt(2)
                    * error.value());
  }
}
