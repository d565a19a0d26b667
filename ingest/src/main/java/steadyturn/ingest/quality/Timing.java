package steadyturn.ingest.quality;

import java.util.List;

/**
 * How regularly the samples came.
 *
 * @param samples usable samples: all six values present
 * @param rateHz effective rate between losses, 0 when there are fewer than two samples
 * @param jitterS standard deviation of the time stamps about an even beat, s
 * @param lostSamples samples expected and not there, or there with a value missing
 * @param gaps the losses of five samples or more in a row, in order of time
 */
public record Timing(int samples, double rateHz, double jitterS, long lostSamples, List<Gap> gaps) {

  public Timing {
    gaps = List.copyOf(gaps);
  }

  /** Lost samples in percent of those expected. */
  public double lostPct() {
    long expected = samples + lostSamples;
    return expected == 0 ? 100 : 100.0 * lostSamples / expected;
  }

  /** Percent of the samples lost outside gaps longer than this: by a weak link, not by a pause. */
  public double scatteredLossPct(double longerThanS) {
    long inGaps =
        gaps.stream().filter(g -> g.durationS() > longerThanS).mapToLong(Gap::lostSamples).sum();
    long scattered = Math.max(0, lostSamples - inGaps);
    return samples + scattered == 0 ? 100 : 100.0 * scattered / (samples + scattered);
  }

  /** Length of the longest gap, s; 0 when there is none. */
  public double longestGapS() {
    return gaps.stream().mapToDouble(Gap::durationS).max().orElse(0);
  }
}
