package steadyturn.analysis.coach.drill;

import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.GoalVerdict;
import steadyturn.analysis.measure.MeasureValue;

/**
 * One repetition of a drill.
 *
 * @param swing number of the swing it is; 0 for a rehearsal without a full swing
 * @param timeS when the pelvis or the hands turned, s
 * @param value what judges it
 * @param inBand whether the value lies in the drill's band
 * @param sure whether its whole 95 % interval lies on that side
 */
public record DrillRep(int swing, double timeS, MeasureValue value, boolean inBand, boolean sure) {

  static DrillRep of(Drill drill, int swing, double timeS, MeasureValue value) {
    boolean inBand = drill.low() <= value.value() && value.value() <= drill.high();
    GoalVerdict verdict = GoalVerdict.of(value, drill.low(), drill.high());
    return new DrillRep(swing, timeS, value, inBand, verdict != GoalVerdict.CANNOT_BE_TOLD);
  }

  /** How it lies to the drill's band. */
  public GoalVerdict verdict() {
    return !sure ? GoalVerdict.CANNOT_BE_TOLD : inBand ? GoalVerdict.INSIDE : GoalVerdict.OUTSIDE;
  }
}
