package steadyturn.cli.command.mat;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;

/** The day that a lesson is of, as its label begins: 20261130. */
final class LessonDay {

  /** So long after midnight the day before is not over (our choice), h. */
  private static final int NIGHT_H = 4;

  private LessonDay() {}

  static String today() {
    return label(now().toLocalDate());
  }

  /** Whether a lesson is of today; one that was begun before midnight goes on after it. */
  static boolean isToday(String lesson) {
    return isOfDay(lesson, now());
  }

  static boolean isOfDay(String lesson, LocalDateTime now) {
    return lesson.startsWith(label(now.toLocalDate()))
        || lesson.startsWith(label(now.minusHours(NIGHT_H).toLocalDate()));
  }

  private static LocalDateTime now() {
    return LocalDateTime.now(ZoneId.systemDefault());
  }

  private static String label(LocalDate day) {
    return day.toString().replace("-", "");
  }
}
