package steadyturn.fusion.wear.pelvis;

import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.dense.row.mult.VectorVectorMult_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;

/**
 * One linear measurement folded into six numbers with covariance: the Kalman update, symmetrised.
 *
 * @param misfit squares that the measurement is off from what was expected of it, in its own spread
 *     and that of the prior, their mean: 1 where both are as stated
 * @param surprise chance that what it teaches lies no farther from the prior, 0..1
 */
record Update(double[] step, double[][] covariance, double misfit, double surprise) {

  /** A direction of which less than this part of the variance is taken was not taught. */
  private static final double TAUGHT_PART = 0.05;

  /**
   * @param prior 6 x 6
   * @param h m x 6
   * @param noise m x m
   * @param residual m numbers, seen minus predicted
   */
  static Update of(double[][] prior, DMatrixRMaj h, DMatrixRMaj noise, double[] residual) {
    DMatrixRMaj p = new DMatrixRMaj(prior);
    DMatrixRMaj ph = new DMatrixRMaj(p.numRows, h.numRows);
    CommonOps_DDRM.multTransB(p, h, ph);
    DMatrixRMaj s = noise.copy();
    CommonOps_DDRM.multAdd(h, ph, s);
    DMatrixRMaj inverse = new DMatrixRMaj(s.numRows, s.numCols);
    if (!CommonOps_DDRM.invertSPD(s, inverse)) {
      throw new IllegalArgumentException("a measurement without any spread cannot be folded in");
    }
    DMatrixRMaj gain = new DMatrixRMaj(p.numRows, h.numRows);
    CommonOps_DDRM.mult(ph, inverse, gain);
    DMatrixRMaj step = new DMatrixRMaj(p.numRows, 1);
    CommonOps_DDRM.mult(gain, DMatrixRMaj.wrap(residual.length, 1, residual), step);
    DMatrixRMaj taken = new DMatrixRMaj(p.numRows, p.numRows);
    CommonOps_DDRM.multTransB(gain, ph, taken);
    CommonOps_DDRM.subtractEquals(p, taken);
    DMatrixRMaj even = new DMatrixRMaj(p.numRows, p.numRows);
    CommonOps_DDRM.add(0.5, p, 0.5, CommonOps_DDRM.transpose(p, null), even);
    double misfit = square(residual, inverse) / residual.length;
    return new Update(step.data, even.get2DData(), misfit, surprise(prior, taken, step));
  }

  /**
   * In axes in which the prior's numbers are independent with spread 1 and so are the parts of the
   * step, its squares over their own variances are chi-squared.
   */
  private static double surprise(double[][] prior, DMatrixRMaj covariance, DMatrixRMaj step) {
    int n = step.numRows;
    DMatrixRMaj white = inverseOfRoot(prior);
    DMatrixRMaj half = new DMatrixRMaj(n, n);
    DMatrixRMaj parts = new DMatrixRMaj(n, n);
    CommonOps_DDRM.mult(white, covariance, half);
    CommonOps_DDRM.multTransB(half, white, parts);
    EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(n, true, true);
    eigen.decompose(parts);
    DMatrixRMaj whiteStep = new DMatrixRMaj(n, 1);
    CommonOps_DDRM.mult(white, step, whiteStep);
    double squares = 0;
    int taught = 0;
    for (int i = 0; i < n; i++) {
      double part = eigen.getEigenvalue(i).getReal();
      if (part > TAUGHT_PART) {
        double along = CommonOps_DDRM.dot(eigen.getEigenVector(i), whiteStep);
        squares += along * along / part;
        taught++;
      }
    }
    return taught == 0 ? 0 : new ChiSquaredDistribution(taught).cumulativeProbability(squares);
  }

  /** W with W P W-transposed = 1. */
  private static DMatrixRMaj inverseOfRoot(double[][] covariance) {
    CholeskyDecomposition_F64<DMatrixRMaj> cholesky =
        DecompositionFactory_DDRM.chol(covariance.length, true);
    cholesky.decompose(new DMatrixRMaj(covariance));
    DMatrixRMaj root = cholesky.getT(null);
    CommonOps_DDRM.invert(root);
    return root;
  }

  /** x-transposed times a matrix times x. */
  private static double square(double[] x, DMatrixRMaj matrix) {
    DMatrixRMaj column = new DMatrixRMaj(x.length, 1, true, x);
    return VectorVectorMult_DDRM.innerProdA(column, matrix, column);
  }
}
