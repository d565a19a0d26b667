package steadyturn.analysis.coach;

import java.util.OptionalInt;
import steadyturn.analysis.coach.teaching.Limit;
import steadyturn.analysis.coach.teaching.Need;

/**
 * A condition held against the swings of a lesson, in the unit of its measure.
 *
 * @param value mean (or spread) over the swings, NaN without any
 * @param low lower end of the 95 % interval: the player's spread, the small number of swings, and
 *     the measuring error the swings share
 * @param high upper end
 * @param holds yes when the whole interval lies beyond the limit, no when none of it does
 * @param moreSwings how many more swings would probably settle it at this spread; empty when it is
 *     settled, or when the measuring error alone is too large
 */
public record Evidence(
    Need need,
    Limit limit,
    double value,
    double low,
    double high,
    Certainty holds,
    OptionalInt moreSwings) {

  /** Whether the value itself, without its interval, lies beyond the limit. */
  public boolean leansTowards() {
    return need.above() ? value > limit.value() : value < limit.value();
  }
}
