package steadyturn.fusion.filter.kalman;

import steadyturn.fusion.filter.SampleGuard;
import steadyturn.fusion.rotation.MutableQuaternion;

/**
 * What the samples of one block add up to, in earth axes along the followed attitude R(t):
 * integrals over time of R, of R e_c w_j (column c, rate j), of the specific force once and twice.
 */
final class BlockSums {

  /** Integral of R dt, row by row, s. */
  final double[] attitudeS = new double[9];

  /** Integral of R[i][c] w[j] dt at 9 i + 3 c + j, rad. */
  final double[] attitudeRate = new double[27];

  /** Integral of the specific force, m/s. */
  final double[] velocityMps = new double[3];

  /** Integral of {@link #velocityMps}, m: x and y. */
  final double[] placeM = new double[2];

  /** Integral of the measured rates, unit axes, rad. */
  final double[] angleRad = new double[3];

  /** Integral of the squared rate, rad^2/s, and of the squared force, m^2/s^3. */
  double rateSquared;

  double forceSquared;
  double lengthS;
  double angleVariance;
  double velocityVariance;
  boolean atRest = true;

  /** Adds a step whose attitude in the middle is q. */
  void add(MutableQuaternion q, SampleGuard step, double[] rate, double ax, double ay, double az) {
    double dt = step.stepS;
    addRow(0, q.m00(), q.m01(), q.m02(), rate, ax, ay, az, dt);
    addRow(1, q.m10(), q.m11(), q.m12(), rate, ax, ay, az, dt);
    addRow(2, q.m20(), q.m21(), q.m22(), rate, ax, ay, az, dt);
    angleRad[0] += step.rateX * dt;
    angleRad[1] += step.rateY * dt;
    angleRad[2] += step.rateZ * dt;
    lengthS += dt;
    rateSquared += (rate[0] * rate[0] + rate[1] * rate[1] + rate[2] * rate[2]) * dt;
    forceSquared += (ax * ax + ay * ay + az * az) * dt;
    angleVariance += step.angleVariance;
    velocityVariance += step.velocityVariance;
  }

  /** Row i of R is (rx, ry, rz). */
  private void addRow(
      int i,
      double rx,
      double ry,
      double rz,
      double[] rate,
      double ax,
      double ay,
      double az,
      double dt) {
    double gainMps = (rx * ax + ry * ay + rz * az) * dt;
    if (i < 2) {
      placeM[i] += (velocityMps[i] + 0.5 * gainMps) * dt;
    }
    velocityMps[i] += gainMps;
    double sx = rx * dt;
    double sy = ry * dt;
    double sz = rz * dt;
    int a = 3 * i;
    attitudeS[a] += sx;
    attitudeS[a + 1] += sy;
    attitudeS[a + 2] += sz;
    double wx = rate[0];
    double wy = rate[1];
    double wz = rate[2];
    int m = 9 * i;
    attitudeRate[m] += sx * wx;
    attitudeRate[m + 1] += sx * wy;
    attitudeRate[m + 2] += sx * wz;
    attitudeRate[m + 3] += sy * wx;
    attitudeRate[m + 4] += sy * wy;
    attitudeRate[m + 5] += sy * wz;
    attitudeRate[m + 6] += sz * wx;
    attitudeRate[m + 7] += sz * wy;
    attitudeRate[m + 8] += sz * wz;
  }

  void clear() {
    java.util.Arrays.fill(attitudeS, 0);
    java.util.Arrays.fill(attitudeRate, 0);
    java.util.Arrays.fill(velocityMps, 0);
    java.util.Arrays.fill(placeM, 0);
    java.util.Arrays.fill(angleRad, 0);
    lengthS = 0;
    rateSquared = 0;
    forceSquared = 0;
    angleVariance = 0;
    velocityVariance = 0;
    atRest = true;
  }
}
