package steadyturn.fusion.wear.wrist;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * Finds all that is unknown of a wrist by its constraint, forearm y square to hand z: Gauss-Newton
 * with priors of unit variance; the heading alone has none.
 */
final class TwoAxisFit {

  /**
   * Play of the wrist about its length that follows neither deviation nor flexion, and skin that
   * follows no rule: our assumption; a swing that shows more is given more.
   */
  private static final double PLAY_SD_RAD = Math.toRadians(1.5);

  private static final double PLAY_CORRELATION_S = 0.2;
  private static final double ROW_STEP_S = 0.01;
  private static final int ROUNDS = 6;

  /**
   * Of a standard deviation: the next round moves a thirtieth of the last (measured on 270
   * simulated swings), and nothing that is printed moves by as little.
   */
  private static final double SETTLED = 5e-3;

  /** From this round on the derivatives stay as they are but for the residuals' own. */
  private static final int STEADY = 2;

  private static final double FREE = 1e-6;
  private static final int FEWEST = 10;
  private static final int HEADINGS = 60;

  private final RelativeAttitude relative;
  private final int[] rows;
  private final double[] z;
  private final DMatrixRMaj normal;
  private final DMatrixRMaj right;
  private double playRad = PLAY_SD_RAD;

  private TwoAxisFit(RelativeAttitude relative, int[] rows) {
    this.relative = relative;
    this.rows = rows;
    this.z = new double[relative.parameters()];
    this.normal = new DMatrixRMaj(z.length, z.length);
    this.right = new DMatrixRMaj(z.length, 1);
  }

  /**
   * Fits the samples between two instants.
   *
   * @param toS end of what is used, before the blow
   */
  static TwoAxisJoint of(RelativeAttitude relative, double fromS, double toS) {
    TwoAxisFit fit = new TwoAxisFit(relative, rows(relative, fromS, toS));
    fit.z[relative.headingAt()] = fit.startHeading();
    DMatrixRMaj covariance = fit.solve();
    double seenRad = fit.residualRmsRad();
    if (seenRad > PLAY_SD_RAD) {
      fit.playRad = seenRad;
      covariance = fit.solve();
    }
    return new TwoAxisJoint(relative, fit.z, covariance, fit.residualRmsRad());
  }

  private static int[] rows(RelativeAttitude relative, double fromS, double toS) {
    int[] rows = new int[relative.size()];
    int count = 0;
    double nextS = fromS;
    for (int k = 0; k < relative.size() && relative.timeS(k) <= toS; k++) {
      if (relative.timeS(k) >= nextS && relative.isSeen(k)) {
        rows[count++] = k;
        nextS = relative.timeS(k) + ROW_STEP_S * 0.9;
      }
    }
    if (count < FEWEST) {
      throw new IllegalArgumentException(
          "forearm and hand share " + count + " samples from " + fromS + " to " + toS + " s");
    }
    return Arrays.copyOf(rows, count);
  }

  /**
   * The heading, in steps of 6 deg, that fits the constraint best with the hand not folded back.
   * With y of the forearm and z of the hand in their level frames the constraint reads a cos h + b
   * sin h + c; its squares are summed once for all headings.
   */
  private double startHeading() {
    double[] squares = new double[6];
    for (int k : rows) {
      RelativeAttitude.Both both = relative.at(k, z);
      Vector3 y = both.qLevelForearm().rotate(Vector3.Y);
      Vector3 handZ = both.qLevelHand().rotate(Vector3.Z);
      double a = y.x() * handZ.x() + y.y() * handZ.y();
      double b = y.y() * handZ.x() - y.x() * handZ.y();
      double c = y.z() * handZ.z();
      double[] products = {a * a, b * b, c * c, a * b, a * c, b * c};
      for (int i = 0; i < squares.length; i++) {
        squares[i] += products[i];
      }
    }
    return bestHeading(squares, relative.at(rows[0], z));
  }

