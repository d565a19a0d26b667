package steadyturn.analysis.pelvis;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.strapdown.UnitMotion;
import steadyturn.fusion.wear.pelvis.PelvisGeometry;

/**
 * How each independent source of error would move the pose of the pelvis over one swing.
 *
 * <p>Errors are carried as independent columns (the factor of the joint covariance of unit,
 * geometry and aim), so that the spread of anything computed from several instants keeps what the
 * instants have in common.
 */
final class PoseErrors {

  private final UnitMotion motion;
  private final PelvisGeometry geometry;
  private final int h;
  private final double aimRad;
  private final PoseSlopes.Sight then;
  private final double[][] address;
  private final DMatrixRMaj factor;

  PoseErrors(
      UnitMotion motion,
      PelvisGeometry geometry,
      int h,
      double aimRad,
      double aimSdRad,
      int addressIndex) {
    this.motion = motion;
    this.geometry = geometry;
    this.h = h;
    this.aimRad = aimRad;
    this.then = sight(motion, geometry, addressIndex);
    this.address = motion.sensitivity(addressIndex);
    int p = motion.parameters();
    DMatrixRMaj covariance = new DMatrixRMaj(p + 7, p + 7);
    CommonOps_DDRM.insert(new DMatrixRMaj(motion.covariance()), covariance, 0, 0);
    CommonOps_DDRM.insert(new DMatrixRMaj(geometry.covariance()), covariance, p, p);
    covariance.set(p + 6, p + 6, aimSdRad * aimSdRad);
    for (int i = 0; i < p + 7; i++) {
      covariance.add(i, i, 1e-16);
    }
    CholeskyDecomposition_F64<DMatrixRMaj> cholesky = DecompositionFactory_DDRM.chol(p + 7, true);
    if (!cholesky.decompose(covariance)) {
      throw new IllegalStateException("covariance of the motion is not positive definite");
    }
    this.factor = cholesky.getT(null);
  }

  /**
   * How one standard deviation of each independent error source moves the pose of sample k: {@link
   * PelvisPose#SIZE} rows, a column a source. The same column means the same source at every k.
   */
  double[][] columns(int k) {
    return columns(k, posePerInput(k), 0, PelvisPose.SIZE);
  }

  /**
   * The same, and six columns of how a unit that has shifted on the skin moves the pose: turned
   * about the level axes (which carries mid-hip along on the lever arm), then moved along them.
   */
  double[][] columns(int k, SkinShift shift) {
    double[][] byInput = posePerInput(k);
    double[][] columns = columns(k, byInput, 0, PelvisPose.SIZE);
    int n = columns[0].length;
    for (int row = 0; row < columns.length; row++) {
      columns[row] = Arrays.copyOf(columns[row], n + 6);
      for (int c = 0; c < 6; c++) {
        columns[row][n + c] = byInput[row][c] * (c < 3 ? shift.angleRad() : shift.placeM());
      }
    }
    return columns;
  }

  /** The same for slide and thrust alone. */
  double[][] placeColumns(int k) {
    return Arrays.copyOfRange(columns(k, posePerInput(k), 1, 3), 1, 3);
  }

  private double[][] columns(int k, double[][] byInput, int fromRow, int toRow) {
    double[][] now = motion.sensitivity(k);
    int p = motion.parameters();
    double[][] out = new double[PelvisPose.SIZE][p + 7];
    double[] derivative = new double[p + 7];
    for (int row = fromRow; row < toRow; row++) {
      double[] d = byInput[row];
      for (int c = 0; c < p; c++) {
        double sum = 0;
        for (int i = 0; i < 3; i++) {
          sum += d[i] * now[i][c] + d[3 + i] * now[6 + i][c];
          sum += d[6 + i] * address[i][c] + d[9 + i] * address[6 + i][c];
        }
        derivative[c] = sum;
      }
      System.arraycopy(d, 12, derivative, p, 7);
      timesFactor(derivative, out[row]);
    }
    return out;
  }

  /** A row times the factor, which is a lower triangle. */
  private void timesFactor(double[] row, double[] out) {
    for (int i = 0; i < row.length; i++) {
      int at = i * row.length;
      for (int c = 0; c <= i; c++) {
        out[c] += row[i] * factor.data[at + c];
      }
    }
  }

  private double[][] posePerInput(int k) {
    return PoseSlopes.of(h, sight(motion, geometry, k), then, geometry.leverArmUnitM(), aimRad);
  }

  private static PoseSlopes.Sight sight(UnitMotion motion, PelvisGeometry geometry, int k) {
    Quaternion q = motion.qLevelUnit(k);
    return new PoseSlopes.Sight(q, q.times(geometry.qUnitPelvis()), motion.positionM(k));
  }
}
