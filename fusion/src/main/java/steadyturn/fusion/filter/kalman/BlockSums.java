package steadyturn.fusion.filter.kalman;

import steadyturn.fusion.filter.SampleGuard;
import steadyturn.fusion.rotation.MutableQuaternion;
import steadyturn.ingest.sample.StandardGravity;

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

  private final double[] turned = new double[9];

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
    q.matrix(turned);
    // no force seen: stand in with rest, R-transposed times g
    double fx = step.accelSeen ? ax : StandardGravity.MPS2 * turned[6];
    double fy = step.accelSeen ? ay : StandardGravity.MPS2 * turned[7];
    double fz = step.accelSeen ? az : StandardGravity.MPS2 * turned[8];
    for (int i = 0; i < 3; i++) {
      double gainMps = (turned[3 * i] * fx + turned[3 * i + 1] * fy + turned[3 * i + 2] * fz) * dt;
      if (i < 2) {
        placeM[i] += (velocityMps[i] + 0.5 * gainMps) * dt;
      }
      velocityMps[i] += gainMps;
      for (int c = 0; c < 3; c++) {
        double s = turned[3 * i + c] * dt;
        attitudeS[3 * i + c] += s;
        attitudeRate[9 * i + 3 * c] += s * rate[0];
        attitudeRate[9 * i + 3 * c + 1] += s * rate[1];
        attitudeRate[9 * i + 3 * c + 2] += s * rate[2];
      }
    }
    angleRad[0] += step.rateX * dt;
    angleRad[1] += step.rateY * dt;
    angleRad[2] += step.rateZ * dt;
    lengthS += dt;
    rateSquared += (rate[0] * rate[0] + rate[1] * rate[1] + rate[2] * rate[2]) * dt;
    forceSquared += (fx * fx + fy * fy + fz * fz) * dt;
    angleVariance += step.angleVariance;
    velocityVariance += step.velocityVariance;
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
