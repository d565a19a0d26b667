package steadyturn.ingest.live;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import steadyturn.ingest.sample.Mark;

/**
 * A note taken while recording.
 *
 * @param at time of day of its start
 * @param durationS length, s; 0 for an instant, a day at most
 * @param trialType hit, practice, a wear step, drill-rep; or empty for a mere note
 * @param club the club, or empty
 * @param note free words, or empty
 */
public record LiveMark(
    LocalDateTime at, double durationS, String trialType, String club, String note) {

  /** A mark lies no further than a day from the recording, s. */
  public static final double LONGEST_S = 86_400;

  public LiveMark {
    if (!(durationS >= 0 && durationS <= LONGEST_S)) {
      throw new IllegalArgumentException("duration must be 0 s to a day, was " + durationS);
    }
  }

  /** The same on an axis with its zero at a time of day. */
  public Mark since(LocalDateTime zero) {
    double onsetS = ChronoUnit.MICROS.between(zero, at) * 1e-6;
    return new Mark(onsetS, durationS, trialType, club, note);
  }

  /** Whether it can belong to a recording that began then. */
  boolean isNear(LocalDateTime recorderStart) {
    return Duration.between(recorderStart, at).abs().toSeconds() <= LONGEST_S;
  }
}
