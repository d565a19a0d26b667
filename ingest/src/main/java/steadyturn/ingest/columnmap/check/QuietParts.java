package steadyturn.ingest.columnmap.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import steadyturn.ingest.sample.Averages;

/**
 * The quietest tenth of a recording, in parts of half a second, found without trusting any unit:
 * quiet is where the accelerometer's spread is small against its own mean.
 *
 * @param gravity median size of the mean acceleration, in what the map takes for m/s^2
 * @param still whether the parts hold still enough for a bias to be read off
 * @param biasRadPerS median rate about each axis, in what the map takes for rad/s; zero when the
 *     parts are not still
 */
record QuietParts(double gravity, boolean still, double[] biasRadPerS) {

  private static final double PART_S = 0.5;
  private static final int ONE_IN = 10;

  /** A spread above this against the mean is movement, not quiet: our choice, seen on walkers. */
  private static final double LARGEST_SPREAD = 0.05;

  /** Below this a part counts as still: our choice; a person standing shows 0.005. */
  private static final double STILL_SPREAD = 0.015;

  /** Finds them; empty when nothing in the recording is quiet. */
  static List<QuietParts> in(EvenSamples samples) {
    int count = Math.max(2, (int) Math.round(PART_S / samples.stepS()));
    List<Part> parts = new ArrayList<>();
    for (int from = 0; from + count <= samples.size(); from += count) {
      if (samples.isWhole(from, count)) {
        parts.add(Part.of(samples, from, count));
      }
    }
    parts.sort(Comparator.comparingDouble(Part::spread));
    List<Part> quiet =
        parts.subList(0, Math.min(parts.size(), Math.max(1, parts.size() / ONE_IN))).stream()
            .filter(p -> p.spread() < LARGEST_SPREAD)
            .toList();
    return quiet.isEmpty() ? List.of() : List.of(of(quiet));
  }

  private static QuietParts of(List<Part> quiet) {
    boolean still = quiet.get(quiet.size() - 1).spread() < STILL_SPREAD;
    double[] biasRadPerS = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      int a = axis;
      biasRadPerS[axis] =
          still ? Averages.median(quiet.stream().mapToDouble(p -> p.rate()[a]).toArray()) : 0;
    }
    return new QuietParts(
        Averages.median(quiet.stream().mapToDouble(Part::size).toArray()), still, biasRadPerS);
  }

  double biasSizeRadPerS() {
    return Math.sqrt(Arrays.stream(biasRadPerS).map(b -> b * b).sum());
  }

  /** Half a second: its mean acceleration's size, its relative spread, its mean rate. */
  private record Part(double size, double spread, double[] rate) {

    static Part of(EvenSamples samples, int from, int count) {
      double x = samples.mean(0, from, count);
      double y = samples.mean(1, from, count);
      double z = samples.mean(2, from, count);
      double size = Math.sqrt(x * x + y * y + z * z);
      double[] rate = {
        samples.mean(3, from, count), samples.mean(4, from, count), samples.mean(5, from, count)
      };
      return new Part(size, samples.spread(0, from, count) / size, rate);
    }
  }
}
