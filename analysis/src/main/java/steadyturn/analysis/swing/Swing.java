package steadyturn.analysis.swing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.sample.Mark;

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
 * @param noted the marks that speak of it: what gives its kind, then notes
 */
public record Swing(
    int number,
    SwingKind kind,
    String club,
    double startS,
    double endS,
    List<EventTime> events,
    List<String> flags,
    List<Mark> noted) {

  /** What kind and shock have to say of one another. */
  /** Flag of a swing that was noted not to count: the word of its mark. */
  public static final String LEFT_OUT = MarkWord.LEFT_OUT.word();

  private static final Set<String> OF_KIND = Set.of("no-shock", "shock-in-practice", LEFT_OUT);

  public Swing {
    noted = List.copyOf(noted);
    events = List.copyOf(events);
    flags = List.copyOf(flags);
    if (!(endS > startS)) {
      throw new IllegalArgumentException(
          "swing " + number + " ends at " + endS + " s, before its start " + startS);
    }
  }

  /** A swing of which nothing was noted. */
  public Swing(
      int number,
      SwingKind kind,
      String club,
      double startS,
      double endS,
      List<EventTime> events,
      List<String> flags) {
    this(number, kind, club, startS, endS, events, flags, List.of());
  }

  public Optional<EventTime> event(SwingEvent event) {
    return EventTime.of(event, events);
  }

  /** The instant of an event, s, where it was found. */
  public Optional<Double> timeS(SwingEvent event) {
    return EventTime.timeS(event, events);
  }

  /** The words that were noted of it, or an empty string. */
  public String note() {
    return noted.stream()
        .map(Mark::note)
        .filter(words -> !words.isBlank())
        .collect(Collectors.joining("; "));
  }

  /** The same swing, with what was noted of it by the time it was found once more. */
  public Swing noted(Swing again) {
    if (again.noted.isEmpty()) {
      return this;
    }
    List<String> all = new ArrayList<>(flags);
    all.removeIf(OF_KIND::contains);
    again.flags.stream().filter(OF_KIND::contains).forEach(all::add);
    boolean isNamed = again.noted.stream().anyMatch(mark -> !mark.club().isEmpty());
    String itsClub = isNamed ? again.club : club;
    return new Swing(number, again.kind, itsClub, startS, endS, events, all, again.noted);
  }

  /** The same swing with other times. */
  public Swing with(List<EventTime> otherEvents) {
    return new Swing(number, kind, club, startS, endS, otherEvents, flags, noted);
  }
}
