package steadyturn.fusion.filter.kalman;

import static steadyturn.fusion.filter.kalman.BlockModel.BIAS;
import static steadyturn.fusion.filter.kalman.BlockModel.ERRORS;
import static steadyturn.fusion.filter.kalman.BlockModel.MATRIX;
import static steadyturn.fusion.filter.kalman.BlockModel.MOVING;
import static steadyturn.fusion.filter.kalman.BlockModel.PLACE;
import static steadyturn.fusion.filter.kalman.BlockModel.VELOCITY;

/**
 * The 19 x 19 covariance of the Kalman filter and its two steps. Kept symmetric by computing one
 * half of every change and mirroring it.
 */
final class Covariance {

  /** The errors that a lost attitude makes unknown: all that move, but not the free heading. */
  static final int[] RELEASED = {0, 1, VELOCITY, VELOCITY + 1, PLACE, PLACE + 1};

  final double[] p = new double[ERRORS * ERRORS];
  private final double[] top = new double[MOVING * ERRORS];
  private final double[] row = new double[ERRORS];

  /** Gains of the last {@link #observe}. */
  final double[] gain = new double[ERRORS];

  void start(KalmanCoefficients c) {
    java.util.Arrays.fill(p, 0);
    startMoving(c);
    setVariance(2, 1e-9); // heading is free: zero by definition at the start
    for (int axis = 0; axis < 3; axis++) {
      setVariance(BIAS + axis, c.startBiasVariance());
    }
    startMatrix(c);
  }

  /** As long as the unit has not turned, nothing hangs on its gyroscope matrix. */
  void startMatrix(KalmanCoefficients c) {
    for (int k = MATRIX; k < ERRORS; k++) {
      setVariance(k, c.rateMatrixVariance());
    }
  }

  /** Tilt, velocity and place are unknown again, as at the start; the rest stays. */
  void release(KalmanCoefficients c, double turnVariance) {
    for (int k : RELEASED) {
      for (int j = 0; j < ERRORS; j++) {
        p[k * ERRORS + j] = 0;
        p[j * ERRORS + k] = 0;
      }
    }
    startMoving(c);
    addVariance(2, turnVariance);
  }

  private void startMoving(KalmanCoefficients c) {
    startMoving(c.startTiltVariance(), c.speedVariance(), c.placeVariance());
  }

  /** Fresh from levelling: nothing else is known of tilt, velocity and place. */
  void startMoving(double tiltVariance, double speedVariance, double placeVariance) {
    for (int axis = 0; axis < 2; axis++) {
      setVariance(axis, tiltVariance);
      setVariance(VELOCITY + axis, speedVariance);
      setVariance(PLACE + axis, placeVariance);
    }
  }

  double variance(int k) {
    return p[k * ERRORS + k];
  }

  private void setVariance(int k, double v) {
    p[k * ERRORS + k] = v;
  }

  private void addVariance(int k, double v) {
    p[k * ERRORS + k] += v;
  }

  /** P becomes F P F-transposed + Q. */
  void predict(BlockModel model, BlockSums sums, KalmanCoefficients c) {
    for (int j = 0; j < ERRORS; j++) {
      System.arraycopy(p, j * ERRORS, row, 0, ERRORS);
      model.carryRow(row, 0);
      for (int i = 0; i < MOVING; i++) {
        top[i * ERRORS + j] = row[i];
      }
    }
    for (int i = 0; i < MOVING; i++) {
      model.carryRow(top, i * ERRORS);
    }
    for (int i = 0; i < MOVING; i++) {
      for (int j = i; j < ERRORS; j++) {
        double v =
            j < MOVING ? 0.5 * (top[i * ERRORS + j] + top[j * ERRORS + i]) : top[i * ERRORS + j];
        p[i * ERRORS + j] = v;
        p[j * ERRORS + i] = v;
      }
    }
    double t = sums.lengthS;
    for (int axis = 0; axis < 3; axis++) {
      addVariance(
          axis,
          c.angleVariancePerS() * t
              + c.angleVariancePerTurn() * sums.rateSquared
              + sums.angleVariance);
      addVariance(BIAS + axis, c.biasVariancePerS() * t);
    }
    addVariance(VELOCITY, c.velocityVariancePerS() * t + sums.velocityVariance);
    addVariance(VELOCITY + 1, c.velocityVariancePerS() * t + sums.velocityVariance);
  }

  /**
   * Folds in one measurement of error k with this variance; leaves the gains in {@link #gain} and
   * gives the variance of the innovation.
   */
  double observe(int k, double variance) {
    System.arraycopy(p, k * ERRORS, row, 0, ERRORS);
    double s = row[k] + variance;
    double inverse = 1 / s;
    for (int i = 0; i < ERRORS; i++) {
      double g = row[i] * inverse;
      gain[i] = g;
      for (int j = 0; j <= i; j++) {
        double v = p[i * ERRORS + j] - g * row[j];
        p[i * ERRORS + j] = v;
        p[j * ERRORS + i] = v;
      }
    }
    return s;
  }
}
