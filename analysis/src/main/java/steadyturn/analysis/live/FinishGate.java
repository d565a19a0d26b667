package steadyturn.analysis.live;

import java.util.EnumMap;
import java.util.Map;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Sees, sample by sample, when a swing may just have ended. It only says when it is worth looking;
 * whether there was a swing is found by the same finder as afterwards. The limits are our choice,
 * wide on the side of looking too often.
 */
final class FinishGate {

  /** What is worth a look. */
  enum Sight {
    NOTHING,
    /** A fast moment, and now the finish is held. */
    HELD,
    /** A fast moment so long ago that all that belongs to its swing was seen. */
    OVER
  }

  private static final double ARM_FAST_RAD_PER_S = Math.toRadians(300);
  private static final double PELVIS_FAST_RAD_PER_S = Math.toRadians(120);

  /** A held finish still sways: the root mean square over the last tenths of a second. */
  private static final double STILL_RAD_PER_S = Math.toRadians(20);

  private static final double SMOOTHED_OVER_S = 0.1;
  private static final double HELD_S = 0.8;

  /** A swing reaches 4 s beyond its impact; samples of another unit come a little later. */
  private static final double OVER_S = 4.5;

  private final Map<BodyPoint, Motion> motions = new EnumMap<>(BodyPoint.class);
  private double fastS = Double.NEGATIVE_INFINITY;
  private double movedS = Double.NEGATIVE_INFINITY;
  private boolean isHeldTold = true;
  private boolean isOverTold = true;

  /** The course of one unit's turning. */
  private static final class Motion {
    private double timeS = Double.NaN;
    private double squareSmoothed;

    void add(double newTimeS, double square) {
      double stepS = Double.isNaN(timeS) ? SMOOTHED_OVER_S : newTimeS - timeS;
      double weight = 1 - Math.exp(-Math.max(0, stepS) / SMOOTHED_OVER_S);
      squareSmoothed += weight * (square - squareSmoothed);
      timeS = newTimeS;
    }
  }

  /** Takes a sample; a lost rate (NaN) says nothing. */
  Sight sample(BodyPoint point, double timeS, double[] gyroRadPerS) {
    double square =
        gyroRadPerS[0] * gyroRadPerS[0]
            + gyroRadPerS[1] * gyroRadPerS[1]
            + gyroRadPerS[2] * gyroRadPerS[2];
    if (Double.isNaN(square)) {
      return Sight.NOTHING;
    }
    Motion motion = motions.computeIfAbsent(point, p -> new Motion());
    motion.add(timeS, square);
    double fast = point == BodyPoint.PELVIS ? PELVIS_FAST_RAD_PER_S : ARM_FAST_RAD_PER_S;
    if (square > fast * fast) {
      fastS = timeS;
      isHeldTold = false;
      isOverTold = false;
    }
    if (point == witness() && motion.squareSmoothed > STILL_RAD_PER_S * STILL_RAD_PER_S) {
      movedS = timeS;
    }
    return sight(point, timeS);
  }

  private Sight sight(BodyPoint point, double timeS) {
    if (!isOverTold && timeS - fastS > OVER_S) {
      isOverTold = true;
      isHeldTold = true;
      return Sight.OVER;
    }
    if (!isHeldTold && point == witness() && timeS - Math.max(fastS, movedS) > HELD_S) {
      isHeldTold = true;
      return Sight.HELD;
    }
    return Sight.NOTHING;
  }

  /** The unit whose stillness counts: in the finish the arms may sway long. */
  private BodyPoint witness() {
    return motions.containsKey(BodyPoint.PELVIS)
        ? BodyPoint.PELVIS
        : motions.keySet().iterator().next();
  }

  /** Whether nothing fast happened for so long that a piece may be cut here. */
  boolean isIdle() {
    return isOverTold;
  }
}
