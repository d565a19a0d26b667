package steadyturn.analysis.swing;

import java.util.List;
import java.util.Optional;

/**
 * One full swing found in a recording.
 *
 * @param number 1 for the first of the recording
 * @param kind hit or practice, from the shock or from the mark that overlaps it
 * @param club from the mark that overlaps it, else an empty string
 * @param startS start of the stretch to analyse: the latest of the recording's start, the end of
 *     the swing before and 3 s before the takeaway
 * @param endS end of that stretch: the earliest of the recording's end, the takeaway of the next
 *     swing and 4 s after impact
 * @param events the key positions that could be found, in order of {@link SwingEvent}
 * @param flags what a reader must know, such as {@code address-not-still}; see docs/measures.md
 */
public record Swing(
    int number,
    SwingKind kind,
    String club,
    double startS,
    double endS,
    List<EventTime> events,
    List<String> flags) {

  public Swing {
    events = List.copyOf(events);
    flags = List.copyOf(flags);
    if (!(endS > startS)) {
      throw new IllegalArgumentException(
          "swing " + number + " ends at " + endS + " s, before its start " + startS);
    }
  }

  public Optional<EventTime> event(SwingEvent event) {
    return EventTime.of(event, events);
  }

  /** The instant of an event, s, where it was found. */
  public Optional<Double> timeS(SwingEvent event) {
    return EventTime.timeS(event, events);
  }

  /** The same swing with the club and kind of another. */
  public Swing named(Swing noted) {
    return new Swing(number, noted.kind, noted.club, startS, endS, events, flags);
  }

  /** The same swing with other times. */
  public Swing with(List<EventTime> otherEvents) {
    return new Swing(number, kind, club, startS, endS, otherEvents, flags);
  }
}
