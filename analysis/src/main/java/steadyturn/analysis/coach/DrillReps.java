package steadyturn.analysis.coach;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.ingest.sample.Mark;

/**
 * The repetitions of one drill by time, full swings and rehearsals; empty where one was marked or
 * seen and cannot be judged.
 */
record DrillReps(List<Optional<DrillRep>> inOrder) {

  /** A slow turn this close to the top of a full swing is that swing, s. */
  private static final double SAME_S = 2;

  private static final MeasureAt TURN = new MeasureAt(Measure.PELVIS_TURN, "top");

  DrillReps {
    inOrder = List.copyOf(inOrder);
  }

  static DrillReps of(
      Drill drill, List<Mark> marks, List<SwingResult> swings, List<SlowTurn> turns) {
    List<Optional<DrillRep>> all = new ArrayList<>();
    for (Mark mark : marks) {
      List<SwingResult> full = swings.stream().filter(s -> DrillScore.isRep(mark, s)).toList();
      List<SlowTurn> slow =
          turns.stream()
              .filter(t -> mark.onsetS() <= t.timeS() && t.timeS() <= DrillScore.endS(mark))
              .filter(t -> full.stream().noneMatch(s -> same(s, t)))
              .toList();
      List<Seen> seen = new ArrayList<>();
      full.forEach(s -> seen.add(new Seen(DrillScore.timeS(s), swing(drill, s))));
      slow.forEach(t -> seen.add(new Seen(t.timeS(), rehearsal(drill, t))));
      seen.sort((a, b) -> Double.compare(a.timeS, b.timeS));
      if (seen.isEmpty()) {
        all.add(Optional.empty());
      }
      // an instant marks one repetition, a stretch all within it
      seen.stream().limit(mark.durationS() > 0 ? seen.size() : 1).forEach(s -> all.add(s.rep));
    }
    return new DrillReps(all);
  }

  private record Seen(double timeS, Optional<DrillRep> rep) {}

  private static boolean same(SwingResult swing, SlowTurn turn) {
    return Math.abs(DrillScore.timeS(swing) - turn.timeS()) < SAME_S;
  }

  private static Optional<DrillRep> swing(Drill drill, SwingResult swing) {
    return swing
        .measure(drill.judgedBy().measure(), drill.judgedBy().at())
        .filter(MeasureValue::given)
        .map(v -> DrillRep.of(drill, swing.number(), DrillScore.timeS(swing), v));
  }

  /** A rehearsal shows the turn only: slide needs the rests of a full swing. */
  private static Optional<DrillRep> rehearsal(Drill drill, SlowTurn turn) {
    return drill.judgedBy().equals(TURN)
        ? Optional.of(DrillRep.of(drill, 0, turn.timeS(), turn.turn()))
        : Optional.empty();
  }
}
