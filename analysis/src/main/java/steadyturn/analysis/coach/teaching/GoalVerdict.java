package steadyturn.analysis.coach.teaching;

import steadyturn.analysis.measure.MeasureValue;
import steadyturn.ingest.reason.Worded;

/** How a value lies to a goal, judged by its whole 95 % interval. */
public enum GoalVerdict implements Worded {
  INSIDE,
  OUTSIDE,
  /** The interval lies across an edge of the goal. */
  CANNOT_BE_TOLD;

  /**
   * Of a given value.
   *
   * @param low lower end of the goal in the unit of the value; minus infinity where it has none
   * @param high upper end; infinite where it has none
   */
  public static GoalVerdict of(MeasureValue value, double low, double high) {
    if (low <= value.low() && value.high() <= high) {
      return INSIDE;
    }
    return value.high() < low || high < value.low() ? OUTSIDE : CANNOT_BE_TOLD;
  }
}
