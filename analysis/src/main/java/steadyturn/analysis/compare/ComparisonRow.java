package steadyturn.analysis.compare;

import java.util.Optional;

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
    ComparisonVerdict verdict) {}
