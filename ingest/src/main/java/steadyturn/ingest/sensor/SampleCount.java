package steadyturn.ingest.sensor;

import java.util.Optional;

/** A sink that only counts. */
public final class SampleCount implements SampleSink {

  private long samples;
  private long skippedBytes;
  private long lostSamples;
  private Optional<UnitHello> hello = Optional.empty();

  @Override
  public void hello(UnitHello said) {
    hello = Optional.of(said);
  }

  @Override
  public void sample(
      double timeS, double ax, double ay, double az, double gx, double gy, double gz) {
    samples++;
  }

  @Override
  public void skipped(int bytes) {
    skippedBytes += bytes;
  }

  @Override
  public void lost(int count) {
    lostSamples += count;
  }

  public long samples() {
    return samples;
  }

  public long skippedBytes() {
    return skippedBytes;
  }

  public long lostSamples() {
    return lostSamples;
  }

  /** The last hello, if one came. */
  public Optional<UnitHello> hello() {
    return hello;
  }
}
