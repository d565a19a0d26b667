package steadyturn.fusion.wear.wrist;

import java.util.Arrays;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
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

  /** Play of the wrist about its length, and skin that follows no rule: our assumption. */
  private static final double PLAY_SD_RAD = Math.toRadians(0.35);

  private static final double PLAY_CORRELATION_S = 0.1;
  private static final double ROW_STEP_S = 0.01;
  private static final int ROUNDS = 6;
  private static final double HEADING_SCALE_RAD = 1;

  private final RelativeAttitude relative;
  private final DMatrixRMaj covariance;
  private final double[] z;
  private final double residualRmsRad;

  private TwoAxisJoint(
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
    int[] rows = rows(relative, fromS, toS);
    double[] z = new double[relative.parameters()];
    z[relative.headingAt()] = startHeading(relative, rows) / HEADING_SCALE_RAD;
    DMatrixRMaj covariance = new DMatrixRMaj(z.length, z.length);
    double weight = ROW_STEP_S / PLAY_CORRELATION_S / (PLAY_SD_RAD * PLAY_SD_RAD);
    for (int round = 0; round < ROUNDS; round++) {
      step(relative, rows, z, weight, covariance);
    }
    return new TwoAxisJoint(relative, z, covariance, rms(relative, rows, z));
  }

  private static int[] rows(RelativeAttitude relative, double fromS, double toS) {
    int[] rows = new int[relative.size()];
    int count = 0;
    double nextS = fromS;
    for (int k = 0; k < relative.size() && relative.timeS(k) <= toS; k++) {
      if (relative.timeS(k) >= nextS) {
        rows[count++] = k;
        nextS = relative.timeS(k) + ROW_STEP_S * 0.9;
      }
    }
    if (count < 10) {
      throw new IllegalArgumentException(
          "forearm and hand share " + count + " samples from " + fromS + " to " + toS + " s");
    }
    return Arrays.copyOf(rows, count);
  }

  /**
   * The heading, in steps of 6 deg, that fits the constraint best with the hand not folded back.
   */
  private static double startHeading(RelativeAttitude relative, int[] rows) {
    double[] z = new double[relative.parameters()];
    List<RelativeAttitude.Both> apart =
        Arrays.stream(rows).mapToObj(k -> relative.both(k, z)).toList();
    double best = Double.POSITIVE_INFINITY;
    double found = 0;
    for (int i = 0; i < 60; i++) {
      double headingRad = 2 * Math.PI * i / 60;
      Quaternion first = apart.get(0).qForearmHand(headingRad);
      double cost = 0;
      for (RelativeAttitude.Both both : apart) {
        double r = both.qForearmHand(headingRad).rotate(Vector3.Z).y();
        cost += r * r;
      }
      if (first.rotate(Vector3.X).x() > 0.2 && first.rotate(Vector3.Z).z() > 0.2 && cost < best) {
        best = cost;
        found = headingRad;
      }
    }
    return found;
  }

  private static double rms(RelativeAttitude relative, int[] rows, double[] z) {
    double sum = 0;
    for (int k : rows) {
      double r = relative.qForearmHand(k, z).rotate(Vector3.Z).y();
      sum += r * r;
    }
    return Math.sqrt(sum / rows.length);
  }

  /** One round of Gauss-Newton; the heading alone has no prior. */
  private static void step(
      RelativeAttitude relative, int[] rows, double[] z, double weight, DMatrixRMaj covariance) {
    int p = z.length;
    DMatrixRMaj normal = CommonOps_DDRM.identity(p);
    normal.set(relative.headingAt(), relative.headingAt(), 1e-6);
    DMatrixRMaj right = new DMatrixRMaj(p, 1);
    for (int i = 0; i < p; i++) {
      right.set(i, i == relative.headingAt() ? 0 : -z[i]);
    }
    for (int k : rows) {
      Quaternion q = relative.qForearmHand(k, z);
      double residual = q.rotate(Vector3.Z).y();
      // y of hand z moves with a small turn phi of the hand as phi_y x_y - phi_x y_y
      Vector3 direction = new Vector3(-q.rotate(Vector3.Y).y(), q.rotate(Vector3.X).y(), 0);
      double[] row = relative.turnAlong(k, z, direction);
      for (int i = 0; i < p; i++) {
        double w = weight * row[i];
        right.data[i] -= w * residual;
        for (int j = 0; j < p; j++) {
          normal.data[i * p + j] += w * row[j];
        }
      }
    }
    CommonOps_DDRM.invert(normal, covariance);
    DMatrixRMaj change = new DMatrixRMaj(p, 1);
    CommonOps_DDRM.mult(covariance, right, change);
    for (int i = 0; i < p; i++) {
      z[i] += change.data[i];
    }
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
    return relative.qForearmHand(k, z);
  }

  /** Angle about forearm y: fingers towards the palm positive, rad. */
  public double flexionRad(int k) {
    Vector3 handZ = qForearmHand(k).rotate(Vector3.Z);
    return Math.atan2(handZ.x(), handZ.z());
  }

  /** Angle about hand z, rad; its sign depends on the side of the arm. */
  public double deviationRad(int k) {
    Vector3 handX = qForearmHand(k).rotate(Vector3.X);
    Vector3 unbent = Quaternion.aboutY(-flexionRad(k)).rotate(handX);
    return Math.atan2(unbent.y(), unbent.x());
  }

  /** Rate of the deviation at sample k from the gyroscopes themselves, rad/s. */
  public double deviationRateRadPerS(int k) {
    return relative.rateHandRadPerS(k, z).z();
  }

  /** Derivative of the deviation at sample k by all parameters, for {@link #sdRad}. */
  public double[] deviationRow(int k) {
    return relative.turnAlong(k, z, Vector3.Z);
  }

  /** Derivative of the flexion at sample k by all parameters. */
  public double[] flexionRow(int k) {
    double deviation = deviationRad(k);
    Vector3 direction = new Vector3(Math.sin(deviation), Math.cos(deviation), 0);
    return relative.turnAlong(k, z, direction);
  }

  /** Angle above level at sample k of the forearm's long axis, or the hand's, rad. */
  public double elevationRad(int k, boolean ofHand) {
    return relative.elevationRad(k, z, ofHand);
  }

  /** Derivative of that angle at sample k by all parameters. */
  public double[] elevationRow(int k, boolean ofHand) {
    return relative.elevationRow(k, z, ofHand);
  }

  /** Standard deviation of a quantity by its derivative by all parameters. */
  public double sdRad(double[] row) {
    return Math.sqrt(Math.max(0, covarianceRad2(row, row)));
  }

  /** How far two quantities err together, by their derivatives by all parameters. */
  public double covarianceRad2(double[] a, double[] b) {
    int p = a.length;
    double sum = 0;
    for (int i = 0; i < p; i++) {
      for (int j = 0; j < p; j++) {
        sum += a[i] * covariance.data[i * p + j] * b[j];
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
