package steadyturn.analysis.coach.drill;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.swing.EventReason;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.reason.Reason;

/**
 * One rise of the lead arm from hanging to about level, and its return.
 *
 * @param takeaway start of the rise
 * @param top where the arm turned round for the last time
 * @param levelDown the arm level on the way down; empty where it did not rise clearly past level
 * @param back the arm nearest to its direction before the rise: where a ball would be
 */
record ArmRise(At takeaway, At top, Optional<At> levelDown, At back) {

  private static final double BEFORE_S = 2;
  private static final double AFTER_S = 1;

  /** The middle of the stretch that counts as address, s. */
  private static final double REFERENCE_S = 0.14;

  /** An instant with its standard deviation, s. */
  record At(double timeS, double sdS) {}

  double topS() {
    return top.timeS;
  }

  static double topS(Swing swing) {
    return swing.timeS(SwingEvent.TOP).orElseThrow();
  }

  /** The rise as a practice swing with what key positions it has. */
  Swing swing() {
    List<EventTime> events = new ArrayList<>();
    events.add(event(SwingEvent.ADDRESS, new At(takeaway.timeS - REFERENCE_S, takeaway.sdS)));
    events.add(event(SwingEvent.TAKEAWAY, takeaway));
    events.add(event(SwingEvent.TOP, top));
    levelDown.ifPresent(at -> events.add(event(SwingEvent.LEAD_ARM_LEVEL_DOWN, at)));
    events.add(event(SwingEvent.IMPACT, back));
    return new Swing(
        1,
        SwingKind.PRACTICE,
        "",
        takeaway.timeS - BEFORE_S,
        back.timeS + AFTER_S,
        events,
        List.of("impact-virtual"));
  }

  private static EventTime event(SwingEvent event, At at) {
    return new EventTime(
        event, at.timeS, at.sdS, Grade.ESTIMATED, Reason.of(EventReason.HALF_SWING));
  }
}
