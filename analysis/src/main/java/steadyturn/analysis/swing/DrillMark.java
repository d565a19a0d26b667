package steadyturn.analysis.swing;

import java.util.List;
import java.util.stream.Stream;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.sample.Mark;

/** Marks of drill repetitions: what is swung within one is no full swing. */
public final class DrillMark {

  private static final double LONGEST_REP_S = 12;

  private DrillMark() {}

  /** Those of the marks that are repetitions of a drill. */
  public static Stream<Mark> reps(List<Mark> marks) {
    return marks.stream().filter(mark -> mark.trialType().equals(MarkWord.DRILL_REP.word()));
  }

  /** When a marked repetition is over, s; one that is only an instant lasts 12 s at most. */
  public static double endS(Mark mark) {
    return mark.durationS() > 0 ? mark.endS() : mark.onsetS() + LONGEST_REP_S;
  }

  /** Whether a swing with this top is a repetition of the mark. */
  public static boolean holds(Mark mark, double topS) {
    return mark.onsetS() <= topS && topS <= endS(mark);
  }
}
