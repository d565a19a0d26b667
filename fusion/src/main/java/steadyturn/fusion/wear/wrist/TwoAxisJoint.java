package steadyturn.fusion.wear.wrist;

import java.util.Arrays;
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

  /** The rounds end with a step that moves nothing by more of its sigma; the next is far less. */
  private static final double SMALL_STEP = 0.003;

  private static final double HEADING_SCALE_RAD = 1;

  private final RelativeAttitude relative;
  private final DMatrixRMaj covariance;
  private final double[] z;
  private final double residualRmsRad;
  private final double[] flexionRad;
  private final double[] deviationRad;

  private TwoAxisJoint(
      RelativeAttitude relative, double[] z, DMatrixRMaj covariance, double residualRmsRad) {
    this.relative = relative;
    this.z = z;
    this.covariance = covariance;
    this.residualRmsRad = residualRmsRad;
    this.flexionRad = new double[relative.size()];
    this.deviationRad = new double[relative.size()];
    Arrays.fill(flexionRad, Double.NaN);
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
    double moved = Double.POSITIVE_INFINITY;
    for (int round = 0; round < ROUNDS && moved > SMALL_STEP; round++) {
      moved = step(relative, rows, z, weight, covariance);
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
   * What is to vanish is a cos + b sin + c of the heading, so its squares are summed up once.
   */
  private static double startHeading(RelativeAttitude relative, int[] rows) {
    double[] z = new double[relative.parameters()];
    RelativeAttitude.Both first = relative.both(rows[0], z);
    double[] sums = new double[6];
    for (int k : rows) {
      addSquares(relative.both(k, z), sums);
    }
    double best = Double.POSITIVE_INFINITY;
    double found = 0;
    for (int i = 0; i < 60; i++) {
      double headingRad = 2 * Math.PI * i / 60;
      double c = Math.cos(headingRad);
      double s = Math.sin(headingRad);
      double cost =
          c * c * sums[0]
              + s * s * sums[1]
              + sums[2]
              + 2 * (c * s * sums[3] + c * sums[4] + s * sums[5]);
      Quaternion q = first.qForearmHand(headingRad);
      if (q.rotate(Vector3.X).x() > 0.2 && q.rotate(Vector3.Z).z() > 0.2 && cost < best) {
        best = cost;
        found = headingRad;
      }
    }
    return found;
  }

  private static void addSquares(RelativeAttitude.Both both, double[] sums) {
    Vector3 forearmY = both.qLevelForearm().rotate(Vector3.Y);
    Vector3 handZ = both.qLevelHand().rotate(Vector3.Z);
    double a = forearmY.x() * handZ.x() + forearmY.y() * handZ.y();
    double b = forearmY.y() * handZ.x() - forearmY.x() * handZ.y();
    double c = forearmY.z() * handZ.z();
    sums[0] += a * a;
    sums[1] += b * b;
    sums[2] += c * c;
    sums[3] += a * b;
    sums[4] += a * c;
    sums[5] += b * c;
  }

  private static double rms(RelativeAttitude relative, int[] rows, double[] z) {
    double sum = 0;
    for (int k : rows) {
      double r = relative.qForearmHand(k, z).rotate(Vector3.Z).y();
      sum += r * r;
    }
    return Math.sqrt(sum / rows.length);
  }

  /**
   * One round of Gauss-Newton; the heading alone has no prior. Answers the length of the step: no
   * angle moved by more of its own sigma.
   */
  private static double step(
      RelativeAttitude relative, int[] rows, double[] z, double weight, DMatrixRMaj covariance) {
    int p = z.length;
    DMatrixRMaj normal = CommonOps_DDRM.identity(p);
    normal.set(relative.headingAt(), relative.headingAt(), 1e-6);
    DMatrixRMaj right = new DMatrixRMaj(p, 1);
    for (int i = 0; i < p; i++) {
      right.set(i, i == relative.headingAt() ? 0 : -z[i]);
    }
    for (int k : rows) {
      RelativeAttitude.Both both = relative.both(k, z);
      Quaternion q = both.qForearmHand(z[relative.headingAt()]);
      double residual = q.rotate(Vector3.Z).y();
      // y of hand z moves with a small turn phi of the hand as phi_y x_y - phi_x y_y
      Vector3 direction = new Vector3(-q.rotate(Vector3.Y).y(), q.rotate(Vector3.X).y(), 0);
      addRow(relative.turnAlong(k, z, both, direction), residual, weight, normal, right);
    }
    for (int i = 0; i < p; i++) {
      for (int j = 0; j < i; j++) {
        normal.data[j * p + i] = normal.data[i * p + j];
      }
    }
    CommonOps_DDRM.invert(normal, covariance);
    DMatrixRMaj change = new DMatrixRMaj(p, 1);
    CommonOps_DDRM.mult(covariance, right, change);
    for (int i = 0; i < p; i++) {
      z[i] += change.data[i];
    }
    return Math.sqrt(Math.max(0, CommonOps_DDRM.dot(change, right)));
  }

  /** Fills the lower half of the normal matrix. */
  private static void addRow(
      double[] row, double residual, double weight, DMatrixRMaj normal, DMatrixRMaj right) {
    int p = row.length;
    for (int i = 0; i < p; i++) {
      double w = weight * row[i];
      right.data[i] -= w * residual;
      for (int j = 0; j <= i; j++) {
        normal.data[i * p + j] += w * row[j];
      }
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
    know(k);
    return flexionRad[k];
  }

  /** Angle about hand z, rad; its sign depends on the side of the arm. */
  public double deviationRad(int k) {
    know(k);
    return deviationRad[k];
  }

  /** Both angles are worked out when first asked for. */
  private void know(int k) {
    if (Double.isNaN(flexionRad[k])) {
      Quaternion q = qForearmHand(k);
      Vector3 handZ = q.rotate(Vector3.Z);
      double flexion = Math.atan2(handZ.x(), handZ.z());
      Vector3 unbent = Quaternion.aboutY(-flexion).rotate(q.rotate(Vector3.X));
      deviationRad[k] = Math.atan2(unbent.y(), unbent.x());
      flexionRad[k] = flexion;
    }
  }

  /** Rate of the deviation at sample k from the gyroscopes themselves, rad/s. */
  public double deviationRateRadPerS(int k) {
    return relative.rateHandRadPerS(k, z).z();
  }

  /** Derivative of the deviation at sample k by all parameters, for {@link #sdRad}. */
  public double[] deviationRow(int k) {
    return relative.turnAlong(k, z, relative.both(k, z), Vector3.Z);
  }

  /** Derivative of the flexion at sample k by all parameters. */
  public double[] flexionRow(int k) {
    double deviation = deviationRad(k);
    Vector3 direction = new Vector3(Math.sin(deviation), Math.cos(deviation), 0);
    return relative.turnAlong(k, z, relative.both(k, z), direction);
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
      double part = 0;
      for (int j = 0; j < p; j++) {
        part += covariance.data[i * p + j] * b[j];
      }
      sum += a[i] * part;
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
