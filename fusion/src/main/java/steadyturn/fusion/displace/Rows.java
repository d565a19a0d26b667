package steadyturn.fusion.displace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.decomposition.TriangularSolver_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;

/**
 * Linearised knowledge about the 24 parameters, one row a number: residual (known minus predicted)
 * and derivative of the prediction, both divided by the spread, so that every row counts one.
 */
final class Rows {

  private final List<double[]> derivatives = new ArrayList<>();
  private final List<Double> residuals = new ArrayList<>();

  void add(double residual, double[] derivative, double sd) {
    residuals.add(residual / sd);
    derivatives.add(Arrays.stream(derivative).map(d -> d / sd).toArray());
  }

  /**
   * Adds m numbers whose errors are tied to one another: covariance m x m, whitened by the inverse
   * of its Cholesky factor.
   *
   * @param derivative m rows of one column a parameter
   */
  void addTied(double[] residual, double[][] derivative, DMatrixRMaj covariance) {
    int m = residual.length;
    DMatrixRMaj whitening = whitening(covariance);
    DMatrixRMaj white = new DMatrixRMaj(m, derivative[0].length);
    CommonOps_DDRM.mult(whitening, new DMatrixRMaj(derivative), white);
    for (int i = 0; i < m; i++) {
      double sum = 0;
      for (int j = 0; j <= i; j++) {
        sum += whitening.get(i, j) * residual[j];
      }
      residuals.add(sum);
      derivatives.add(
          Arrays.copyOfRange(white.data, i * white.numCols, i * white.numCols + white.numCols));
    }
  }

  private static DMatrixRMaj whitening(DMatrixRMaj covariance) {
    CholeskyDecomposition_F64<DMatrixRMaj> cholesky =
        DecompositionFactory_DDRM.chol(covariance.numRows, true);
    if (!cholesky.decompose(covariance.copy())) {
      throw new IllegalArgumentException("covariance of tied numbers is not positive definite");
    }
    DMatrixRMaj lower = cholesky.getT(null);
    TriangularSolver_DDRM.invertLower(lower.data, lower.numRows);
    return lower;
  }

  int size() {
    return residuals.size();
  }

  double residual(int row) {
    return residuals.get(row);
  }

  double[] derivative(int row) {
    return derivatives.get(row);
  }

  /** Sum of squared rows: about {@link #size()} when the spreads are right. */
  double cost() {
    return residuals.stream().mapToDouble(r -> r * r).sum();
  }
}
