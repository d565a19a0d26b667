package steadyturn.analysis.compare;

import java.util.Optional;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.ingest.reason.Worded;

/**
 * One measure at one key position in two single swings.
 *
 * @param difference second less first with its 95 % interval from the measuring error alone; empty
 *     where one of them has no value
 * @param usual how far two swings of this player differ in 95 of 100 pairs though nothing has
 *     changed; empty with too few other swings
 */
public record PairRow(
    MeasureAt what,
    Optional<MeasureValue> first,
    Optional<MeasureValue> second,
    Optional<Difference> difference,
    Optional<Double> usual,
    Found found) {

  /**
   * A difference with its 95 % interval.
   *
   * @param value second less first
   * @param low lower end
   * @param high upper end
   */
  public record Difference(double value, double low, double high) {

    boolean isSure() {
      return low > 0 || high < 0;
    }
  }

  /** What can be said of two swings. */
  public enum Found implements Worded {
    /** One of them has no value. */
    NOT_MEASURED,
    /** The measuring error alone can explain the difference. */
    ALIKE,
    /** They differ, by no more than this player's swings usually do. */
    WITHIN_USUAL,
    /** They differ by more than that. */
    BEYOND_USUAL,
    /** They differ, and too few other swings are there to say what is usual. */
    USUAL_UNKNOWN;
  }

  static Found found(Optional<Difference> difference, Optional<Double> usual) {
    if (difference.isEmpty()) {
      return Found.NOT_MEASURED;
    }
    if (!difference.get().isSure()) {
      return Found.ALIKE;
    }
    if (usual.isEmpty()) {
      return Found.USUAL_UNKNOWN;
    }
    return Math.abs(difference.get().value()) > usual.get()
        ? Found.BEYOND_USUAL
        : Found.WITHIN_USUAL;
  }
}
