package steadyturn.analysis.swing;

import java.util.ArrayList;
import java.util.List;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Mark;

/** The marks of a recording that speak of a swing, near which none was found so far. */
public final class UnplacedMarks {

  /** A mark farther from every swing speaks of none (our choice), s. */
  public static final double WITHIN_S = 15;

  /** The same mark on the axes of two pieces of a recording, s. */
  private static final double SAME_S = 0.2;

  private final List<Mark> marks = new ArrayList<>();
  private final List<Mark> told = new ArrayList<>();

  /** Takes a piece of the recording, with all swings known of the recording by then. */
  public void read(List<Mark> noted, List<Swing> known) {
    marks.removeIf(mark -> isPlaced(mark, known));
    noted.stream()
        .filter(mark -> isOfSwing(mark) || isAbout(mark))
        .filter(mark -> !isPlaced(mark, known))
        .filter(mark -> !isAmong(mark, marks) && !isAmong(mark, told))
        .forEach(marks::add);
  }

  /** What is to be said of those no swing can come near any more, said once. */
  public List<Reason> take(double seenToS) {
    List<Mark> over = marks.stream().filter(m -> m.endS() + WITHIN_S < seenToS).toList();
    marks.removeAll(over);
    told.addAll(over);
    return over.stream()
        .map(
            m ->
                m.trialType().equals(MarkWord.NOTE.word())
                    ? Reason.of(MarkReason.NOTE, m.note(), m.onsetS())
                    : Reason.of(MarkReason.FAR, m.trialType(), m.onsetS()))
        .toList();
  }

  /** Whether a mark gives a swing its kind. */
  public static boolean isOfSwing(Mark mark) {
    return mark.trialType().equals(MarkWord.HIT.word())
        || mark.trialType().equals(MarkWord.PRACTICE.word());
  }

  /** Words about a swing, or that it is left out; several may be of one. */
  public static boolean isAbout(Mark mark) {
    return MarkWord.of(mark.trialType()).filter(MarkWord::isAbout).isPresent();
  }

  /** Whether it is one of these, noted in another piece of the recording. */
  public static boolean isAmong(Mark mark, List<Mark> others) {
    return others.stream().anyMatch(other -> isSame(mark, other));
  }

  private static boolean isSame(Mark one, Mark other) {
    return one.trialType().equals(other.trialType())
        && Math.abs(one.onsetS() - other.onsetS()) < SAME_S;
  }

  private static boolean isPlaced(Mark mark, List<Swing> known) {
    return known.stream().anyMatch(swing -> isAmong(mark, swing.noted()) || isNear(mark, swing));
  }

  private static boolean isNear(Mark mark, Swing swing) {
    double fromS = swing.timeS(SwingEvent.TAKEAWAY).orElse(swing.startS());
    double toS = swing.timeS(SwingEvent.FINISH).orElse(swing.endS());
    return mark.endS() >= fromS - WITHIN_S && mark.onsetS() <= toS + WITHIN_S;
  }
}
