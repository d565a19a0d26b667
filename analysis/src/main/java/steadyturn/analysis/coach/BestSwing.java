package steadyturn.analysis.coach;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.teaching.Need;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.ErrorSplit;
import steadyturn.analysis.compare.Margins;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;

/**
 * The swing of a lesson that lies nearest to what the teacher calls good. The rule, our choice: for
 * every limit of the teaching file's "good" entries, how far the value lies on the wrong side, in
 * margins that do not matter (2 deg, 10 mm and so on), added up; the smallest sum is the best.
 *
 * <p>Only each swing's own part of the measuring error counts between swings of one lesson: the
 * shared part moves them all alike.
 *
 * @param swing the best
 * @param miss its sum of margins on the wrong side; 0 when all limits are kept
 * @param alike numbers of the swings that measuring error leaves no worse
 */
public record BestSwing(SwingResult swing, double miss, List<Integer> alike) {

  public BestSwing {
    alike = List.copyOf(alike);
  }

  private record Tried(SwingResult swing, double miss, double variance) {}

  /** The best of the swings that have every value which any of them has; empty without such. */
  public static Optional<BestSwing> among(Teaching teaching, List<SwingResult> swings) {
    List<Need> needs =
        teaching.good().stream()
            .flatMap(rule -> rule.when().stream())
            .filter(need -> !need.ofSpread())
            .filter(need -> swings.stream().anyMatch(swing -> value(swing, need).isPresent()))
            .toList();
    List<Tried> tried = new ArrayList<>();
    for (SwingResult swing : swings) {
      if (!needs.isEmpty() && needs.stream().allMatch(n -> value(swing, n).isPresent())) {
        tried.add(tried(teaching, swing, needs));
      }
    }
    return tried.stream()
        .min(Comparator.comparingDouble(Tried::miss))
        .map(best -> new BestSwing(best.swing, best.miss, alike(best, tried)));
  }

  private static List<Integer> alike(Tried best, List<Tried> tried) {
    return tried.stream()
        .filter(each -> !each.equals(best))
        .filter(
            each ->
                each.miss - best.miss
                    <= MeasureValue.Z95 * Math.sqrt(each.variance + best.variance))
        .map(each -> each.swing.number())
        .toList();
  }

  private static Tried tried(Teaching teaching, SwingResult swing, List<Need> needs) {
    double miss = 0;
    double variance = 0;
    for (Need need : needs) {
      Measure measure = need.what().measure();
      MeasureValue v = value(swing, need).orElseThrow();
      double margin = Margins.of(measure);
      double sd = v.sd() / margin;
      double ownPart = 1 - ErrorSplit.defaults().sharedPart(need.what());
      double limit = teaching.limit(need.limit()).value();
      double wrong = (need.above() ? limit - v.value() : v.value() - limit) / margin;
      miss += Math.max(0, wrong);
      if (wrong > -MeasureValue.Z95 * sd) {
        variance += ownPart * sd * sd;
      }
    }
    return new Tried(swing, miss, variance);
  }

  private static Optional<MeasureValue> value(SwingResult swing, Need need) {
    return need.what().in(swing).filter(MeasureValue::isBounded);
  }
}
