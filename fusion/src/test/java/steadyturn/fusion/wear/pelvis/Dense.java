package steadyturn.fusion.wear.pelvis;

import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * One linear measurement by least squares in information form, by another library than the product
 * uses: the inverses of prior and noise add up (any textbook of estimation).
 */
record Dense(double[] step, RealMatrix covariance) {

  static Dense of(double[][] prior, RealMatrix h, RealMatrix noise, double[] residual) {
    RealMatrix weight = inverse(noise);
    RealMatrix before = inverse(MatrixUtils.createRealMatrix(prior));
    RealMatrix after = inverse(before.add(h.transpose().multiply(weight).multiply(h)));
    RealVector seen = MatrixUtils.createRealVector(residual);
    double[] step = after.multiply(h.transpose()).multiply(weight).operate(seen).toArray();
    return new Dense(step, after);
  }

  private static RealMatrix inverse(RealMatrix m) {
    return new LUDecomposition(m, 1e-300).getSolver().getInverse();
  }
}
