package steadyturn.ingest.quality;

import java.util.Arrays;
import java.util.List;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.StandardGravity;
import steadyturn.ingest.sample.UnitStream;

/**
 * How much a unit moved in each bin of time: mean squares of the rate and of the acceleration's
 * distance from gravity. Bin k reaches from k to k+1 bin lengths on the recording's time axis, the
 * same for all units; a bin without a whole sample, or in a wear step, holds NaN.
 */
final class Activity {

  /** Short enough to see a downswing, long enough to hold a sample at 25 Hz, s. */
  static final double BIN_S = 0.05;

  private final BodyPoint point;
  private final int firstBin;
  private final double[] gyroSquare;
  private final double[] accelSquare;
  private final double wildestMps2;

  private Activity(
      BodyPoint point,
      int firstBin,
      double[] gyroSquare,
      double[] accelSquare,
      double wildestMps2) {
    this.wildestMps2 = wildestMps2;
    this.point = point;
    this.firstBin = firstBin;
    this.gyroSquare = gyroSquare;
    this.accelSquare = accelSquare;
  }

  /**
   * Of one unit.
   *
   * @param marks of which the wear steps are left out: in a bow the trunk moves and the arm hangs
   */
  static Activity of(UnitStream unit, List<Mark> marks) {
    int first = unit.size() == 0 ? 0 : bin(unit.timeS(0));
    int bins = unit.size() == 0 ? 0 : bin(unit.timeS(unit.size() - 1)) - first + 1;
    double[] gyro = new double[bins];
    double[] accel = new double[bins];
    int[] counts = new int[bins];
    int bin = 0;
    for (int i = 0; i < unit.size(); i++) {
      while (bin + 1 < bins && unit.timeS(i) >= BIN_S * (first + bin + 1)) {
        bin++;
      }
      double rate = unit.gyroNormRadPerS(i);
      double force = unit.accelNormMps2(i) - StandardGravity.MPS2;
      if (!Double.isNaN(rate + force)) {
        gyro[bin] += rate * rate;
        accel[bin] += force * force;
        counts[bin]++;
      }
    }
    for (int k = 0; k < bins; k++) {
      gyro[k] /= counts[k];
      accel[k] /= counts[k];
    }
    double wildest = Math.sqrt(Arrays.stream(accel).filter(a -> a >= 0).max().orElse(0));
    for (Mark mark : marks) {
      if (MarkWord.of(mark.trialType()).filter(MarkWord::isStep).isPresent()) {
        int from = Math.min(bins, Math.max(0, bin(mark.onsetS()) - first));
        int to = Math.min(bins, Math.max(from, bin(mark.endS()) + 1 - first));
        Arrays.fill(gyro, from, to, Double.NaN);
        Arrays.fill(accel, from, to, Double.NaN);
      }
    }
    return new Activity(unit.point(), first, gyro, accel, wildest);
  }

  private static int bin(double timeS) {
    return (int) Math.floor(timeS / BIN_S);
  }

  BodyPoint point() {
    return point;
  }

  int firstBin() {
    return firstBin;
  }

  int endBin() {
    return firstBin + gyroSquare.length;
  }

  /** The largest distance of the acceleration from gravity in a bin, wear steps and all, m/s^2. */
  double wildestMps2() {
    return wildestMps2;
  }

  /** Time that both streams cover, s. */
  double sharedS(Activity other) {
    return BIN_S
        * Math.max(0, Math.min(endBin(), other.endBin()) - Math.max(firstBin, other.firstBin));
  }

  /** Root mean square rate over some bins of the stream, rad/s; NaN when any is empty. */
  double gyroRmsRadPerS(int fromBin, int toBin) {
    return rms(gyroSquare, fromBin - firstBin, toBin - firstBin);
  }

  /** Root mean square of the acceleration's distance from gravity over some bins, m/s^2. */
  double accelRmsMps2(int fromBin, int toBin) {
    return rms(accelSquare, fromBin - firstBin, toBin - firstBin);
  }

  private static double rms(double[] squares, int from, int to) {
    return Math.sqrt(Arrays.stream(squares, from, to).average().orElse(Double.NaN));
  }

  /** Correlation of the two units' rates over all bins that both have; NaN when neither moves. */
  double correlation(Activity other) {
    int n = 0;
    double sumA = 0;
    double sumB = 0;
    double squareA = 0;
    double squareB = 0;
    double product = 0;
    int end = Math.min(endBin(), other.endBin());
    for (int bin = Math.max(firstBin, other.firstBin); bin < end; bin++) {
      double a = Math.sqrt(gyroSquare[bin - firstBin]);
      double b = Math.sqrt(other.gyroSquare[bin - other.firstBin]);
      if (Double.isNaN(a + b)) {
        continue;
      }
      n++;
      sumA += a;
      sumB += b;
      squareA += a * a;
      squareB += b * b;
      product += a * b;
    }
    double spread = (squareA - sumA * sumA / n) * (squareB - sumB * sumB / n);
    return (product - sumA * sumB / n) / Math.sqrt(spread);
  }
}
