package steadyturn.analysis.swing.find;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.StandardGravity;

/**
 * The blow in a unit that samples too slowly to follow its ring: at 200 Hz two to four samples of
 * it are taken, any of which may lie near a zero. A sample counts by how far it lies off the line
 * through the two before, and the ring by how far it strays from a parabola through the calm on
 * both sides.
 */
final class SparseShock {

  private static final double CALM_BEFORE_S = 0.045;
  private static final double RING_S = 0.016;
  private static final double CALM_FROM_S = 0.026;
  private static final double CALM_TO_S = 0.06;
  private static final int FEWEST = 6;
  private static final double TIMES_MEDIAN = 6;
  private static final double LONGEST_STEP = 1.8;
  private static final double NEAR_FULL = 0.999;
  // a swing's own force changes by less in a step of 5 ms (our assumption)
  private static final double COMES_BACK_MPS2 = 6 * StandardGravity.MPS2;

  private final GyroTrack track;
  private final double stepS;

  SparseShock(GyroTrack track) {
    this.track = track;
    this.stepS = (track.timeS(track.size() - 1) - track.timeS(0)) / (track.size() - 1);
  }

  /**
   * First sample among from..to-1 that is a surprise and begins a strong ring; -1 when there is
   * none.
   *
   * @param leastMps2 least surprise
   * @param strayMps2 how far the ring must stray
   */
  int strong(int from, int to, double leastMps2, double strayMps2) {
    double[] surprises = surprises(from, to);
    double least = Math.max(leastMps2, TIMES_MEDIAN * Averages.median(surprises));
    for (int i = from; i < to; i++) {
      if (surprises[i - from] > least && stray(i) > strayMps2) {
        return i;
      }
    }
    return -1;
  }

  /**
   * First sample among from..to-1 that stands out from all of them, however weak; -1 when there is
   * none. For a blow of which is known that it came.
   *
   * @param leastMps2 least surprise
   */
  int weak(int from, int to, double leastMps2) {
    double[] surprises = surprises(from, to);
    double most = Arrays.stream(surprises).max().orElse(0);
    if (most <= Math.max(leastMps2, TIMES_MEDIAN * Averages.median(surprises))) {
      return -1;
    }
    int first = 0;
    while (surprises[first] < most / 2) {
      first++;
    }
    return from + first;
  }

  double stepS() {
    return stepS;
  }

  /** How far each of samples from..to-1 lies off the line through the two before it. */
  double[] surprises(int from, int to) {
    double[] surprises = new double[Math.max(0, to - from)];
    for (int i = from; i < to; i++) {
      surprises[i - from] = surprise(i);
    }
    return surprises;
  }

  /** Distance of a sample from the line through the two before it; 0 after lost ones, m/s^2. */
  private double surprise(int i) {
    if (i < 2) {
      return 0;
    }
    double last = track.timeS(i - 1) - track.timeS(i - 2);
    double now = track.timeS(i) - track.timeS(i - 1);
    if (last <= 0 || Math.max(last, now) > LONGEST_STEP * stepS) {
      return 0;
    }
    double part = now / last;
    Vector3 before = track.forceUnitMps2(i - 1);
    Vector3 first = track.forceUnitMps2(i - 2);
    Vector3 line = before.plus(before.minus(first).times(part));
    Vector3 is = track.forceUnitMps2(i);
    return Vector3.each(
            axis ->
                isCut(first.get(axis), before.get(axis), line.get(axis), is.get(axis))
                    ? 0
                    : is.get(axis) - line.get(axis))
        .norm();
  }

  /**
   * Whether an axis has a kink that its full scale explains: it was cut off and comes back no
   * faster than a swing does, or it is cut off where the line would have gone beyond.
   */
  private boolean isCut(double first, double before, double line, double now) {
    double full = NEAR_FULL * track.accelFullScaleMps2();
    boolean wasCut = Math.abs(first) >= full || Math.abs(before) >= full;
    return (wasCut && Math.abs(now - before) < COMES_BACK_MPS2)
        || (Math.abs(now) >= full && line * Math.signum(now) >= full);
  }

  /** How far the ring that begins at a sample strays from the calm around it, m/s^2. */
  private double stray(int i) {
    double[] strays = strays(i, i, track.indexAt(track.timeS(i) + RING_S) + 1);
    return Arrays.stream(strays).max().orElse(0);
  }

  /**
   * How far each of samples from..to-1 strays from the calm around a ring that begins at one of
   * them; 0 before it, m/s^2. Unlike the surprise it does not grow from the first sample of a ring
   * to its third because they point to either side.
   */
  double[] strays(int start, int from, int to) {
    double t = track.timeS(start);
    int calmFrom = track.indexAt(t - CALM_BEFORE_S);
    int calmTo = Math.min(track.size(), track.indexAt(t + CALM_TO_S));
    int[] calm =
        IntStream.range(calmFrom, calmTo)
            .filter(k -> k < start || track.timeS(k) > t + CALM_FROM_S)
            .toArray();
    double[] strays = new double[Math.max(0, Math.min(track.size(), to) - from)];
    if (calm.length < FEWEST) {
      return strays;
    }
    double[][] powers = new double[calm.length][];
    double[][] forces = new double[calm.length][];
    for (int row = 0; row < calm.length; row++) {
      powers[row] = powers(track.timeS(calm[row]) - t);
      Vector3 force = track.forceUnitMps2(calm[row]);
      forces[row] = new double[] {force.x(), force.y(), force.z()};
    }
    RealMatrix parabola =
        new QRDecomposition(new Array2DRowRealMatrix(powers))
            .getSolver()
            .solve(new Array2DRowRealMatrix(forces));
    for (int k = Math.max(from, start); k < from + strays.length; k++) {
      double[] there = parabola.preMultiply(powers(track.timeS(k) - t));
      Vector3 calmForce = new Vector3(there[0], there[1], there[2]);
      strays[k - from] = track.forceUnitMps2(k).minus(calmForce).norm();
    }
    return strays;
  }

  private static double[] powers(double u) {
    return new double[] {1, u, u * u};
  }
}
