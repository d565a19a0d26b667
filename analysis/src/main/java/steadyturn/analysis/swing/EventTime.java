package steadyturn.analysis.swing;

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

  public EventTime {
    if (!(sdS >= 0)) {
      throw new IllegalArgumentException(event.word() + ": spread must be 0 s or more, was " + sdS);
    }
  }
}
