package steadyturn.fusion.displace;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/** Small sums with normal equations. */
final class Normal {

  private Normal() {}

  /** What is known beforehand of parameters that do not depend on one another. */
  static DMatrixRMaj prior(double[] sd) {
    DMatrixRMaj out = new DMatrixRMaj(sd.length, sd.length);
    for (int i = 0; i < sd.length; i++) {
      out.set(i, i, 1 / (sd[i] * sd[i]));
    }
    return out;
  }

  /** Inverse of a symmetric, positive definite matrix. */
  static DMatrixRMaj inverse(DMatrixRMaj information) {
    DMatrixRMaj out = new DMatrixRMaj(information.numRows, information.numCols);
    LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.chol(information.numRows);
    if (!solver.setA(information.copy())) {
      throw new IllegalStateException("the swings do not determine the parameters");
    }
    solver.invert(out);
    return out;
  }

  static double[] multiply(DMatrixRMaj a, double[] x) {
    double[] out = new double[a.numRows];
    for (int i = 0; i < a.numRows; i++) {
      for (int j = 0; j < a.numCols; j++) {
        out[i] += a.unsafe_get(i, j) * x[j];
      }
    }
    return out;
  }

  /** What a step of such a right-hand side takes off the cost: x' A x. */
  static double squared(double[] x, DMatrixRMaj a) {
    double[] product = multiply(a, x);
    double sum = 0;
    for (int i = 0; i < x.length; i++) {
      sum += x[i] * product[i];
    }
    return sum;
  }

  /** The largest of some steps, each in standard deviations of what it moves. */
  static double inSigmas(double[] step, DMatrixRMaj covariance) {
    double largest = 0;
    for (int i = 0; i < step.length; i++) {
      largest = Math.max(largest, Math.abs(step[i]) / Math.sqrt(covariance.get(i, i)));
    }
    return largest;
  }
}
