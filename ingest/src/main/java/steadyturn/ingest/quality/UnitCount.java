package steadyturn.ingest.quality;

import steadyturn.ingest.sample.UnitStream;

/**
 * How many samples of a unit came, were lost and reached the end of the range: figures of pieces of
 * one stream that can be put together.
 *
 * @param samples usable samples
 * @param lostSamples samples expected and not there, or there with a value missing
 * @param saturatedSamples samples with a value at the end of the range
 * @param lengthS length in which the samples came at {@code rateHz}, s
 * @param rateHz effective rate between losses
 */
public record UnitCount(
    long samples, long lostSamples, int saturatedSamples, double lengthS, double rateHz) {

  /** Counts a stream. */
  public static UnitCount of(UnitStream unit) {
    Timing timing = TimingCheck.of(unit);
    return of(unit, timing, SaturationCheck.of(unit, timing.rateHz()));
  }

  /** What was counted already when a stream was judged. */
  public static UnitCount of(UnitStream unit, UnitReport judged) {
    return of(unit, judged.timing(), judged.saturation());
  }

  private static UnitCount of(UnitStream unit, Timing timing, Saturation saturation) {
    return new UnitCount(
        timing.samples(),
        timing.lostSamples(),
        saturation.samples(),
        unit.lengthS(),
        timing.rateHz());
  }

  /** This piece and the one after it; the rate is the mean over the time. */
  public UnitCount and(UnitCount next) {
    double bothS = lengthS + next.lengthS;
    return new UnitCount(
        samples + next.samples,
        lostSamples + next.lostSamples,
        saturatedSamples + next.saturatedSamples,
        bothS,
        bothS > 0 ? (rateHz * lengthS + next.rateHz * next.lengthS) / bothS : rateHz);
  }

  /** This piece without the part it begins with, which was counted before. */
  public UnitCount without(UnitCount part) {
    double restS = lengthS - part.lengthS;
    return new UnitCount(
        samples - part.samples,
        lostSamples - part.lostSamples,
        saturatedSamples - part.saturatedSamples,
        restS,
        restS > 0 ? (rateHz * lengthS - part.rateHz * part.lengthS) / restS : rateHz);
  }

  /** Lost samples in percent of those expected. */
  public double lostPct() {
    long expected = samples + lostSamples;
    return expected == 0 ? 100 : 100.0 * lostSamples / expected;
  }
}
