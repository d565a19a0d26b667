package steadyturn.analysis.lesson;

import java.util.List;
import java.util.Optional;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;

/**
 * Everything found about one swing.
 *
 * @param note words that were noted of it, or empty
 */
public record SwingResult(
    int number,
    String club,
    SwingKind kind,
    List<String> flags,
    List<EventTime> events,
    List<MeasureValue> measures,
    List<Curve> curves,
    String note) {

  public SwingResult {
    flags = List.copyOf(flags);
    events = List.copyOf(events);
    measures = List.copyOf(measures);
    curves = List.copyOf(curves);
  }

  /** A swing of which nothing was noted. */
  public SwingResult(
      int number,
      String club,
      SwingKind kind,
      List<String> flags,
      List<EventTime> events,
      List<MeasureValue> measures,
      List<Curve> curves) {
    this(number, club, kind, flags, events, measures, curves, "");
  }

  /** Whether it counts as one of the player's; a swing that was left out keeps its values. */
  public boolean counts() {
    return !flags.contains(Swing.LEFT_OUT);
  }

  /** When the swing reached a key position, s; NaN where it was not found. */
  public double timeS(SwingEvent event) {
    return EventTime.timeS(event, events).orElse(Double.NaN);
  }

  /**
   * The value of a measure at a key position, by the words of the contract ({@code ""} for the
   * whole swing).
   */
  public Optional<MeasureValue> measure(Measure measure, String at) {
    for (MeasureValue value : measures) { // asked a thousand times for one lesson
      if (value.measure() == measure && value.at().equals(at)) {
        return Optional.of(value);
      }
    }
    return Optional.empty();
  }
}
