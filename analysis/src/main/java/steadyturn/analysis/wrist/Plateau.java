package steadyturn.analysis.wrist;

import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;

/**
 * The angle the wrist holds on the way down: the 90th percentile of the cock over a stretch.
 *
 * <p>A held angle is flat, and skin that slips while it is held tilts its course a little, up or
 * down; the percentile then sits at the higher end, whichever that is. So it reads high: by the
 * mean of the larger of two normal numbers over the larger of their means (Clark 1961, "The
 * greatest of a finite set of random variables", from memory), taken between the end it sits at and
 * the far end of the flat part. That is taken off. As the tilt that is seen holds the error
 * already, it is a third to a half of the excess where the angle is held quite flat, nearly all
 * where it is not.
 *
 * @param deg the plateau, cock since address
 * @param at a sample at which the cock is there
 * @param far the other end of the flat part
 * @param farPart how likely the plateau sits there
 */
record Plateau(double deg, int at, int far, double farPart) {

  private static final Percentile NINETIETH =
      new Percentile(90).withEstimationType(Percentile.EstimationType.R_7);
  // beyond two spreads the course falls, it is not tilted: our choice
  private static final double FLAT_SDS = 2;
  private static final double SAME_DEG = 1e-6;
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  /** How well the change of the angle between two samples is known, deg (1 SD). */
  @FunctionalInterface
  interface ChangeSd {
    double degBetween(int from, int to);
  }

  /** Reads samples from..to-1 of a wrist. */
  static Plateau of(WristMotion motion, int from, int to) {
    double[] cocks = IntStream.range(from, to).mapToDouble(motion::cockDeg).toArray();
    Plateau plateau = of(cocks, (a, b) -> motion.spreads().changeDeg(from + a, from + b));
    return new Plateau(plateau.deg, from + plateau.at, from + plateau.far, plateau.farPart);
  }

  /** Reads a course; sample numbers count from its start. */
  static Plateau of(double[] cocks, ChangeSd change) {
    double read = NINETIETH.evaluate(cocks);
    int nearest = 0;
    for (int i = 0; i < cocks.length; i++) {
      // of two that lie equally near, as the percentile may lie half way, the earlier one
      double nearer = Math.abs(cocks[nearest] - read) - Math.abs(cocks[i] - read);
      nearest = nearer > SAME_DEG ? i : nearest;
    }
    int at = nearest;
    int first = flatEnd(cocks, change, at, 0, -1);
    int last = flatEnd(cocks, change, at, cocks.length - 1, 1);
    int far = at - first > last - at ? first : last;
    double sd = change.degBetween(at, far);
    if (far == at || sd == 0) {
      return new Plateau(read, at, at, 0);
    }
    double apart = Math.max(0, cocks[at] - cocks[far]) / sd;
    double farPart = NORMAL.cumulativeProbability(-apart);
    double excess = sd * (NORMAL.density(apart) - apart * farPart);
    return new Plateau(read - excess, at, far, farPart);
  }

  /** How far the course stays flat from a sample on, towards an end. */
  private static int flatEnd(double[] cocks, ChangeSd change, int at, int end, int step) {
    int k = at;
    while (k != end
        && Math.abs(cocks[k + step] - cocks[at]) <= FLAT_SDS * change.degBetween(at, k + step)) {
      k += step;
    }
    return k;
  }

  /** Spread of the cock at a sample against a part of the plateau, deg. */
  double againstSdDeg(WristMotion motion, int k, double part) {
    double here = motion.spreads().combinedDeg(new int[] {k, at}, new double[] {1, -part});
    double there = motion.spreads().combinedDeg(new int[] {k, far}, new double[] {1, -part});
    return Math.sqrt((1 - farPart) * here * here + farPart * there * there);
  }
}
