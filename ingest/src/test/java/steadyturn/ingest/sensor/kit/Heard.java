package steadyturn.ingest.sensor.kit;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.Supplier;
import steadyturn.ingest.sensor.AdapterFeed;
import steadyturn.ingest.sensor.KeptSamples;
import steadyturn.ingest.sensor.SensorAdapter;

/** What an adapter made of some bytes, with the means over it that the promises need. */
final class Heard {

  final List<double[]> samples;
  final long skippedBytes;
  final KeptSamples kept;

  private Heard(KeptSamples kept) {
    this.kept = kept;
    samples = kept.samples;
    skippedBytes = kept.skippedBytes;
  }

  static Heard inOneBlock(SensorAdapter adapter, byte[] bytes) {
    return inBlocks(adapter, bytes, Math.max(1, bytes.length));
  }

  static Heard inBlocks(SensorAdapter adapter, byte[] bytes, int blockBytes) {
    KeptSamples kept = new KeptSamples();
    AdapterFeed feed = new AdapterFeed(adapter, kept);
    for (int from = 0; from < bytes.length; from += blockBytes) {
      byte[] block = Arrays.copyOfRange(bytes, from, Math.min(bytes.length, from + blockBytes));
      feed.feed(block, block.length);
    }
    return new Heard(kept);
  }

  static Heard inRandomBlocks(SensorAdapter adapter, byte[] bytes, Random random) {
    KeptSamples kept = new KeptSamples();
    AdapterFeed feed = new AdapterFeed(adapter, kept);
    int from = 0;
    while (from < bytes.length) {
      int to = Math.min(bytes.length, from + 1 + random.nextInt(90));
      byte[] block = Arrays.copyOfRange(bytes, from, to);
      feed.feed(block, block.length);
      from = to;
    }
    return new Heard(kept);
  }

  /** Bytes a sample takes, counted from the first that comes: before it some are not believed. */
  static int bytesASample(Supplier<SensorAdapter> adapters, byte[] bytes) {
    int tooFew = 0;
    int enough = bytes.length;
    while (enough - tooFew > 1) {
      int n = (tooFew + enough) / 2;
      boolean isMute = inOneBlock(adapters.get(), Arrays.copyOf(bytes, n)).samples.isEmpty();
      tooFew = isMute ? n : tooFew;
      enough = isMute ? enough : n;
    }
    int first = inOneBlock(adapters.get(), Arrays.copyOf(bytes, enough)).samples.size();
    int others = inOneBlock(adapters.get(), bytes).samples.size() - first;
    return (bytes.length - enough) / Math.max(1, others);
  }

  /** The same with times by the rate where the unit has no clock. */
  Heard timed(double rateHz) {
    for (int i = 0; i < samples.size(); i++) {
      double[] sample = samples.get(i);
      sample[0] = Double.isNaN(sample[0]) ? i / rateHz : sample[0];
    }
    return this;
  }

  boolean hasClock() {
    return samples.stream().noneMatch(s -> Double.isNaN(s[0]));
  }

  /** Mean of column 1..6 (acceleration x y z, rate x y z). */
  double mean(int column) {
    return samples.stream().mapToDouble(s -> s[column]).average().orElse(Double.NaN);
  }

  double accelNorm() {
    return Math.sqrt(mean(1) * mean(1) + mean(2) * mean(2) + mean(3) * mean(3));
  }

  /** Integral of a rate over time, its mean at the quiet start taken out, in degrees. */
  double turnDeg(int column) {
    double biasRadPerS =
        samples.stream().limit(samples.size() / 10).mapToDouble(s -> s[column]).average().orElse(0);
    double sum = 0;
    for (int i = 1; i < samples.size(); i++) {
      double stepS = samples.get(i)[0] - samples.get(i - 1)[0];
      sum += stepS * (samples.get(i)[column] - biasRadPerS);
    }
    return Math.toDegrees(sum);
  }

  double medianStepS() {
    double[] steps = new double[Math.max(1, samples.size() - 1)];
    for (int i = 1; i < samples.size(); i++) {
      steps[i - 1] = samples.get(i)[0] - samples.get(i - 1)[0];
    }
    Arrays.sort(steps);
    return steps[steps.length / 2];
  }

  /** True when the samples are the same, value by value. */
  boolean isSameAs(Heard other) {
    return samples.size() == other.samples.size() && isFirstPartOf(other);
  }

  boolean isFirstPartOf(Heard other) {
    return matches(other, 0);
  }

  boolean isLastPartOf(Heard other) {
    return matches(other, other.samples.size() - samples.size());
  }

  private boolean matches(Heard other, int from) {
    if (from < 0 || samples.size() + from > other.samples.size()) {
      return false;
    }
    for (int i = 0; i < samples.size(); i++) {
      if (!Arrays.equals(values(samples.get(i)), values(other.samples.get(i + from)))) {
        return false;
      }
    }
    return true;
  }

  /** A sample without its time, which a reader that joined later may count from elsewhere. */
  static double[] values(double[] sample) {
    return Arrays.copyOfRange(sample, 1, 7);
  }
}
