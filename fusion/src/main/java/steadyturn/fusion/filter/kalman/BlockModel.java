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
   * Carries rows of a matrix of 19 columns: {@code top} (7 x 19) becomes the first seven rows of F
   * times {@code p} (19 x 19).
   */
  void carryRows(double[] p, double[] top) {
    int n = ERRORS;
    for (int i = 0; i < 3; i++) {
      System.arraycopy(p, i * n, top, i * n, n);
      for (int c = 0; c < FIXED; c++) {
        double a = turnByFixed[FIXED * i + c];
        int from = (MOVING + c) * n;
        for (int j = 0; j < n; j++) {
          top[i * n + j] += a * p[from + j];
        }
      }
    }
    for (int j = 0; j < n; j++) {
      double mid0 = 0.5 * (p[j] + top[j]);
      double mid1 = 0.5 * (p[n + j] + top[n + j]);
      double mid2 = 0.5 * (p[2 * n + j] + top[2 * n + j]);
      double gainX = mid1 * velZ - mid2 * velY;
      double gainY = mid2 * velX - mid0 * velZ;
      double vx = p[3 * n + j];
      double vy = p[4 * n + j];
      top[3 * n + j] = vx + gainX;
      top[4 * n + j] = vy + gainY;
      top[5 * n + j] = p[5 * n + j] + lengthS * (vx + 0.5 * gainX);
      top[6 * n + j] = p[6 * n + j] + lengthS * (vy + 0.5 * gainY);
    }
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

  /** {@link #carryBack} for every column of a 19 x 19 matrix, row-wise: F-transposed times it. */
  void carryBackRows(double[] l) {
    int n = ERRORS;
    for (int j = 0; j < n; j++) {
      double ux = l[3 * n + j] + 0.5 * lengthS * l[5 * n + j];
      double uy = l[4 * n + j] + 0.5 * lengthS * l[6 * n + j];
      l[3 * n + j] += lengthS * l[5 * n + j];
      l[4 * n + j] += lengthS * l[6 * n + j];
      // halves first: the fixed errors act through the mean turn of the block
      l[j] -= 0.5 * velZ * uy;
      l[n + j] += 0.5 * velZ * ux;
      l[2 * n + j] += 0.5 * (velX * uy - velY * ux);
    }
    for (int c = 0; c < FIXED; c++) {
      double a0 = turnByFixed[c];
      double a1 = turnByFixed[FIXED + c];
      double a2 = turnByFixed[2 * FIXED + c];
      int to = (MOVING + c) * n;
      for (int j = 0; j < n; j++) {
        l[to + j] += a0 * l[j] + a1 * l[n + j] + a2 * l[2 * n + j];
      }
    }
    for (int j = 0; j < n; j++) {
      double ux = l[3 * n + j] - 0.5 * lengthS * l[5 * n + j];
      double uy = l[4 * n + j] - 0.5 * lengthS * l[6 * n + j];
      l[j] -= 0.5 * velZ * uy;
      l[n + j] += 0.5 * velZ * ux;
      l[2 * n + j] += 0.5 * (velX * uy - velY * ux);
    }
  }
}