  private static double bestHeading(double[] squares, RelativeAttitude.Both first) {
    double best = Double.POSITIVE_INFINITY;
    double found = 0;
    for (int i = 0; i < HEADINGS; i++) {
      double headingRad = 2 * Math.PI * i / HEADINGS;
      double cos = Math.cos(headingRad);
      double sin = Math.sin(headingRad);
      double cost =
          squares[0] * cos * cos
              + squares[1] * sin * sin
              + squares[2]
              + 2 * (squares[3] * cos * sin + squares[4] * cos + squares[5] * sin);
      if (cost < best && isUnfolded(first, headingRad)) {
        best = cost;
        found = headingRad;
      }
    }
    return found;
  }

  private static boolean isUnfolded(RelativeAttitude.Both first, double headingRad) {
    Quaternion q =
        new RelativeAttitude.Both(0, first.qLevelForearm(), first.qLevelHand(), headingRad)
            .qForearmHand();
    return q.rotate(Vector3.X).x() > 0.2 && q.rotate(Vector3.Z).z() > 0.2;
  }

  /** Rounds until nothing moves any more; the covariance. */
  private DMatrixRMaj solve() {
    LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.symmPosDef(z.length);
    DMatrixRMaj change = new DMatrixRMaj(z.length, 1);
    double moved = Double.POSITIVE_INFINITY;
    for (int round = 0; round < ROUNDS && moved > SETTLED; round++) {
      boolean anew = round < STEADY;
      linearise(anew);
      if (anew && !solver.setA(normal.copy())) {
        throw new IllegalStateException("priors keep the normal equations positive definite");
      }
      solver.solve(right, change);
      for (int i = 0; i < z.length; i++) {
        z[i] += change.data[i];
      }
      moved = CommonOps_DDRM.elementMaxAbs(change);
    }
    DMatrixRMaj covariance = new DMatrixRMaj(z.length, z.length);
    solver.invert(covariance);
    return covariance;
  }

  /** The right-hand side and, where asked for, the normal equations anew. */
  private void linearise(boolean anew) {
    if (anew) {
      CommonOps_DDRM.setIdentity(normal);
      normal.set(relative.headingAt(), relative.headingAt(), FREE);
    }
    for (int i = 0; i < z.length; i++) {
      right.data[i] = i == relative.headingAt() ? 0 : -z[i];
    }
    double weight = ROW_STEP_S / PLAY_CORRELATION_S / (playRad * playRad);
    for (int k : rows) {
      RelativeAttitude.Both both = relative.at(k, z);
      Quaternion q = both.qForearmHand();
      double residual = residual(q);
      // y of hand z moves with a small turn phi of the hand as phi_y x_y - phi_x y_y
      Vector3 direction = new Vector3(-q.rotate(Vector3.Y).y(), q.rotate(Vector3.X).y(), 0);
      double[] row = relative.turnAlong(both, direction);
      relative.takePlay(q, row);
      for (int i = 0; i < row.length; i++) {
        right.data[i] -= weight * row[i] * residual;
      }
      if (anew) {
        add(row, weight);
      }
    }
    CommonOps_DDRM.symmLowerToFull(normal);
  }

  /** Adds one row to the lower half of the normal equations. */
  private void add(double[] row, double weight) {
    int p = z.length;
    for (int i = 0; i < p; i++) {
      double w = weight * row[i];
      if (w != 0) {
        int at = i * p;
        for (int j = 0; j <= i; j++) {
          normal.data[at + j] += w * row[j];
        }
      }
    }
  }

  /** How far forearm y and hand z are from the angle that the joint gives them. */
  private double residual(Quaternion qForearmHand) {
    return qForearmHand.rotate(Vector3.Z).y() - relative.playRad(qForearmHand, z);
  }

  private double residualRmsRad() {
    double sum = 0;
    for (int k : rows) {
      double r = residual(relative.at(k, z).qForearmHand());
      sum += r * r;
    }
    return Math.sqrt(sum / rows.length);
  }
}
