package steadyturn.fusion.displace;

import java.util.ArrayList;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
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
    double[] row = derivative.clone();
    for (int p = 0; p < row.length; p++) {
      row[p] /= sd;
    }
    derivatives.add(row);
  }

  /**
   * Adds m numbers whose errors are tied to one another: covariance m x m, whitened by its Cholesky
   * factor, row by row.
   *
   * @param derivative m rows of one column a parameter
   */
  void addTied(double[] residual, double[][] derivative, DMatrixRMaj covariance) {
    DMatrixRMaj lower = lower(covariance);
    double[] white = residual.clone();
    double[][] whiteDerivative = new double[white.length][];
    for (int i = 0; i < white.length; i++) {
      double[] row = derivative[i].clone();
      for (int j = 0; j < i; j++) {
        double part = lower.get(i, j);
        white[i] -= part * white[j];
        for (int p = 0; p < row.length; p++) {
          row[p] -= part * whiteDerivative[j][p];
        }
      }
      double own = lower.get(i, i);
      white[i] /= own;
      for (int p = 0; p < row.length; p++) {
        row[p] /= own;
      }
      whiteDerivative[i] = row;
      residuals.add(white[i]);
      derivatives.add(row);
    }
  }

  private static DMatrixRMaj lower(DMatrixRMaj covariance) {
    CholeskyDecomposition_F64<DMatrixRMaj> cholesky =
        DecompositionFactory_DDRM.chol(covariance.numRows, true);
    if (!cholesky.decompose(covariance.copy())) {
      throw new IllegalArgumentException("covariance of tied numbers is not positive definite");
    }
    return cholesky.getT(null);
  }

  /** The same numbers with the derivatives that others of the same kind had. */
  Rows withDerivativesOf(Rows others) {
    Rows out = new Rows();
    out.residuals.addAll(residuals);
    out.derivatives.addAll(others.derivatives);
    return out;
  }

  /** The numbers after a small step of the parameters, by the derivatives alone. */
  Rows moved(double[] step) {
    Rows out = new Rows();
    for (int row = 0; row < size(); row++) {
      double residual = residuals.get(row);
      double[] derivative = derivatives.get(row);
      for (int p = 0; p < derivative.length; p++) {
        residual -= derivative[p] * step[p];
      }
      out.residuals.add(residual);
    }
    out.derivatives.addAll(derivatives);
    return out;
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
