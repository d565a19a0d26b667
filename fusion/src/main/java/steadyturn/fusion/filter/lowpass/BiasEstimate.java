package steadyturn.fusion.filter.lowpass;

import java.util.Arrays;

/** Kalman estimate of the three biases of a gyroscope, with covariance. */
final class BiasEstimate {

  private final double walkVariancePerS;
  private final double[] bias = new double[3];
  private final double[] p = new double[9];
  private final double[] ph = new double[3];

  BiasEstimate(double startSigma, double walk) {
    walkVariancePerS = walk * walk;
    Arrays.fill(p, 0);
    for (int axis = 0; axis < 3; axis++) {
      p[4 * axis] = startSigma * startSigma;
    }
  }

  double get(int axis) {
    return bias[axis];
  }

  double[] values() {
    return bias;
  }

  double sigmaRadPerS() {
    return Math.sqrt((p[0] + p[4] + p[8]) / 3);
  }

  void walk(double dtS) {
    p[0] += walkVariancePerS * dtS;
    p[4] += walkVariancePerS * dtS;
    p[8] += walkVariancePerS * dtS;
  }

  /** Folds in h . (true bias - bias) = innovation, with this variance. */
  void observe(double[] h, double innovation, double variance) {
    double s = variance;
    for (int i = 0; i < 3; i++) {
      ph[i] = p[3 * i] * h[0] + p[3 * i + 1] * h[1] + p[3 * i + 2] * h[2];
      s += h[i] * ph[i];
    }
    for (int i = 0; i < 3; i++) {
      bias[i] += ph[i] / s * innovation;
      for (int j = 0; j < 3; j++) {
        p[3 * i + j] -= ph[i] * ph[j] / s;
      }
    }
  }
}
