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
 * @param lateS so much later the units on skin show what the body does at that time, s
 */
public record EventTime(
    SwingEvent event, double timeS, double sdS, Grade grade, Reason why, double lateS) {

  /** Of a moment that the units show when it is. */
  public EventTime(SwingEvent event, double timeS, double sdS, Grade grade, Reason why) {
    this(event, timeS, sdS, grade, why, 0);
  }

  /** When the units show the pose that the body has at this key position, s. */
  public double shownS() {
    return timeS + lateS;
  }

  /** The same, known less well. */
  public EventTime withSdS(double otherSdS) {
    return new EventTime(event, timeS, otherSdS, grade, why, lateS);
  }

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
