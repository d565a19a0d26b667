package steadyturn.fusion.wear.pelvis;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

/**
 * One linear measurement folded into six numbers with covariance: the Kalman update, symmetrised.
 */
record Update(double[] step, double[][] covariance) {

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
    double[] step = new double[p.numRows];
    for (int i = 0; i < step.length; i++) {
      for (int j = 0; j < residual.length; j++) {
        step[i] += gain.get(i, j) * residual[j];
      }
    }
    DMatrixRMaj taken = new DMatrixRMaj(p.numRows, p.numRows);
    CommonOps_DDRM.multTransB(gain, ph, taken);
    CommonOps_DDRM.subtractEquals(p, taken);
    double[][] out = PelvisGeometry.rows(p);
    for (int i = 0; i < out.length; i++) {
      for (int j = 0; j < i; j++) {
        double mean = 0.5 * (out[i][j] + out[j][i]);
        out[i][j] = mean;
        out[j][i] = mean;
      }
    }
    return new Update(step, out);
  }
}
