package steadyturn.analysis.compare;

import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Second group minus first, in the measure's unit, with what can be said about it.
 *
 * @param value difference of the means
 * @param low lower end of a range that holds the true difference in at least 95 of 100 cases
 * @param high upper end
 * @param chance probability of a difference at least this large, either way, were there none
 * @param beyondMargin larger of the two one-sided probabilities that the true difference is at or
 *     beyond the margin (two one-sided tests: Schuirmann 1987, J Pharmacokinet Biopharm 15:657-680;
 *     from memory)
 * @param detectable the smallest difference that groups like these can show at the level asked for
 */
public record MeanDifference(
    double value, double low, double high, double chance, double beyondMargin, double detectable) {

  /**
   * Compares two groups of three swings or more.
   *
   * @param margin differences under this do not matter, in the measure's unit
   * @param level chance of a false "real" that one row may spend
   */
  static MeanDifference of(
      GroupSummary first, GroupSummary second, double leftover, double margin, double level) {
    double value = second.mean() - first.mean();
    TwoSpreads spread = spread(first, second, leftover);
    double half = spread.upperQuantile(0.025);
    return new MeanDifference(
        value,
        value - half,
        value + half,
        Math.min(1, 2 * spread.upperTail(Math.abs(value))),
        spread.upperTail(margin - Math.abs(value)),
        spread.upperQuantile(level / 2));
  }

  private static TwoSpreads spread(GroupSummary first, GroupSummary second, double leftover) {
    return new TwoSpreads(
        first.varianceOfMean(),
        first.count() - 1,
        second.varianceOfMean(),
        second.count() - 1,
        sharedVariance(first, second, leftover));
  }

  /**
   * The same with the range of a row judged real: at the level that Holm's steps leave for it, so
   * that it keeps clear of zero just when the row does.
   */
  MeanDifference ofRealRow(GroupSummary first, GroupSummary second, double leftover, double level) {
    double half = spread(first, second, leftover).upperQuantile(level / 2);
    return new MeanDifference(value, value - half, value + half, chance, beyondMargin, detectable);
  }

  /**
   * The same with the range of a row not judged real: one-sided bounds drawn out to zero, which
   * hold the truth as often as the two-sided range and end where two one-sided tests do (Hsu,
   * Hwang, Liu and Ruberg 1994, Confidence intervals associated with tests for bioequivalence,
   * Biometrika 81:103-114; from memory). A range can miss on this way or by a false "real": both
   * together in 5 of 100.
   *
   * @param level what the row could spend on a false "real"
   */
  MeanDifference ofOpenRow(GroupSummary first, GroupSummary second, double leftover, double level) {
    double half = spread(first, second, leftover).upperQuantile(0.05 - level / 2);
    double from = Math.min(0, value - half);
    double to = Math.max(0, value + half);
    return new MeanDifference(value, from, to, chance, beyondMargin, detectable);
  }

  /**
   * Variance that the lessons' shared errors leave in the difference: each lesson counts with the
   * difference of its parts in the two groups, so within one lesson only the leftover stays, and
   * between two lessons both count in full.
   */
  static double sharedVariance(GroupSummary first, GroupSummary second, double leftover) {
    Map<String, Double> a = first.lessonParts();
    Map<String, Double> b = second.lessonParts();
    Set<String> lessons = new TreeSet<>(a.keySet());
    lessons.addAll(b.keySet());
    double parts = 0;
    for (String lesson : lessons) {
      double pa = a.getOrDefault(lesson, 0.0);
      double pb = b.getOrDefault(lesson, 0.0);
      double kept = leftover * Math.min(pa, pb);
      parts += (pa - pb) * (pa - pb) + kept * kept;
    }
    double sharedA = first.sharedError();
    double sharedB = second.sharedError();
    return parts * (sharedA * sharedA + sharedB * sharedB) / 2;
  }
}
