package steadyturn.analysis.pelvis;

import java.util.Random;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.strapdown.UnitMotion;
import steadyturn.fusion.wear.pelvis.PelvisGeometry;
import steadyturn.ingest.sample.Handedness;

/**
 * A swing of a pelvis whose truth is exact, at 200 Hz: still to 1 s (takeaway 1.05 s), top at 2 s,
 * impact at 2.3 s, then on. Turn, side tilt and tilt are taken in this order about z, x and y; the
 * level frame's heading is any; the unit sits in any way. Every error has its column: two unknown
 * parameters of the motion (all rows), six of the mounting, and the aim.
 */
record MadePelvis(Handedness handed, double aimRad, double[] errors) implements UnitMotion {

  static final double HEADING_RAD = 2.6;
  static final double AIM_RAD = 0.07;
  static final double AIM_SD_RAD = 0.03;
  static final double TAKEAWAY_S = 1.05;
  static final double TOP_S = 2;
  static final double IMPACT_S = 2.3;
  private static final double RATE_HZ = 200;
  private static final Quaternion UNIT_PELVIS =
      Quaternion.fromRotationVector(new Vector3(0.4, -1.2, 0.9));
  private static final Vector3 ARM_UNIT_M = new Vector3(0.07, -0.04, 0.11);
  private static final Vector3 PLACE_M = new Vector3(0.3, -0.2, 1);

  static MadePelvis of(Handedness handed) {
    return new MadePelvis(handed, AIM_RAD, new double[9]);
  }

  /** The same with errors put in: 0, 1 the motion's, 2..7 the mounting's, 8 the aim's. */
  MadePelvis with(double[] put) {
    return new MadePelvis(handed, aimRad, put);
  }

  PelvisTrack track() {
    return PelvisTrack.of(this, geometry(), handed, aimRad + errors[8], AIM_SD_RAD, TAKEAWAY_S);
  }

  PelvisGeometry geometry() {
    Vector3 turn = new Vector3(errors[2], errors[3], errors[4]);
    return new PelvisGeometry(
        UNIT_PELVIS.times(Quaternion.fromRotationVector(turn)),
        ARM_UNIT_M.plus(new Vector3(errors[5], errors[6], errors[7])),
        geometryCovariance());
  }

  private static double[][] geometryCovariance() {
    double[] sd = {0.03, 0.05, 0.04, 0.008, 0.006, 0.009};
    double[][] out = new double[6][6];
    for (int i = 0; i < 6; i++) {
      for (int j = 0; j < 6; j++) {
        out[i][j] = sd[i] * sd[j] * (i == j ? 1 : 0.3);
      }
    }
    return out;
  }

  /** Joint covariance of the nine errors. */
  static double[][] jointCovariance() {
    double[][] out = new double[9][9];
    double[][] own = of(Handedness.RIGHT).covariance();
    double[][] mounting = geometryCovariance();
    for (int i = 0; i < 8; i++) {
      for (int j = 0; j < 8; j++) {
        out[i][j] = i < 2 && j < 2 ? own[i][j] : i < 2 || j < 2 ? 0 : mounting[i - 2][j - 2];
      }
    }
    out[8][8] = AIM_SD_RAD * AIM_SD_RAD;
    return out;
  }

  /** 0 to 1 s still, then a smooth way to 1 at the top, back through 0 and to -1 after impact. */
  private static double way(double timeS) {
    double t = Math.max(0, timeS - TAKEAWAY_S);
    return Math.sin(1.7 * t) * Math.min(1, 8 * t * t);
  }

  /** The true pose, free of handedness. */
  static PelvisPose truth(double timeS) {
    double w = way(timeS);
    double v = way(0.8 * (timeS - TAKEAWAY_S) + TAKEAWAY_S);
    return new PelvisPose(
        -0.9 * w, -0.06 * v + 0.03 * w * w, 0.02 * v, 0.01 * w, 0.3 + 0.1 * v, 0.12 * w);
  }

  private Quaternion qLevelPelvis(double timeS) {
    PelvisPose p = truth(timeS);
    int h = handed.sign();
    return Quaternion.aboutZ(HEADING_RAD + h * p.turnRad())
        .times(Quaternion.aboutX(h * p.sideTiltRad()))
        .times(Quaternion.aboutY(p.tiltRad()));
  }

  private Quaternion qExact(double timeS) {
    return qLevelPelvis(timeS).times(UNIT_PELVIS.conjugate());
  }

  private Vector3 placeExact(double timeS) {
    PelvisPose p = truth(timeS);
    double a = HEADING_RAD + aimRad;
    int h = handed.sign();
    Vector3 target = new Vector3(-Math.sin(a), Math.cos(a), 0).times(h);
    Vector3 ball = new Vector3(Math.cos(a), Math.sin(a), 0);
    Vector3 midHip =
        PLACE_M
            .plus(target.times(p.slideM()))
            .plus(ball.times(p.thrustM()))
            .plus(Vector3.Z.times(p.liftM()));
    return midHip.minus(qExact(timeS).rotate(ARM_UNIT_M));
  }

  private Vector3 off(int k, int firstRow) {
    double[][] s = sensitivity(k);
    Vector3 sum = Vector3.ZERO;
    for (int p = 0; p < 2; p++) {
      sum =
          sum.plus(
              new Vector3(s[firstRow][p], s[firstRow + 1][p], s[firstRow + 2][p]).times(errors[p]));
    }
    return sum;
  }

  @Override
  public int size() {
    return 601;
  }

  @Override
  public double timeS(int k) {
    return k / RATE_HZ;
  }

  @Override
  public Quaternion qLevelUnit(int k) {
    return Quaternion.fromRotationVector(off(k, 0)).times(qExact(timeS(k)));
  }

  @Override
  public Vector3 positionM(int k) {
    return placeExact(timeS(k)).plus(off(k, 6));
  }

  @Override
  public int parameters() {
    return 2;
  }

  @Override
  public double[][] covariance() {
    return new double[][] {{1e-5, 2e-6}, {2e-6, 5e-6}};
  }

  @Override
  public double[][] sensitivity(int k) {
    double t = timeS(k);
    double[][] rows = new double[9][2];
    for (int row = 0; row < 9; row++) {
      rows[row][0] = 0.3 + 0.2 * row + 0.5 * t;
      rows[row][1] = 0.8 - 0.3 * row + (row - 3) * 0.2 * t;
    }
    return rows;
  }

  /** Random errors by the joint covariance. */
  static double[] draw(Random random, double[][] root) {
    double[] z = new double[9];
    double[] out = new double[9];
    for (int i = 0; i < 9; i++) {
      z[i] = random.nextGaussian();
      for (int j = 0; j <= i; j++) {
        out[i] += root[i][j] * z[j];
      }
    }
    return out;
  }
}
