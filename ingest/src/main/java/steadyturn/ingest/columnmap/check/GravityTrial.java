package steadyturn.ingest.columnmap.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Asks motion which guess at the gyroscope's axes is right. Over eight seconds the gyroscope
 * carries the accelerometer's readings into the axes of the first instant; in four parts of two
 * seconds each their means must then all show gravity, as a wearer's own accelerations average out
 * over two seconds. The wrong axes, signs or units scatter the four means.
 *
 * <p>Our own test. Tried on 15 open recordings that turn enough, each with nine mistakes (every
 * sign, both units, two gyroscope axes exchanged): no right map was doubted, 133 of 135 wrong ones
 * were refused, all with the right hint. The two it missed turn the sign of an axis that hardly
 * mattered in those recordings.
 */
final class GravityTrial {

  private static final double WINDOW_S = 8;
  private static final int PARTS = 4;
  private static final int MOST_WINDOWS = 24;
  private static final int FEWEST_WINDOWS = 5;

  private final EvenSamples samples;
  private final QuietParts quiet;
  private final int count;
  private final List<Integer> windows;
  private final Map<Double, List<WindowTurns>> turnsByScale = new HashMap<>();

  GravityTrial(EvenSamples samples, QuietParts quiet) {
    this.samples = samples;
    this.quiet = quiet;
    count = PARTS * (int) Math.round(WINDOW_S / PARTS / samples.stepS());
    windows = busiest();
  }

  /** The windows with the most turning, by the gyroscope's own measure. */
  private List<Integer> busiest() {
    List<Integer> found = new ArrayList<>();
    for (int from = 0; from + count <= samples.size(); from += count / 2) {
      if (samples.isWhole(from, count)) {
        found.add(from);
      }
    }
    found.sort(Comparator.comparingDouble((Integer from) -> -turning(from)));
    return found.subList(0, Math.min(MOST_WINDOWS, found.size()));
  }

  private double turning(int from) {
    double sum = 0;
    for (int c = 3; c < 6; c++) {
      for (int i = from; i < from + count; i++) {
        sum += Math.abs(samples.values()[c][i] - quiet.biasRadPerS()[c - 3]);
      }
    }
    return sum;
  }

  boolean hasEnough() {
    return windows.size() >= FEWEST_WINDOWS;
  }

  /** Mean scatter of gravity, (parts of g)^2, under a guess. */
  double scatter(AxisGuess guess) {
    List<WindowTurns> turns =
        turnsByScale.computeIfAbsent(
            guess.scale(),
            scale ->
                windows.stream()
                    .map(w -> WindowTurns.of(samples, quiet.biasRadPerS(), w, count, scale))
                    .toList());
    double sum = 0;
    for (int w = 0; w < windows.size(); w++) {
      sum += scatter(windows.get(w), turns.get(w), guess);
    }
    return sum / windows.size();
  }

  /** The scatter when the gyroscope is not believed at all: how much gravity turned. */
  double scatterUnturned() {
    return scatter(new AxisGuess(List.of(0, 1, 2), List.of(1, 1, 1), 0));
  }

  private double scatter(int from, WindowTurns turns, AxisGuess guess) {
    CarriedAxes axes = new CarriedAxes();
    double[][] v = samples.values();
    double[] x = turns.direction()[guess.from().get(0)];
    double[] y = turns.direction()[guess.from().get(1)];
    double[] z = turns.direction()[guess.from().get(2)];
    int signX = guess.sign().get(0);
    int signY = guess.sign().get(1);
    int signZ = guess.sign().get(2);
    double[][] sums = new double[PARTS][3];
    int partLength = count / PARTS;
    for (int i = 0; i < count; i++) {
      axes.add(v[0][from + i], v[1][from + i], v[2][from + i], sums[i / partLength]);
      axes.turn(signX * x[i], signY * y[i], signZ * z[i], turns.sin()[i], turns.cos()[i]);
    }
    return spread(sums) / Math.pow(partLength * quiet.gravity(), 2);
  }

  private static double spread(double[][] sums) {
    double spread = 0;
    for (int axis = 0; axis < 3; axis++) {
      double mean = 0;
      double square = 0;
      for (double[] sum : sums) {
        mean += sum[axis] / sums.length;
        square += sum[axis] * sum[axis] / sums.length;
      }
      spread += square - mean * mean;
    }
    return spread;
  }
}
