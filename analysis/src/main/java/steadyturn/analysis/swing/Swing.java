package steadyturn.analysis.swing;

import java.util.List;
import java.util.Optional;

/**
 * One full swing found in a recording.
 *
 * @param number 1 for the first of the recording
 * @param kind hit or practice, from the shock or from the mark that overlaps it
 * @param club from the mark that overlaps it, else an empty string
 * @param startS start of the stretch to analyse: in the stillness before the takeaway, or 1.5 s
 *     before it where there is none
 * @param endS end of that stretch: in the stillness of the finish, or 2.5 s after impact where
 *     there is none
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
    return events.stream().filter(e -> e.event() == event).findFirst();
  }
}
