package steadyturn.analysis.lesson;

import java.util.List;
import steadyturn.ingest.sample.Player;

/**
 * The result of one recording, as the output contract prints it.
 *
 * @param aim {@code square-hips} or {@code aim-step}
 * @param notices what holds for all swings and a person should read, each a reason
 */
public record LessonResult(
    String recording,
    Player player,
    String aim,
    List<UnitResult> units,
    List<SwingResult> swings,
    List<Notice> notices) {

  public LessonResult {
    units = List.copyOf(units);
    swings = List.copyOf(swings);
    notices = List.copyOf(notices);
  }

  /** Whether nothing was refused: every unit, size and side could be as given. */
  public boolean isSound() {
    return notices.stream().noneMatch(Notice::refuses);
  }
}
