package steadyturn.fusion.displace;

import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/** A finished strapdown pass with the covariance of its parameters. */
final class StrapdownMotion implements UnitMotion {

  private final Strapdown pass;
  private final double[][] covariance;

  StrapdownMotion(Strapdown pass, double[][] covariance) {
    this.pass = pass;
    this.covariance = covariance;
  }

  @Override
  public int size() {
    return pass.size();
  }

  @Override
  public double timeS(int k) {
    return pass.timeS(k);
  }

  @Override
  public Quaternion qLevelUnit(int k) {
    return pass.qLevelUnit(k);
  }

  @Override
  public Vector3 positionM(int k) {
    return pass.positionM(k);
  }

  @Override
  public Vector3 velocityMps(int k) {
    return pass.velocityMps(k);
  }

  @Override
  public Vector3 rateRadPerS(int k) {
    return pass.rateRadPerS(k);
  }

  @Override
  public int parameters() {
    return UnitState.SIZE;
  }

  @Override
  public double[][] covariance() {
    return covariance;
  }

  @Override
  public double[][] sensitivity(int k) {
    double[][] out = new double[9][UnitState.SIZE];
    for (int row = 0; row < 9; row++) {
      for (int p = 0; p < UnitState.SIZE; p++) {
        out[row][p] = pass.sensitivity(k, row, p);
      }
    }
    return out;
  }
}
