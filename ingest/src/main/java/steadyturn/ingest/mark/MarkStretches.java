package steadyturn.ingest.mark;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import steadyturn.ingest.sample.Mark;

/**
 * Marks as stretches: a wear step of which only the beginning was noted reaches to the next mark, a
 * {@code done} being one. Where in it the step was done is found from the samples.
 */
public final class MarkStretches {

  /** A step that was begun and never ended is over by then (our choice), s. */
  public static final double LONGEST_STEP_S = 120;

  private MarkStretches() {}

  /** The marks by onset, each step with its stretch; what has a length keeps it. */
  public static List<Mark> of(List<Mark> marks) {
    List<Mark> sorted = new ArrayList<>(marks);
    sorted.sort(Comparator.comparingDouble(Mark::onsetS));
    List<Mark> out = new ArrayList<>();
    for (int i = 0; i < sorted.size(); i++) {
      Mark mark = sorted.get(i);
      boolean isOpen = mark.durationS() == 0 && is(mark, MarkWord::isStep);
      out.add(isOpen ? mark.openFor(lengthS(mark, sorted.subList(i + 1, sorted.size()))) : mark);
    }
    return out;
  }

  /** A note is about something; it ends nothing. */
  private static double lengthS(Mark mark, List<Mark> later) {
    double nextS =
        later.stream()
            .filter(m -> !m.trialType().isEmpty() && !is(m, MarkWord::isAbout))
            .mapToDouble(Mark::onsetS)
            .findFirst()
            .orElse(Double.POSITIVE_INFINITY);
    return Math.min(nextS - mark.onsetS(), LONGEST_STEP_S);
  }

  private static boolean is(Mark mark, Predicate<MarkWord> what) {
    return MarkWord.of(mark.trialType()).filter(what).isPresent();
  }
}
