package steadyturn.fusion.filter.kalman;

import static steadyturn.fusion.filter.kalman.BlockModel.BIAS;
import static steadyturn.fusion.filter.kalman.BlockModel.MATRIX;

import steadyturn.fusion.filter.SampleGuard;
import steadyturn.fusion.rotation.MutableQuaternion;

/**
 * Follows the rates sample by sample, less the gyroscope errors known so far, and adds up the force
 * in the followed frame. Each rate and each force stands for the step that ends at its instant, so
 * the force is turned by the attitude in the middle of the step.
 *
 * <p>An axis that swings round while the unit turns by it (coning) turns the unit on; over a step
 * that is a twelfth of the cross product of its turn with that of the step before (Miller 1983, "A
 * new strapdown attitude algorithm", J Guidance 6:287-291; from memory).
 */
final class RateFollower {

  final MutableQuaternion qEarthUnit = new MutableQuaternion();

  /** The rate of the last step, less the known errors, rad/s. */
  final double[] rate = new double[3];

  final double[] bias = new double[3];
  private final double[] matrix = new double[9];
  private double lastX;
  private double lastY;
  private double lastZ;
  private boolean lastGood;

  /** One step: half a turn, the force in the middle, the other half. */
  void follow(SampleGuard step, double ax, double ay, double az, BlockSums sums) {
    double wx = step.rateX - bias[0];
    double wy = step.rateY - bias[1];
    double wz = step.rateZ - bias[2];
    double x = wx - matrix[0] * wx - matrix[1] * wy - matrix[2] * wz;
    double y = wy - matrix[3] * wx - matrix[4] * wy - matrix[5] * wz;
    double z = wz - matrix[6] * wx - matrix[7] * wy - matrix[8] * wz;
    double coning = step.rateGood && lastGood ? step.stepS / 12 : 0;
    rate[0] = x + coning * (lastY * z - lastZ * y);
    rate[1] = y + coning * (lastZ * x - lastX * z);
    rate[2] = z + coning * (lastX * y - lastY * x);
    lastX = x;
    lastY = y;
    lastZ = z;
    lastGood = step.rateGood;
    double half = 0.5 * step.stepS;
    qEarthUnit.turnRight(half * rate[0], half * rate[1], half * rate[2]);
    sums.add(qEarthUnit, step, rate, ax, ay, az);
    qEarthUnit.turnRight(half * rate[0], half * rate[1], half * rate[2]).normalize();
  }

  void correct(double[] correction) {
    qEarthUnit.turnLeft(correction[0], correction[1], correction[2]).normalize();
    for (int axis = 0; axis < 3; axis++) {
      bias[axis] += correction[BIAS + axis];
    }
    for (int k = 0; k < 9; k++) {
      matrix[k] += correction[MATRIX + k];
    }
  }
}
