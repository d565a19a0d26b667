package steadyturn.ingest.sample;

/**
 * A note laid on a stretch of time: a wear step, a swing with its club, a drill repetition.
 *
 * @param onsetS start, s on the recording's common time axis
 * @param durationS length, s; 0 for an instant
 * @param trialType the word of the events file, such as {@code quiet-stance}, {@code hit}, {@code
 *     practice}
 * @param club the club, or an empty string
 * @param note free words, or an empty string
 * @param open whether only its start was noted: what it speaks of lies somewhere within
 */
public record Mark(
    double onsetS, double durationS, String trialType, String club, String note, boolean open) {

  public Mark {
    if (!(durationS >= 0)) {
      throw new IllegalArgumentException("duration must be 0 s or more, was " + durationS);
    }
  }

  /** A mark of known length. */
  public Mark(double onsetS, double durationS, String trialType, String club, String note) {
    this(onsetS, durationS, trialType, club, note, false);
  }

  /** The same on a time axis moved by {@code byS}, s. */
  public Mark shifted(double byS) {
    return new Mark(onsetS + byS, durationS, trialType, club, note, open);
  }

  /** The same, its end not known but within so long, s. */
  public Mark openFor(double withinS) {
    return new Mark(onsetS, withinS, trialType, club, note, true);
  }

  /** The same for a known stretch. */
  public Mark during(double fromS, double toS) {
    return new Mark(fromS, toS - fromS, trialType, club, note);
  }

  public double endS() {
    return onsetS + durationS;
  }
}
