package steadyturn.analysis.coach.drill;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.DrillMark;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.sample.Mark;

/**
 * The repetitions of one drill by time, full swings and rehearsals; empty where one was marked or
 * seen and cannot be judged.
 */
final class DrillReps {

  private static final double SAME_S = 2;

  private DrillReps() {}

  static List<Optional<DrillRep>> of(
      Drill drill, List<Mark> marks, List<SwingResult> swings, List<Rehearsal> rehearsals) {
    List<Optional<DrillRep>> all = new ArrayList<>();
    for (Mark mark : marks) {
      List<SwingResult> full =
          swings.stream().filter(s -> DrillMark.holds(mark, s.timeS(SwingEvent.TOP))).toList();
      List<Rehearsal> without =
          rehearsals.stream()
              .filter(t -> mark.onsetS() <= t.timeS() && t.timeS() <= DrillMark.endS(mark))
              .filter(t -> full.stream().noneMatch(s -> same(s, t)))
              .toList();
      List<Seen> seen = new ArrayList<>();
      full.forEach(s -> seen.add(new Seen(s.timeS(SwingEvent.TOP), swing(drill, s))));
      without.forEach(t -> seen.add(new Seen(t.timeS(), rehearsal(drill, t))));
      seen.sort((a, b) -> Double.compare(a.timeS, b.timeS));
      if (seen.isEmpty()) {
        all.add(Optional.empty());
      }
      // an instant marks one repetition, a stretch all within it
      seen.stream().limit(mark.durationS() > 0 ? seen.size() : 1).forEach(s -> all.add(s.rep));
    }
    return all;
  }

  private record Seen(double timeS, Optional<DrillRep> rep) {}

  private static boolean same(SwingResult swing, Rehearsal other) {
    return Math.abs(swing.timeS(SwingEvent.TOP) - other.timeS()) < SAME_S;
  }

  private static Optional<DrillRep> swing(Drill drill, SwingResult swing) {
    return drill
        .judgedBy()
        .in(swing)
        .filter(MeasureValue::given)
        .map(v -> DrillRep.of(drill, swing.number(), swing.timeS(SwingEvent.TOP), v));
  }

  private static Optional<DrillRep> rehearsal(Drill drill, Rehearsal rehearsal) {
    return rehearsal
        .measure(drill.judgedBy())
        .map(value -> DrillRep.of(drill, 0, rehearsal.timeS(), value));
  }
}
