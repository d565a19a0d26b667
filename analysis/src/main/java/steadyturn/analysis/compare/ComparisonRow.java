package steadyturn.analysis.compare;

import java.util.Optional;
import steadyturn.analysis.measure.Measure;
import steadyturn.ingest.words.Words;

/**
 * One measure at one key position in two groups.
 *
 * @param difference empty where a group has under three values
 * @param adjustedChance chance of so large a difference were there none, after allowing for all
 *     rows looked at; 1 without a difference
 * @param margin the difference that does not matter, in the measure's unit
 * @param typicalError swing-to-swing spread of the player over all groups of the comparison
 */
public record ComparisonRow(
    MeasureAt what,
    GroupSummary first,
    GroupSummary second,
    Optional<MeanDifference> difference,
    double adjustedChance,
    double margin,
    Optional<TypicalError> typicalError,
    ComparisonVerdict verdict) {

  /** The verdict for a reader: {@code same within 2 deg}. */
  public String words() {
    return Words.say("compare.verdict." + verdict.word(), (number(margin) + unit()));
  }

  private String unit() {
    Measure measure = what.measure();
    return measure.unit().equals("1") ? "" : " " + measure.unit();
  }

  private static String number(double x) {
    return x == Math.rint(x) ? Long.toString((long) x) : Double.toString(x);
  }
}
