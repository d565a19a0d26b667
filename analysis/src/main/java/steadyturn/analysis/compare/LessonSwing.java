package steadyturn.analysis.compare;

import steadyturn.analysis.lesson.SwingResult;

/**
 * A swing with the lesson it belongs to. Swings of one lesson share the wearing of the units, and
 * with it most of the measuring error.
 *
 * @param lesson any label that is the same for swings of one lesson and differs between lessons
 * @param ball its place among the swings of the lesson, over all recordings
 */
public record LessonSwing(String lesson, SwingResult swing, int ball) {

  /** A swing of a lesson with one recording, whose number is its place. */
  public LessonSwing(String lesson, SwingResult swing) {
    this(lesson, swing, swing.number());
  }
}
