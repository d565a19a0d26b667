package steadyturn.cli.words;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;
import steadyturn.analysis.compare.Comparison;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.Drift;
import steadyturn.analysis.compare.FurtherBalls;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;

/**
 * What a comparison of groups tells beside its numbers, for terminal and page alike.
 *
 * @param amount a value with its unit, as the reader gets it
 * @param inFull the whole name of a group
 */
public record ComparisonWords(
    Words words, BiFunction<Double, Measure, String> amount, UnaryOperator<String> inFull) {

  /** How many more balls with each club. */
  public static String balls(FurtherBalls more, Words words) {
    return more.balls().isPresent()
        ? Integer.toString(more.balls().getAsInt())
        : words.text("compare.further.never");
  }

  /**
   * What wandered off from the first ball to the last; that nothing did, where it was looked for.
   */
  public List<String> drifts(Comparison comparison) {
    List<String> told = new ArrayList<>();
    Set<MeasureAt> seen = new LinkedHashSet<>();
    boolean looked = false;
    for (ComparisonRow row : comparison.rows()) {
      looked |= row.drift().isPresent();
      row.drift()
          .filter(Drift::isSure)
          .filter(drift -> seen.add(row.what()))
          .ifPresent(drift -> told.add(drift(comparison, row, drift)));
    }
    if (looked && told.isEmpty()) {
      told.add(words.text("compare.drift.none"));
    }
    return told;
  }

  private String drift(Comparison comparison, ComparisonRow row, Drift drift) {
    Measure measure = row.what().measure();
    StringBuilder told =
        new StringBuilder(
            words.text(
                "compare.drift",
                name(row.what()),
                amount.apply(drift.change(), measure),
                amount.apply(drift.low(), measure),
                amount.apply(drift.high(), measure)));
    for (ComparisonRow each : comparison.rows()) {
      double part = each.drift().map(Drift::inDifference).orElse(0.0);
      if (each.what().equals(row.what()) && Math.abs(part) > each.margin() / 2) {
        String first = inFull.apply(each.first().group());
        String second = inFull.apply(each.second().group());
        told.append(' ')
            .append(words.text("compare.drift.in", amount.apply(part, measure), first, second));
      }
    }
    return told.toString();
  }

  private String name(MeasureAt what) {
    String measure = words.text("measure." + what.measure().id());
    return what.at().isEmpty() ? measure : measure + " " + words.text("at." + what.at());
  }
}
