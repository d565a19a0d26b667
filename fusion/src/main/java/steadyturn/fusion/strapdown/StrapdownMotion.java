package steadyturn.fusion.strapdown;

import java.util.List;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/** A finished strapdown pass with the covariance of its parameters. */
public final class StrapdownMotion implements UnitMotion {

  private final Strapdown pass;
  private final Sensitivities sensitivities;
  private final double[][] covariance;

  public StrapdownMotion(Strapdown pass, double[][] covariance) {
    this.pass = pass;
    this.sensitivities = Sensitivities.everywhere(pass);
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
  public double[][] covariance() {
    return covariance;
  }

  @Override
  public double[][] sensitivity(int k) {
    return sensitivities.of(k);
  }

  @Override
  public List<Bridge> bridges() {
    return pass.samples.bridges();
  }
}
