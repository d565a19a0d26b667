package steadyturn.analysis.lesson;

import steadyturn.ingest.reason.Reason;

/**
 * What a reader must know of a whole recording.
 *
 * @param about the tracked point of the unit, or the word of the wear step, that it is said of;
 *     empty where it is said of the lesson
 * @param refuses whether something was refused for it: a unit, a size, the side
 */
public record Notice(String about, Reason reason, boolean refuses) {

  /** A remark that refuses nothing. */
  public Notice(String about, Reason reason) {
    this(about, reason, false);
  }
}
