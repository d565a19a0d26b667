package steadyturn.ingest.quality;

/**
 * A stretch without samples.
 *
 * @param fromS the last sample before it, s on the stream's time axis
 * @param toS the first sample after it, s
 * @param lostSamples how many samples were expected in between
 */
public record Gap(double fromS, double toS, int lostSamples) {

  public Gap {
    if (!(toS > fromS)) {
      throw new IllegalArgumentException("a gap must end after " + fromS + " s, ends at " + toS);
    }
  }

  public double durationS() {
    return toS - fromS;
  }
}
