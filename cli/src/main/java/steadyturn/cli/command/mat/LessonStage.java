package steadyturn.cli.command.mat;

import java.util.Locale;

/** Where a lesson is, in the order of its course. */
enum LessonStage {
  WHO,
  UNITS,
  TABLE,
  STRAP,
  STEPS,
  BALLS,
  DRILL,
  CLOSING;

  String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** By its word; the first where there is none such. */
  static LessonStage of(String word) {
    for (LessonStage stage : values()) {
      if (stage.word().equals(word)) {
        return stage;
      }
    }
    return WHO;
  }

  /** Whether units are recorded in it. */
  boolean isRecorded() {
    return compareTo(TABLE) >= 0 && this != CLOSING;
  }
}
