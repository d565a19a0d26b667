package steadyturn.fusion.filter.lowpass;

import java.util.Arrays;

/** Kalman estimate of the three biases of a gyroscope, with covariance. */
final class BiasEstimate {

  private final double walkVariancePerS;
  private final double[] bias = new double[3];
  private final double[] p = new double[9];
  private final double[] gain = new double[3];

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
  void observe(double hx, double hy, double hz, double innovation, double variance) {
    double px = p[0] * hx + p[1] * hy + p[2] * hz;
    double py = p[3] * hx + p[4] * hy + p[5] * hz;
    double pz = p[6] * hx + p[7] * hy + p[8] * hz;
    double inverse = 1 / (hx * px + hy * py + hz * pz + variance);
    gain[0] = px * inverse;
    gain[1] = py * inverse;
    gain[2] = pz * inverse;
    for (int i = 0; i < 3; i++) {
      bias[i] += gain[i] * innovation;
      p[3 * i] -= gain[i] * px;
      p[3 * i + 1] -= gain[i] * py;
      p[3 * i + 2] -= gain[i] * pz;
    }
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < i; j++) {
        double mean = 0.5 * (p[3 * i + j] + p[3 * j + i]);
        p[3 * i + j] = mean;
        p[3 * j + i] = mean;
      }
    }
  }
}
