package steadyturn.ingest.clock;

/**
 * How a unit's clock lies against the reference clock: reference = t + offset + skew x t.
 *
 * @param offsetS to add at time 0, s
 * @param skewPpm how much too slow the unit's clock runs, millionths
 * @param centreS where the offset is best known, s
 * @param sdS standard deviation of a time brought to the reference at centreS, s
 * @param skewSdPpm standard deviation of the skew, millionths
 * @param pairs common events that the fit rests on; 0 when only the start times are known
 */
public record ClockFit(
    double offsetS, double skewPpm, double centreS, double sdS, double skewSdPpm, int pairs) {

  private static final double PPM = 1e-6;

  public ClockFit {
    if (!(sdS >= 0) || !(skewSdPpm >= 0)) {
      throw new IllegalArgumentException(
          "spreads must be 0 or more, were " + sdS + ", " + skewSdPpm);
    }
  }

  /** The reference clock against itself. */
  public static ClockFit reference() {
    return new ClockFit(0, 0, 0, 0, 0, 0);
  }

  /** A time of the unit's clock on the reference clock, s. */
  public double toReferenceS(double timeS) {
    return timeS + correctionS(timeS);
  }

  /** What is added to a time of the unit's clock, s. */
  public double correctionS(double timeS) {
    return offsetS + skewPpm * PPM * timeS;
  }

  /** Standard deviation of {@link #toReferenceS} at this time, s: grows away from the pairs. */
  public double sdAtS(double timeS) {
    return Math.hypot(sdS, skewSdPpm * PPM * (timeS - centreS));
  }

  /** This clock carried through another's fit; the spreads add as independent ones. */
  public ClockFit then(ClockFit next) {
    if (next.equals(reference())) {
      return this;
    }
    double bothSdS = Math.hypot(sdS, next.sdAtS(centreS));
    return new ClockFit(
        offsetS + next.correctionS(offsetS),
        skewPpm + next.skewPpm + skewPpm * next.skewPpm * PPM,
        centreS,
        bothSdS,
        Math.hypot(skewSdPpm, next.skewSdPpm),
        Math.min(pairs, next.pairs));
  }
}
