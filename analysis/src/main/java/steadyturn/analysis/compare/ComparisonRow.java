package steadyturn.analysis.compare;

import java.util.Collections;
import java.util.Optional;

/**
 * One measure at one key position in two groups.
 *
 * @param difference empty where a group has under three values
 * @param adjustedChance chance of so large a difference were there none, after allowing for all
 *     rows looked at; 1 without a difference
 * @param margin the difference that does not matter, in the measure's unit
 * @param typicalError swing-to-swing spread of the player over all groups of the comparison
 * @param level chance of a false "real" that this row may spend when all are looked at together
 * @param drift from the first ball to the last; empty where it could not be looked for
 */
public record ComparisonRow(
    MeasureAt what,
    GroupSummary first,
    GroupSummary second,
    Optional<MeanDifference> difference,
    double adjustedChance,
    double margin,
    Optional<TypicalError> typicalError,
    ComparisonVerdict verdict,
    double level,
    Optional<Drift> drift) {

  /**
   * What it takes to tell a difference as large as the one seen, or as the margin where that is
   * larger; empty where it is told already, and where the groups share no lesson, as no more can be
   * hit then.
   */
  public Optional<FurtherBalls> further() {
    boolean more =
        verdict == ComparisonVerdict.NOT_SHOWN
            && !Collections.disjoint(first.lessonParts().keySet(), second.lessonParts().keySet());
    return difference
        .filter(d -> more)
        .map(d -> FurtherBalls.of(first, second, Math.max(margin, Math.abs(d.value())), level));
  }
}
