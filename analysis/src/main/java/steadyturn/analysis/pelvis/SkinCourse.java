package steadyturn.analysis.pelvis;

import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.stat.StatUtils;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.wear.SkinSlip;

/**
 * The skin shift over one swing. Where its key positions are known, skin slips as under the wrist
 * units ({@link SkinSlip}): by one random shift that is full at the top, by another at impact, by a
 * third at the finish, and half way between two it is less than either. Else it grows with the
 * largest turn so far.
 *
 * @param full what one shift is when it has grown fully
 * @param slip how the shifts come and go; empty where top or impact is not known
 */
record SkinCourse(SkinShift full, Optional<SkinSlip> slip) {

  /** The part of a shift that a body swaying at address has (our assumption). */
  private static final double SWAYING = 0.05;

  /** A finish that was not held comes about so long after impact, s (our assumption). */
  private static final double FOLLOW_THROUGH_S = 1;

  static SkinCourse of(SkinShift full, List<EventTime> events) {
    Optional<Double> takeaway = EventTime.timeS(SwingEvent.TAKEAWAY, events);
    Optional<Double> top = EventTime.timeS(SwingEvent.TOP, events);
    Optional<Double> impact = EventTime.timeS(SwingEvent.IMPACT, events);
    if (takeaway.isEmpty() || top.isEmpty() || impact.isEmpty()) {
      return new SkinCourse(full, Optional.empty());
    }
    double finishS =
        EventTime.timeS(SwingEvent.FINISH, events)
            .filter(s -> s > impact.get())
            .orElse(impact.get() + FOLLOW_THROUGH_S);
    boolean inOrder = takeaway.get() < top.get() && top.get() < impact.get();
    return new SkinCourse(
        full,
        inOrder
            ? Optional.of(new SkinSlip(takeaway.get(), top.get(), impact.get(), finishS))
            : Optional.empty());
  }

  /**
   * The shift at an instant, one standard deviation.
   *
   * @param largestTurnRad the largest turn of the pelvis away from address until then, rad
   */
  SkinShift at(double timeS, double largestTurnRad) {
    return slip.map(
            s -> full.times(Math.hypot(SWAYING, Math.sqrt(StatUtils.sumSq(s.parts(timeS))))))
        .map(shift -> shift.beyond(largestTurnRad))
        .orElseGet(() -> full.after(largestTurnRad));
  }
}
