package steadyturn.fusion.wear.pelvis;

import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.strapdown.UnitMotion;

/**
 * The lever arm from a slow turn of the pelvis on the spot: the point that stays where it is while
 * the unit goes round it is mid-hip, within what a person wanders while turning.
 */
public final class TurnOnSpot {

  /** How far mid-hip wanders at random, m, alike over about a second (our assumption). */
  private static final double WANDER_SD_M = 0.006;

  /**
   * How far mid-hip moves along with the full turn, m (our assumption). A turn cannot tell such a
   * movement from a longer arm, so it must not be taken for smaller than players make it.
   */
  private static final double ALONG_SD_M = 0.015;

  /** Mean square of the misfit from which on the player wandered more than that (our choice). */
  private static final double LARGEST_MISFIT = 1.5;

  /** An arm so far from the expected comes by chance in one turn of a thousand. */
  private static final double LARGEST_SURPRISE = 0.999;

  private static final double WANDER_CORRELATION_S = 1.0;
  private static final double STEP_S = 0.25;

  /** Under this turn the step says too little to be used. */
  static final double LEAST_TURN_RAD = Math.toRadians(25);

  private TurnOnSpot() {}

  /** Largest turn away from the first attitude, rad; the step wants more than 25 deg. */
  public static double largestTurnRad(UnitMotion motion) {
    double largest = 0;
    for (int k = 0; k < motion.size(); k += 10) {
      double turn =
          motion.qLevelUnit(k).times(motion.qLevelUnit(0).conjugate()).rotationVector().norm();
      largest = Math.max(largest, turn);
    }
    return largest;
  }

  /**
   * Folds the step into the geometry.
   *
   * @return none where it does not fit: mid-hip wandered more than a person does, or the arm it
   *     shows is too far from what the player's sizes say
   */
  public static Optional<PelvisGeometry> fold(PelvisGeometry geometry, UnitMotion motion) {
    if (largestTurnRad(motion) < LEAST_TURN_RAD) {
      return Optional.empty();
    }
    int[] at = instants(motion);
    int m = 3 * at.length;
    DMatrixRMaj h = new DMatrixRMaj(m, 6);
    double[] residual = new double[m];
    Quaternion first = motion.qLevelUnit(0);
    for (int i = 0; i < at.length; i++) {
      Quaternion q = motion.qLevelUnit(at[i]);
      Vector3 arm = geometry.leverArmUnitM();
      Vector3 moved = motion.positionM(at[i]).plus(q.rotate(arm)).minus(first.rotate(arm));
      for (int axis = 0; axis < 3; axis++) {
        residual[3 * i + axis] = -moved.get(axis);
        for (int c = 0; c < 3; c++) {
          Vector3 e = Vector3.axis(c);
          h.set(3 * i + axis, 3 + c, q.rotate(e).minus(first.rotate(e)).get(axis));
        }
      }
    }
    DMatrixRMaj noise = wander(motion, at);
    addSensor(noise, motion, at);
    Update update = Update.of(geometry.covariance(), h, noise, residual);
    return update.misfit() > LARGEST_MISFIT || update.surprise() > LARGEST_SURPRISE
        ? Optional.empty()
        : Optional.of(geometry.moved(update));
  }

  private static int[] instants(UnitMotion motion) {
    double lengthS = motion.timeS(motion.size() - 1) - motion.timeS(0);
    int n = Math.max(3, Math.min(40, (int) (lengthS / STEP_S)));
    int[] at = new int[n];
    for (int i = 0; i < n; i++) {
      at[i] = (int) ((long) (motion.size() - 1) * (i + 1) / n);
    }
    return at;
  }

  /**
   * Covariance of where mid-hip really is: wandering at random, and moving along with the turn (to
   * one side on the way there and to the other on the way back, or the same way on both).
   */
  private static DMatrixRMaj wander(UnitMotion motion, int[] at) {
    DMatrixRMaj noise = new DMatrixRMaj(3 * at.length, 3 * at.length);
    double largest = largestTurnRad(motion);
    for (int i = 0; i < at.length; i++) {
      for (int j = 0; j < at.length; j++) {
        double apartS = Math.abs(motion.timeS(at[i]) - motion.timeS(at[j]));
        double turnI = turnRad(motion, at[i]) / largest;
        double turnJ = turnRad(motion, at[j]) / largest;
        double random = WANDER_SD_M * WANDER_SD_M * Math.exp(-apartS / WANDER_CORRELATION_S);
        double along = ALONG_SD_M * ALONG_SD_M * (turnI * turnJ + Math.abs(turnI * turnJ));
        for (int axis = 0; axis < 3; axis++) {
          noise.set(3 * i + axis, 3 * j + axis, random + along + (i == j ? 1e-8 : 0));
        }
      }
    }
    return noise;
  }

  private static double turnRad(UnitMotion motion, int k) {
    return motion.qLevelUnit(k).times(motion.qLevelUnit(0).conjugate()).twistAboutZRad();
  }

  /** What the unit's own errors leave in its place, from the covariance of the motion. */
  private static void addSensor(DMatrixRMaj noise, UnitMotion motion, int[] at) {
    DMatrixRMaj covariance = new DMatrixRMaj(motion.covariance());
    DMatrixRMaj j = new DMatrixRMaj(3 * at.length, motion.parameters());
    for (int i = 0; i < at.length; i++) {
      double[][] s = motion.sensitivity(at[i]);
      for (int axis = 0; axis < 3; axis++) {
        for (int p = 0; p < motion.parameters(); p++) {
          j.set(3 * i + axis, p, s[6 + axis][p]);
        }
      }
    }
    DMatrixRMaj jc = new DMatrixRMaj(j.numRows, covariance.numCols);
    CommonOps_DDRM.mult(j, covariance, jc);
    CommonOps_DDRM.multAddTransB(jc, j, noise);
  }
}
