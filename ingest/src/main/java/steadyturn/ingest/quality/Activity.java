package steadyturn.ingest.quality;

import java.util.Arrays;
import steadyturn.ingest.sample.UnitStream;

/**
 * How much a unit moved in each bin of time: mean squares of the rate and of the acceleration's
 * distance from gravity. A bin without a whole sample holds NaN.
 */
final class Activity {

  /** Short enough to see a downswing, long enough to hold a sample at 25 Hz, s. */
  static final double BIN_S = 0.05;

  private static final double GRAVITY_MPS2 = 9.80665;

  private final double[] gyroSquare;
  private final double[] accelSquare;

  private Activity(double[] gyroSquare, double[] accelSquare) {
    this.gyroSquare = gyroSquare;
    this.accelSquare = accelSquare;
  }

  static Activity of(UnitStream unit, double fromS, double toS) {
    int bins = Math.max(0, (int) ((toS - fromS) / BIN_S));
    double[] gyro = new double[bins];
    double[] accel = new double[bins];
    int[] counts = new int[bins];
    for (int i = unit.indexAt(fromS); i < unit.size(); i++) {
      int bin = (int) ((unit.timeS(i) - fromS) / BIN_S);
      if (bin >= bins) {
        break;
      }
      double rate = unit.gyroNormRadPerS(i);
      double force = unit.accelNormMps2(i) - GRAVITY_MPS2;
      if (!Double.isNaN(rate + force)) {
        gyro[bin] += rate * rate;
        accel[bin] += force * force;
        counts[bin]++;
      }
    }
    for (int bin = 0; bin < bins; bin++) {
      gyro[bin] /= counts[bin];
      accel[bin] /= counts[bin];
    }
    return new Activity(gyro, accel);
  }

  int bins() {
    return gyroSquare.length;
  }

  /** Root mean square rate over some bins, rad/s; NaN when any is empty. */
  double gyroRmsRadPerS(int fromBin, int toBin) {
    return Math.sqrt(Arrays.stream(gyroSquare, fromBin, toBin).average().orElse(Double.NaN));
  }

  /** Root mean square of the acceleration's distance from gravity over some bins, m/s^2. */
  double accelRmsMps2(int fromBin, int toBin) {
    return Math.sqrt(Arrays.stream(accelSquare, fromBin, toBin).average().orElse(Double.NaN));
  }

  /** Correlation of the two units' rates over all bins that both have; NaN when neither moves. */
  double correlation(Activity other) {
    int n = 0;
    double sumA = 0;
    double sumB = 0;
    double squareA = 0;
    double squareB = 0;
    double product = 0;
    for (int bin = 0; bin < bins(); bin++) {
      double a = Math.sqrt(gyroSquare[bin]);
      double b = Math.sqrt(other.gyroSquare[bin]);
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
