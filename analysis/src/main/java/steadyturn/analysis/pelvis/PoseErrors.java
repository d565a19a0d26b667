package steadyturn.analysis.pelvis;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
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

  /** Of a turn, rad, or a place, m, in a central difference. */
  private static final double STEP = 1e-5;

  /**
   * Inputs of the pose that errors reach: turn and place now, turn and place at address, mounting,
   * arm, aim.
   */
  private static final int INPUTS = 19;

  private final UnitMotion motion;
  private final PelvisGeometry geometry;
  private final int h;
  private final double aimRad;
  private final int addressIndex;
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
    this.addressIndex = addressIndex;
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
    return columns(k, posePerInput(k));
  }

  /**
   * The same, and six columns of how a unit that has shifted on the skin moves the pose: turned
   * about the level axes (which carries mid-hip along on the lever arm), then moved along them.
   */
  double[][] columns(int k, SkinShift shift) {
    double[][] byInput = posePerInput(k);
    double[][] columns = columns(k, byInput);
    int n = columns[0].length;
    for (int row = 0; row < columns.length; row++) {
      columns[row] = Arrays.copyOf(columns[row], n + 6);
      for (int c = 0; c < 6; c++) {
        columns[row][n + c] = byInput[row][c] * (c < 3 ? shift.angleRad() : shift.placeM());
      }
    }
    return columns;
  }

  private double[][] columns(int k, double[][] byInput) {
    double[][] now = motion.sensitivity(k);
    double[][] address = motion.sensitivity(addressIndex);
    int p = motion.parameters();
    DMatrixRMaj derivative = new DMatrixRMaj(PelvisPose.SIZE, p + 7);
    for (int row = 0; row < PelvisPose.SIZE; row++) {
      double[] d = byInput[row];
      for (int c = 0; c < p; c++) {
        double sum = 0;
        for (int i = 0; i < 3; i++) {
          sum += d[i] * now[i][c] + d[3 + i] * now[6 + i][c];
          sum += d[6 + i] * address[i][c] + d[9 + i] * address[6 + i][c];
        }
        derivative.set(row, c, sum);
      }
      for (int i = 0; i < 7; i++) {
        derivative.set(row, p + i, d[12 + i]);
      }
    }
    DMatrixRMaj columns = new DMatrixRMaj(PelvisPose.SIZE, p + 7);
    CommonOps_DDRM.mult(derivative, factor, columns);
    double[][] out = new double[PelvisPose.SIZE][p + 7];
    for (int row = 0; row < PelvisPose.SIZE; row++) {
      System.arraycopy(columns.data, row * (p + 7), out[row], 0, p + 7);
    }
    return out;
  }

  /** Derivative of the pose by its inputs, by central differences. */
  private double[][] posePerInput(int k) {
    double[][] out = new double[PelvisPose.SIZE][INPUTS];
    for (int input = 0; input < INPUTS; input++) {
      double[] plus = poseWith(k, input, STEP);
      double[] minus = poseWith(k, input, -STEP);
      for (int row = 0; row < PelvisPose.SIZE; row++) {
        double change = row == 0 ? PoseMath.wrap(plus[0] - minus[0]) : plus[row] - minus[row];
        out[row][input] = change / (2 * STEP);
      }
    }
    return out;
  }

  /** Pose of sample k with one input moved; the address is seen at the middle of its stretch. */
  private double[] poseWith(int k, int input, double step) {
    int three = input / 3;
    Vector3 by = Vector3.axis(input % 3).times(step);
    Quaternion qBy = Quaternion.fromRotationVector(three % 2 == 0 ? by : Vector3.ZERO);
    Quaternion qUnitPelvis =
        three == 4 ? geometry.qUnitPelvis().times(qBy) : geometry.qUnitPelvis();
    Vector3 arm = three == 5 ? geometry.leverArmUnitM().plus(by) : geometry.leverArmUnitM();
    Quaternion qNow = three == 0 ? qBy.times(motion.qLevelUnit(k)) : motion.qLevelUnit(k);
    Quaternion qThen = motion.qLevelUnit(addressIndex);
    Quaternion qAddress = three == 2 ? qBy.times(qThen) : qThen;
    Vector3 now = motion.positionM(k).plus(three == 1 ? by : Vector3.ZERO);
    Vector3 then = motion.positionM(addressIndex).plus(three == 3 ? by : Vector3.ZERO);
    return PoseMath.pose(
        h,
        qNow.times(qUnitPelvis),
        now.plus(qNow.rotate(arm)).minus(then.plus(qAddress.rotate(arm))),
        PoseMath.azimuthRad(qAddress.times(qUnitPelvis)),
        three == 6 ? aimRad + step : aimRad);
  }
}
