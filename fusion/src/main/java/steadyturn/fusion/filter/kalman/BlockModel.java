package steadyturn.fusion.filter.kalman;

/**
 * The linear model of the errors over one block. 19 errors, in this order: small rotation in the
 * earth frame 0..2 (rad), velocity x y 3..4 (m/s), place x y 5..6 (m), gyroscope bias 7..9 (rad/s),
 * gyroscope matrix 10..18 (row by row). Only the first seven change over a block:
 *
 * <pre>
 *   turn'  = turn + A c                   c: bias and matrix; A = -[integral R, integral R w]
 *   vel'   = vel + (turn + A c / 2) x dv  dv: integral of specific force
 *   place' = place + T (vel + vel') / 2
 * </pre>
 *
 * Standard strapdown error model in a level frame (Titterton and Weston, Strapdown Inertial
 * Navigation Technology; chapter from memory), shortened to what a block of 0.1 s needs. The
 * vertical velocity is left out: it would make the result hang on gravity and accelerometer scale.
 */
final class BlockModel {

  static final int ERRORS = 19;
  static final int MOVING = 7;
  static final int VELOCITY = 3;
  static final int PLACE = 5;
  static final int BIAS = 7;
  static final int MATRIX = 10;
  static final int FIXED = ERRORS - MOVING;

  /** A, 3 x 12, row by row. */
  final double[] turnByFixed = new double[3 * FIXED];

  double velX;
  double velY;
  double velZ;
  double lengthS;

  void set(BlockSums sums) {
    for (int i = 0; i < 3; i++) {
      for (int c = 0; c < 3; c++) {
        turnByFixed[FIXED * i + c] = -sums.attitudeS[3 * i + c];
      }
      for (int c = 0; c < 9; c++) {
        turnByFixed[FIXED * i + 3 + c] = -sums.attitudeRate[9 * i + c];
      }
    }
    velX = sums.velocityMps[0];
    velY = sums.velocityMps[1];
    velZ = sums.velocityMps[2];
    lengthS = sums.lengthS;
  }

  /**
   * Carries one row vector r of 19 in place: its first seven become those of r times F-transposed.
   */
  void carryRow(double[] r, int at) {
    double turn0 = r[at];
    double turn1 = r[at + 1];
    double turn2 = r[at + 2];
    for (int c = 0; c < FIXED; c++) {
      double f = r[at + MOVING + c];
      turn0 += turnByFixed[c] * f;
      turn1 += turnByFixed[FIXED + c] * f;
      turn2 += turnByFixed[2 * FIXED + c] * f;
    }
    double mid0 = 0.5 * (r[at] + turn0);
    double mid1 = 0.5 * (r[at + 1] + turn1);
    double mid2 = 0.5 * (r[at + 2] + turn2);
    double gainX = mid1 * velZ - mid2 * velY;
    double gainY = mid2 * velX - mid0 * velZ;
    double vx = r[at + 3];
    double vy = r[at + 4];
    r[at] = turn0;
    r[at + 1] = turn1;
    r[at + 2] = turn2;
    r[at + 3] = vx + gainX;
    r[at + 4] = vy + gainY;
    r[at + 5] += lengthS * (vx + 0.5 * gainX);
    r[at + 6] += lengthS * (vy + 0.5 * gainY);
  }

  /** Carries an adjoint vector back over the block, in place: r becomes F-transposed times r. */
  void carryBack(double[] r, int at) {
    double ux = r[at + 3] + 0.5 * lengthS * r[at + 5];
    double uy = r[at + 4] + 0.5 * lengthS * r[at + 6];
    double back0 = -velZ * uy;
    double back1 = velZ * ux;
    double back2 = velX * uy - velY * ux;
    double mid0 = r[at] + 0.5 * back0;
    double mid1 = r[at + 1] + 0.5 * back1;
    double mid2 = r[at + 2] + 0.5 * back2;
    for (int c = 0; c < FIXED; c++) {
      r[at + MOVING + c] +=
          turnByFixed[c] * mid0 + turnByFixed[FIXED + c] * mid1 + turnByFixed[2 * FIXED + c] * mid2;
    }
    r[at] += back0;
    r[at + 1] += back1;
    r[at + 2] += back2;
    r[at + 3] += lengthS * r[at + 5];
    r[at + 4] += lengthS * r[at + 6];
  }
}
