package steadyturn.fusion.displace;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.StatUtils;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;
import steadyturn.ingest.sample.Averages;

/**
 * Linearised knowledge about the 24 parameters, one row a number: residual (known minus predicted)
 * and derivative of the prediction, both divided by the spread, so that every row counts one.
 */
final class Rows {

  /** Half of all normal numbers are smaller than this, in their spread. */
  private static final double MEDIAN_OF_NORMAL = 0.6745;

  /** So many instants of a rest make half a second. */
  private static final int LASTING = 5;

  private final List<double[]> derivatives = new ArrayList<>();
  private final List<Double> residuals = new ArrayList<>();
  private Optional<SwayRows> sway = Optional.empty();

  /** Rows of one rest: m along each of both level axes, then m up and down, in their spreads. */
  private record SwayRows(int from, int m, double levelSdMps, double upSdMps, DMatrixRMaj level) {}

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

  /**
   * The last 3 m rows are the velocities of a rest: along the ground twice, then up and down.
   *
   * @param level covariance of the m along one level axis
   */
  void endWithSway(int m, Anchor rest, DMatrixRMaj level) {
    sway =
        Optional.of(
            new SwayRows(size() - 3 * m, m, rest.velocitySdMps(), rest.upSdMps(), lower(level)));
  }

  /** How the body moves in the rest that was told of last; none where none was. */
  Optional<RestSway> sway() {
    return sway.map(
        s ->
            new RestSway(
                s.levelSdMps * typical(s.from, s.from + 2 * s.m),
                s.upSdMps * typical(s.from + 2 * s.m, s.from + 3 * s.m),
                Math.hypot(lasting(s, s.from), lasting(s, s.from + s.m))));
  }

  /** Spread of rows by their median size, so that a step of the velocity does not count. */
  private double typical(int from, int to) {
    double[] sizes = IntStream.range(from, to).mapToDouble(i -> Math.abs(residual(i))).toArray();
    return Averages.median(sizes) / MEDIAN_OF_NORMAL;
  }

  /** RMS of the running mean of the velocities that begin at a row, m/s. */
  private double lasting(SwayRows s, int from) {
    DMatrixRMaj white = new DMatrixRMaj(s.m, 1);
    for (int i = 0; i < s.m; i++) {
      white.set(i, residual(from + i));
    }
    DMatrixRMaj velocity = new DMatrixRMaj(s.m, 1);
    CommonOps_DDRM.mult(s.level, white, velocity);
    int over = Math.min(LASTING, s.m);
    double[] means =
        IntStream.rangeClosed(0, s.m - over)
            .mapToDouble(i -> Averages.mean(velocity.data, i, i + over))
            .toArray();
    return Math.sqrt(StatUtils.sumSq(means) / means.length);
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
    out.sway = sway;
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
    out.sway = sway;
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
