package steadyturn.analysis.lab;

/** What a family's player does in every swing of a lesson, beside what all players do. */
public enum Habit {
  /** A finish that is held but never comes to rest. */
  WANDERING_FINISH,
  /** Small steps at address, at times a forward press. */
  RESTLESS_ADDRESS,
  /** A last waggle that runs into the takeaway. */
  RUNNING_WAGGLE,
  /** A wait at the top. */
  PAUSE_AT_TOP
}
