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
    DMatrixRMaj step = new DMatrixRMaj(p.numRows, 1);
    CommonOps_DDRM.mult(gain, DMatrixRMaj.wrap(residual.length, 1, residual), step);
    DMatrixRMaj taken = new DMatrixRMaj(p.numRows, p.numRows);
    CommonOps_DDRM.multTransB(gain, ph, taken);
    CommonOps_DDRM.subtractEquals(p, taken);
    DMatrixRMaj even = new DMatrixRMaj(p.numRows, p.numRows);
    CommonOps_DDRM.add(0.5, p, 0.5, CommonOps_DDRM.transpose(p, null), even);
    return new Update(step.data, even.get2DData());
  }
}
