package steadyturn.analysis.swing;

import java.util.List;
import java.util.Optional;
import steadyturn.analysis.measure.Grade;
import steadyturn.ingest.reason.Reason;

/**
 * When a key position was reached.
 *
 * @param timeS s on the recording's common axis
 * @param sdS standard deviation of that time, s
 * @param grade measured, or estimated where a unit that sees it is missing
 * @param why caveat of an estimated time, else none
 */
public record EventTime(SwingEvent event, double timeS, double sdS, Grade grade, Reason why) {

  /** The time of one event among those of a swing. */
  public static Optional<EventTime> of(SwingEvent event, List<EventTime> events) {
    return events.stream().filter(e -> e.event() == event).findFirst();
  }

  /** The instant of an event, s, where it was found. */
  public static Optional<Double> timeS(SwingEvent event, List<EventTime> events) {
    return of(event, events).map(EventTime::timeS);
  }

  public EventTime {
    if (!(sdS >= 0)) {
      throw new IllegalArgumentException(event.word() + ": spread must be 0 s or more, was " + sdS);
    }
  }
}
