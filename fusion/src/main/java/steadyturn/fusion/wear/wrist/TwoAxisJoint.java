package steadyturn.fusion.wear.wrist;

import org.ejml.data.DMatrixRMaj;
import steadyturn.fusion.attitude.AttitudeTrack;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.SkinSlip;

/**
 * Hand against forearm over one swing. The two attitudes come in level frames of unknown headings;
 * a wrist bends and deviates but does not turn about its length: forearm y stays square to hand z.
 * This constraint, held against all that the units hide (tilt, bias, scale, mounting, a shift of
 * one clock, slipping skin), gives the heading between the two frames and a covariance for every
 * angle.
 *
 * <p>The constraint is that of Laidig, Lehmann, Begin and Seel 2019, "Magnetometer-free realtime
 * inertial motion tracking by exploitation of kinematic constraints in 2-DoF joints" (from memory);
 * the least-squares form with priors is ours. Angles: flexion about forearm y, then deviation about
 * hand z (order of Wu et al. 2005, Z-X-Y in their axes, from memory); no singularity at a deviation
 * of 90 deg.
 */
public final class TwoAxisJoint {

  private final RelativeAttitude relative;
  private final DMatrixRMaj covariance;
  private final double[] z;
  private final double residualRmsRad;

  TwoAxisJoint(
      RelativeAttitude relative, double[] z, DMatrixRMaj covariance, double residualRmsRad) {
    this.relative = relative;
    this.z = z;
    this.covariance = covariance;
    this.residualRmsRad = residualRmsRad;
  }

  /**
   * Fits one swing.
   *
   * @param slip when the skin slips
   * @param fromS start of the movement that is used, s
   * @param toS its end, before the blow
   * @param syncSdS standard deviation of the hand's clock against the forearm's, s
   */
  public static TwoAxisJoint fit(
      AttitudeTrack forearm,
      AttitudeTrack hand,
      WristAlignment alignment,
      SkinSlip slip,
      double fromS,
      double toS,
      double syncSdS) {
    RelativeAttitude relative = new RelativeAttitude(forearm, hand, alignment, slip, syncSdS);
    return TwoAxisFit.of(relative, fromS, toS);
  }

  /** Number of samples: the forearm's. */
  public int size() {
    return relative.size();
  }

  public double timeS(int k) {
    return relative.timeS(k);
  }

  /** Attitude of the hand in the forearm, segment axes. */
  public Quaternion qForearmHand(int k) {
    return relative.at(k, z).qForearmHand();
  }

  /**
   * The wrist at one sample.
   *
   * @param flexionRad angle about forearm y: fingers towards the palm positive
   * @param deviationRad angle about hand z; its sign depends on the side of the arm
   */
  public record Angles(double flexionRad, double deviationRad) {}

  /** All angles at sample k. */
  public Angles angles(int k) {
    Quaternion q = relative.at(k, z).qForearmHand();
    Vector3 handZ = q.rotate(Vector3.Z);
    double flexion = Math.atan2(handZ.x(), handZ.z());
    Vector3 unbent = Quaternion.aboutY(-flexion).rotate(q.rotate(Vector3.X));
    double deviation = Math.atan2(unbent.y(), unbent.x());
    return new Angles(flexion, deviation);
  }

  /** Rate of the deviation at sample k from the gyroscopes themselves, rad/s. */
  public double deviationRateRadPerS(int k) {
    return relative.rateHandRadPerS(relative.at(k, z), z).z();
  }

  /** Derivative of the deviation at sample k by all parameters, for {@link #sdRad}. */
  public double[] deviationRow(int k) {
    return relative.turnAlong(relative.at(k, z), Vector3.Z);
  }

  /** Derivative of the flexion at sample k by all parameters. */
  public double[] flexionRow(int k) {
    double deviation = angles(k).deviationRad();
    Vector3 direction = new Vector3(Math.sin(deviation), Math.cos(deviation), 0);
    return relative.turnAlong(relative.at(k, z), direction);
  }

  /** Angle above level at sample k of the forearm's long axis, or the hand's, rad. */
  public double elevationRad(int k, boolean ofHand) {
    return RelativeAttitude.elevationRad(relative.at(k, z), ofHand);
  }

  /** Derivative of that angle at sample k by all parameters. */
  public double[] elevationRow(int k, boolean ofHand) {
    return relative.elevationRow(relative.at(k, z), ofHand);
  }

  /** Standard deviation of a quantity by its derivative by all parameters. */
  public double sdRad(double[] row) {
    int p = row.length;
    double variance = 0;
    for (int i = 0; i < p; i++) {
      double along = 0;
      for (int j = 0; j < i; j++) {
        along += covariance.data[i * p + j] * row[j];
      }
      variance += row[i] * (2 * along + covariance.data[i * p + i] * row[i]);
    }
    return Math.sqrt(Math.max(0, variance));
  }

  /** How far two quantities err together, by their derivatives by all parameters. */
  public double covarianceRad2(double[] a, double[] b) {
    int p = a.length;
    double sum = 0;
    for (int i = 0; i < p; i++) {
      if (a[i] != 0) {
        double along = 0;
        for (int j = 0; j < p; j++) {
          along += covariance.data[i * p + j] * b[j];
        }
        sum += a[i] * along;
      }
    }
    return sum;
  }

  /** How well the constraint is kept, RMS, rad: large where units slip or are mislabelled. */
  public double residualRmsRad() {
    return residualRmsRad;
  }

  /** The fitted shift of the hand's clock against the forearm's, s. */
  public double clockShiftS() {
    return relative.clockShiftS(z);
  }
}
