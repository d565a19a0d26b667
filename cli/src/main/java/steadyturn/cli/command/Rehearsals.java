package steadyturn.cli.command;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import steadyturn.analysis.coach.DrillScore;
import steadyturn.analysis.coach.SlowTurn;
import steadyturn.analysis.coach.SlowTurns;
import steadyturn.ingest.recording.Session;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;

/** Reads a lesson once more for rehearsals, where drills are marked in it. */
final class Rehearsals {

  /** Two finds in overlapping pieces of a long recording lie closer than this, s. */
  private static final double SAME_S = 0.5;

  private Rehearsals() {}

  /** The slow turns within marked drills, by recording. */
  static Map<String, List<SlowTurn>> of(
      Session lesson, Lessons lessons, Map<String, List<Mark>> marks) {
    Map<String, List<SlowTurn>> found = new LinkedHashMap<>();
    boolean drilled =
        marks.values().stream()
            .flatMap(List::stream)
            .anyMatch(mark -> mark.trialType().equals(DrillScore.MARK));
    if (!drilled) {
      return found;
    }
    for (Recording recording : new LessonReading(lesson, lessons)) {
      List<SlowTurn> its = found.computeIfAbsent(recording.id(), id -> new ArrayList<>());
      for (SlowTurn turn : SlowTurns.of(recording)) {
        if (its.stream().noneMatch(other -> Math.abs(other.timeS() - turn.timeS()) < SAME_S)) {
          its.add(turn);
        }
      }
    }
    return found;
  }
}
