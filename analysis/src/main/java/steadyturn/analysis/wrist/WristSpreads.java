package steadyturn.analysis.wrist;

import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import steadyturn.analysis.swing.EventTime;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.wrist.HandOnShaft;
import steadyturn.fusion.wear.wrist.TwoAxisJoint;

/**
 * How well the angles of a wrist are known: standard deviations of cock and flexion, of their
 * changes and rates.
 */
public final class WristSpreads {

  // the hand of a standing player moves against its mean: our assumption
  private static final double TREMBLE_SD_DEG = 0.1;
  private static final double RATE_SPAN_S = 0.02;
  // the skin under either unit follows the wrist by 3 % of its way: our assumption
  private static final double PULLED_PART = 0.03 * Math.sqrt(2);

  private final WristMotion motion;
  private final TwoAxisJoint joint;
  private final Optional<HandOnShaft> against;
  private final double[] @Nullable [] cockRows;
  private final double[] cockReference;
  private final double[] flexionReference;

  /**
   * Spreads of one motion.
   *
   * @param against the shaft's view of the hand, where the two disagree
   * @param cockFrom sample of the address that the cock is taken from
   * @param flexionFrom sample of the address that the flexion is taken from
   */
  WristSpreads(
      WristMotion motion,
      TwoAxisJoint joint,
      Optional<HandOnShaft> against,
      int cockFrom,
      int flexionFrom) {
    this.motion = motion;
    this.joint = joint;
    this.against = against;
    this.cockRows = new double[joint.size()][];
    this.cockReference = joint.deviationRow(cockFrom);
    this.flexionReference = joint.flexionRow(flexionFrom);
  }

  /** Derivative of the deviation, worked out once for the samples that are asked for. */
  private double[] cockRow(int k) {
    double[] known = cockRows[k];
    if (known == null) {
      known = joint.deviationRow(k);
      cockRows[k] = known;
    }
    return known;
  }

  /** Where hand and shaft turn against each other, the truth lies anywhere between the two. */
  private static double widened(double sdDeg, double againstDeg) {
    return Math.hypot(sdDeg, againstDeg / 2);
  }

  private double againstDeg(int k, ToDoubleFunction<Vector3> axis) {
    return against
        .map(a -> Math.toDegrees(axis.applyAsDouble(a.turnHandRad(motion.timeS(k)))))
        .orElse(0.0);
  }

  /** Of the cock since address, deg. */
  public double cockDeg(int k) {
    double sd = Math.hypot(TREMBLE_SD_DEG, combinedDeg(new int[] {k}, new double[] {1}));
    return Math.hypot(sd, PULLED_PART * motion.cockDeg(k));
  }

  /** Of the cock from the straight wrist, deg. */
  double absoluteCockDeg(int k) {
    double sd = Math.toDegrees(joint.sdRad(cockRow(k)));
    double pulled = PULLED_PART * motion.absoluteCockDeg(k);
    return widened(Math.hypot(sd, pulled), againstDeg(k, Vector3::z));
  }

  /** Of the cock at an event that was found where a bone is level, deg. */
  double cockAtLevelDeg(int k, EventTime at, boolean ofHand) {
    double[] row = cockRow(k).clone();
    for (int i = 0; i < row.length; i++) {
      row[i] = -motion.sign() * (row[i] - (motion.absolute() ? 0 : cockReference[i]));
    }
    double sd = motion.absolute() ? absoluteCockDeg(k) : cockDeg(k);
    return CockAtLevel.sdDeg(joint, k, at, row, sd, motion.cockRateDegPerS(k), ofHand);
  }

  /** Of the flexion since address, deg. */
  double flexionDeg(int k) {
    double[] row = joint.flexionRow(k);
    for (int i = 0; i < row.length; i++) {
      row[i] -= flexionReference[i];
    }
    double sd = Math.hypot(TREMBLE_SD_DEG, Math.toDegrees(joint.sdRad(row)));
    return widened(sd, againstDeg(k, Vector3::y));
  }

  /** Of the flexion from the straight wrist, deg. */
  double absoluteFlexionDeg(int k) {
    double sd = Math.toDegrees(joint.sdRad(joint.flexionRow(k)));
    return widened(sd, againstDeg(k, Vector3::y));
  }

  /** Of the rate of cocking around sample k, deg/s. */
  double cockRateDegPerS(int k) {
    int from = Math.max(0, motion.indexAt(motion.timeS(k) - RATE_SPAN_S / 2));
    int to = Math.min(motion.size() - 1, motion.indexAt(motion.timeS(k) + RATE_SPAN_S / 2));
    return changeDeg(from, to) / (motion.timeS(to) - motion.timeS(from));
  }

  /** Of the slope of that rate around sample k, deg/s^2. */
  double cockBendDegPerS2(int k) {
    int from = Math.max(0, motion.indexAt(motion.timeS(k) - RATE_SPAN_S));
    int to = Math.min(motion.size() - 1, motion.indexAt(motion.timeS(k) + RATE_SPAN_S));
    double halfS = (motion.timeS(to) - motion.timeS(from)) / 2;
    double part = (motion.timeS(k) - motion.timeS(from)) / (motion.timeS(to) - motion.timeS(from));
    double[] weights = {2 * (1 - part), -2, 2 * part};
    return combinedDeg(new int[] {from, k, to}, weights) / (halfS * halfS);
  }

  /** Of the change of the cock between two samples, deg. */
  public double changeDeg(int from, int to) {
    return combinedDeg(new int[] {from, to}, new double[] {-1, 1});
  }

  /** Of a weighted sum of cocks since address, deg. */
  double combinedDeg(int[] samples, double[] weights) {
    double[] row = new double[cockReference.length];
    double apart = 0;
    for (int s = 0; s < samples.length; s++) {
      double[] one = cockRow(samples[s]);
      for (int i = 0; i < row.length; i++) {
        row[i] += weights[s] * (one[i] - cockReference[i]);
      }
      apart += weights[s] * againstDeg(samples[s], Vector3::z);
    }
    return Math.hypot(Math.toDegrees(joint.sdRad(row)), apart / 2);
  }
}
