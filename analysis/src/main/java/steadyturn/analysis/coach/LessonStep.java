package steadyturn.analysis.coach;

import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.lesson.SwingResult;

/**
 * One lesson on a player's way.
 *
 * @param lesson its label; differs from lesson to lesson
 * @param date the day, or an empty string where it was not noted
 * @param swings full swings with the club looked at
 * @param advice what was said then
 */
public record LessonStep(String lesson, String date, List<SwingResult> swings, Advice advice) {

  public LessonStep {
    swings = List.copyOf(swings);
  }

  /** The drill that was given, with its goal then. */
  public Optional<Drill> given(Teaching teaching) {
    return advice.priority().stream()
        .flatMap(found -> found.drills(teaching, PlayerProgress.group(this)).stream())
        .findFirst();
  }
}
