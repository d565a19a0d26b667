package steadyturn.analysis.lab.study;

import java.util.Locale;
import java.util.Optional;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;

/** The parts of a swing into which the middle of a dropout is laid. */
enum DropoutPhase {
  ADDRESS(SwingEvent.TAKEAWAY, -1.0, SwingEvent.TAKEAWAY, -0.05),
  BACKSWING(SwingEvent.TAKEAWAY, 0.05, SwingEvent.TOP, -0.1),
  AROUND_TOP(SwingEvent.TOP, -0.1, SwingEvent.TOP, 0.05),
  DOWNSWING(SwingEvent.TOP, 0.05, SwingEvent.IMPACT, -0.03),
  IMPACT(SwingEvent.IMPACT, -0.03, SwingEvent.IMPACT, 0.02),
  FOLLOW_THROUGH(SwingEvent.IMPACT, 0.02, SwingEvent.FINISH, 0),
  FINISH(SwingEvent.FINISH, 0, SwingEvent.FINISH, 1.0),
  BETWEEN_SWINGS(SwingEvent.FINISH, 1.5, SwingEvent.FINISH, 3.0);

  private static final double WITHOUT_FINISH_S = 0.8;

  private final SwingEvent fromEvent;
  private final double fromS;
  private final SwingEvent toEvent;
  private final double toS;

  DropoutPhase(SwingEvent fromEvent, double fromS, SwingEvent toEvent, double toS) {
    this.fromEvent = fromEvent;
    this.fromS = fromS;
    this.toEvent = toEvent;
    this.toS = toS;
  }

  /** The instant a part (0 to 1) of the way through this phase of a swing, s. */
  double instantS(SwingResult swing, double part) {
    double from = timeS(swing, fromEvent) + fromS;
    double to = Math.max(from, timeS(swing, toEvent) + toS);
    return from + part * (to - from);
  }

  /** When a swing passed an event; a finish that was not held is put shortly after impact. */
  static double timeS(SwingResult swing, SwingEvent event) {
    Optional<EventTime> found = swing.events().stream().filter(e -> e.event() == event).findFirst();
    return found
        .map(EventTime::timeS)
        .orElseGet(
            () ->
                event == SwingEvent.FINISH
                    ? timeS(swing, SwingEvent.IMPACT) + WITHOUT_FINISH_S
                    : Double.NaN);
  }

  String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
