package steadyturn.analysis.live;

import java.util.List;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.lesson.SwingResult;

/** Hears what happens in a lesson, by one thread, in order; a slow one delays the next answer. */
public interface LiveEvents {

  /**
   * A swing was measured, right after it.
   *
   * @param afterS from the arrival of the sample that showed the finish held to this call, s
   */
  void measured(SwingResult swing, double afterS);

  /** The latest swings as they are known now that more of the lesson was seen. */
  default void revised(List<SwingResult> latest) {}

  /** Something about a unit that a person should know. */
  void noticed(Notice notice);
}
