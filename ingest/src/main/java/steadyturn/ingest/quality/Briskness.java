package steadyturn.ingest.quality;

import java.util.ArrayList;
import java.util.List;
import steadyturn.ingest.sample.Averages;

/**
 * How much more one unit moves than another, taken over two-second blocks in which one moves and
 * the other does not rest: in a bow with hanging arms, or with hands on the hips, a trunk turns
 * alone.
 *
 * @param blocks number of such blocks
 * @param gyroRatio median ratio of the rates, first to second
 * @param gyroShare share of the blocks in which the first turns faster
 * @param accelRatio median ratio of the accelerations
 * @param correlation of the two rates over time
 */
record Briskness(
    int blocks, double gyroRatio, double gyroShare, double accelRatio, double correlation) {

  private static final int BINS_IN_BLOCK = 40;

  /** A block counts when one of the two turns at this rate on average. */
  private static final double MOVING_RAD_PER_S = Math.toRadians(30);

  /** Under that a unit rests (our choice: a player who stands still turns at 2 to 4 deg/s). */
  private static final double RESTING_RAD_PER_S = Math.toRadians(8);

  static Briskness of(Activity a, Activity b) {
    int fromBin = Math.max(a.firstBin(), b.firstBin());
    int endBin = Math.min(a.endBin(), b.endBin());
    List<Double> gyroRatios = new ArrayList<>();
    List<Double> accelRatios = new ArrayList<>();
    for (int bin = fromBin; bin + BINS_IN_BLOCK <= endBin; bin += BINS_IN_BLOCK) {
      double rateA = a.gyroRmsRadPerS(bin, bin + BINS_IN_BLOCK);
      double rateB = b.gyroRmsRadPerS(bin, bin + BINS_IN_BLOCK);
      if (Math.max(rateA, rateB) > MOVING_RAD_PER_S && Math.min(rateA, rateB) > RESTING_RAD_PER_S) {
        gyroRatios.add(rateA / rateB);
        accelRatios.add(
            a.accelRmsMps2(bin, bin + BINS_IN_BLOCK) / b.accelRmsMps2(bin, bin + BINS_IN_BLOCK));
      }
    }
    long faster = gyroRatios.stream().filter(r -> r > 1).count();
    return new Briskness(
        gyroRatios.size(),
        median(gyroRatios),
        (double) faster / gyroRatios.size(),
        median(accelRatios),
        a.correlation(b));
  }

  private static double median(List<Double> values) {
    return Averages.median(values.stream().mapToDouble(Double::doubleValue).toArray());
  }
}
