package steadyturn.cli.lesson;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import steadyturn.analysis.coach.drill.HalfSwings;
import steadyturn.analysis.coach.drill.Rehearsal;
import steadyturn.analysis.coach.drill.SlowTurns;
import steadyturn.analysis.reading.LessonReading;
import steadyturn.analysis.reading.ReadingWatch;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;

/** Reads a lesson once more for rehearsals, where drills are marked in it. */
public final class Rehearsals {

  /** Two finds in overlapping pieces of a long recording lie closer than this, s. */
  private static final double SAME_S = 0.5;

  private Rehearsals() {}

  /** The slow turns and half swings within marked drills, by recording. */
  public static Map<String, List<Rehearsal>> of(
      Session lesson, ReadingWatch watch, Map<String, List<Mark>> marks) {
    Map<String, List<Rehearsal>> found = new LinkedHashMap<>();
    boolean drilled =
        marks.values().stream()
            .flatMap(List::stream)
            .anyMatch(mark -> mark.trialType().equals(MarkWord.DRILL_REP.word()));
    if (!drilled) {
      return found;
    }
    HalfSwings halfSwings = new HalfSwings();
    for (Recording recording : new LessonReading(lesson, new ReadingNotes(watch, false))) {
      List<Rehearsal> its = found.computeIfAbsent(recording.id(), id -> new ArrayList<>());
      List<Rehearsal> here = Rehearsal.together(SlowTurns.of(recording), halfSwings.of(recording));
      for (Rehearsal each : here) {
        if (its.stream().noneMatch(other -> Math.abs(other.timeS() - each.timeS()) < SAME_S)) {
          its.add(each);
        }
      }
    }
    return found;
  }
}
