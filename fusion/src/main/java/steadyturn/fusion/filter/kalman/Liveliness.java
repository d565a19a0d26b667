package steadyturn.fusion.filter.kalman;

import java.util.Arrays;
import steadyturn.ingest.sample.StandardGravity;

/**
 * How fast and how far the unit goes of late: the force in the earth frame, integrated once and
 * twice with a short memory, squared and averaged over a longer one. What a tilt as uncertain as
 * ours would feign is taken off. From it the bounds on speed and place, which must not hold a
 * swinging arm to the pace of a stroll.
 */
final class Liveliness {

  /** Memory of the integrals, s. */
  private static final double MOVEMENT_S = 1;

  /** Memory of their squares, s. */
  private static final double AVERAGE_S = 8;

  /** Memory of the mean force, s. */
  private static final double UP_S = 3;

  /** The bound on speed stands so far above the mean square. */
  private static final double SPEED_ROOM = 1;

  /** The same for place: the short memory shows only a part of a long way. */
  private static final double PLACE_ROOM = 30;

  /** Movement of this shake goes at shake times this, s: about one swing to and fro a second. */
  private static final double SHAKE_TO_SPEED_S = 0.2;

  /** Of the place at that pace, the variance over that of the speed, s^2. */
  private static final double SPEED_TO_PLACE_S2 = 0.1;

  /** Largest tilt variance that small angles can carry: 0.4 rad squared. */
  private static final double LARGEST_TILT_VARIANCE = 0.16;

  private final double[] velocity = new double[3];
  private final double[] place = new double[3];
  private double speedSquared;
  private double placeSquared;
  private double upMps2 = StandardGravity.MPS2;

  void take(BlockSums block, double tiltVariance) {
    double t = block.lengthS;
    upMps2 += Math.min(1, t / UP_S) * (block.velocityMps[2] / t - upMps2);
    if (block.angleVariance + block.velocityVariance > 0) {
      forgetWay(); // what was not seen in full may have gone anywhere
      return;
    }
    double keep = Math.max(0, 1 - t / MOVEMENT_S);
    double speed = 0;
    double way = 0;
    for (int axis = 0; axis < 3; axis++) {
      double gain = block.velocityMps[axis] - (axis == 2 ? StandardGravity.MPS2 * t : 0);
      place[axis] = keep * (place[axis] + t * (velocity[axis] + 0.5 * gain));
      velocity[axis] = keep * (velocity[axis] + gain);
      speed += velocity[axis] * velocity[axis];
      way += place[axis] * place[axis];
    }
    double feigned = StandardGravity.MPS2 * MOVEMENT_S;
    double ofTilt = 2 * feigned * feigned * tiltVariance;
    double learn = Math.min(1, t / AVERAGE_S);
    speedSquared += learn * (Math.max(0, speed - ofTilt) / 3 - speedSquared);
    way = Math.max(0, way - ofTilt * MOVEMENT_S * MOVEMENT_S);
    placeSquared += learn * (way / 3 - placeSquared);
  }

  /** Whether the force of late points down: the attitude is beyond what small angles mend. */
  boolean upsideDown() {
    return upMps2 < 0;
  }

  /** How much larger the variance of the bound on speed is than the usual one. */
  double speedRoom(double usualVariance) {
    return Math.max(1, SPEED_ROOM * speedSquared / usualVariance);
  }

  double placeRoom(double usualVariance) {
    return Math.max(1, PLACE_ROOM * placeSquared / usualVariance);
  }

  /**
   * After levelling by the mean force of a movement: the shake of the force says how fast the unit
   * goes, and how far a change of that speed has tilted the mean.
   */
  void start(BlockSums block, Covariance covariance, KalmanCoefficients c) {
    double t = block.lengthS;
    double[] v = block.velocityMps;
    double mean = (v[0] * v[0] + v[1] * v[1] + v[2] * v[2]) / (t * t);
    double shakeSquared = Math.max(0, block.forceSquared / t - mean) / 3;
    speedSquared = shakeSquared * SHAKE_TO_SPEED_S * SHAKE_TO_SPEED_S;
    placeSquared = speedSquared * SPEED_TO_PLACE_S2;
    double pull = StandardGravity.MPS2 * t;
    covariance.startMoving(
        Math.min(LARGEST_TILT_VARIANCE, c.startTiltVariance() + 2 * speedSquared / (pull * pull)),
        c.speedVariance() + speedSquared,
        c.placeVariance() + placeSquared);
  }

  private void forgetWay() {
    Arrays.fill(velocity, 0);
    Arrays.fill(place, 0);
  }

  void forget() {
    forgetWay();
    upMps2 = StandardGravity.MPS2;
  }
}
