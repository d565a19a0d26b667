package steadyturn.ingest.live;

import java.time.LocalDateTime;

/**
 * A note taken while recording.
 *
 * @param at time of day of its start
 * @param durationS length, s; 0 for an instant
 * @param trialType hit, practice, a wear step, drill-rep; or empty for a mere note
 * @param club the club, or empty
 * @param note free words, or empty
 */
public record LiveMark(
    LocalDateTime at, double durationS, String trialType, String club, String note) {

  public LiveMark {
    if (!(durationS >= 0)) {
      throw new IllegalArgumentException("duration must be 0 s or more, was " + durationS);
    }
  }
}
