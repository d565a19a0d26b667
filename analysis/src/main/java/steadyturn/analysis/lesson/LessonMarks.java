package steadyturn.analysis.lesson;

import java.util.List;
import java.util.stream.Stream;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.UnplacedMarks;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * The marks of one recording as the lesson takes them: a club named in an earlier one holds, and a
 * step that nobody ended is over before the next ball is addressed.
 */
record LessonMarks(List<Mark> all) {

  /** Stillness so soon before a takeaway is an address (our choice), s. */
  private static final double ADDRESS_S = 5;

  /** A swing with less than so much before it may not be found, s. */
  private static final double REST_BEFORE_S = 1;

  LessonMarks {
    all = List.copyOf(all);
  }

  /**
   * The marks of a recording.
   *
   * @param goesOn whether it is a later stretch of one: what began before it was read there
   * @param club the one named last before it, or empty
   * @param known swings found in earlier stretches of it: what was noted of one that cannot be
   *     found in this stretch again speaks of no other
   */
  static LessonMarks of(Recording recording, boolean goesOn, String club, List<Swing> known) {
    double firstS = recording.units().stream().mapToDouble(LessonMarks::firstS).min().orElse(0);
    List<Mark> spokenOf =
        known.stream()
            .filter(swing -> takeawayS(swing) < firstS + REST_BEFORE_S)
            .flatMap(swing -> swing.noted().stream())
            .toList();
    Stream<Mark> own =
        recording.marks().stream()
            .filter(m -> !goesOn || !m.open() || m.onsetS() >= firstS)
            .filter(m -> !UnplacedMarks.isAmong(m, spokenOf));
    Stream<Mark> before =
        club.isEmpty()
            ? Stream.of()
            : Stream.of(new Mark(Double.NEGATIVE_INFINITY, 0, MarkWord.CLUB.word(), club, ""));
    return new LessonMarks(Stream.concat(before, own).toList());
  }

  private static double firstS(UnitStream unit) {
    return unit.size() == 0 ? Double.POSITIVE_INFINITY : unit.timeS(0);
  }

  boolean isOpen() {
    return all.stream().anyMatch(Mark::open);
  }

  /** With open steps cut off where the first swing after their beginning is addressed. */
  LessonMarks before(List<Swing> swings) {
    return new LessonMarks(all.stream().map(m -> m.open() ? before(m, swings) : m).toList());
  }

  private static Mark before(Mark mark, List<Swing> swings) {
    double untilS =
        swings.stream()
            .mapToDouble(LessonMarks::takeawayS)
            .filter(t -> t > mark.onsetS())
            .map(t -> Math.max(mark.onsetS(), t - ADDRESS_S))
            .min()
            .orElse(Double.POSITIVE_INFINITY);
    return mark.openFor(Math.min(mark.durationS(), untilS - mark.onsetS()));
  }

  static double takeawayS(Swing swing) {
    return swing.timeS(SwingEvent.TAKEAWAY).orElse(swing.startS());
  }

  /** The club that holds when the recording is over, or empty. */
  String clubAfter(List<Swing> swings) {
    double lastS =
        swings.isEmpty() ? Double.NEGATIVE_INFINITY : takeawayS(swings.get(swings.size() - 1));
    String last = swings.isEmpty() ? "" : swings.get(swings.size() - 1).club();
    return all.stream()
        .filter(m -> m.trialType().equals(MarkWord.CLUB.word()) && m.onsetS() >= lastS)
        .reduce((one, later) -> later)
        .map(Mark::club)
        .orElse(last);
  }
}
