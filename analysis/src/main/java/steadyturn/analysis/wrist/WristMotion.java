package steadyturn.analysis.wrist;

import java.util.Optional;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.fusion.attitude.PeakRepair;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.SkinSlip;
import steadyturn.fusion.wear.wrist.HandOnShaft;
import steadyturn.fusion.wear.wrist.TwoAxisJoint;
import steadyturn.fusion.wear.wrist.WristSteps;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.TimeAxis;

/**
 * Cock and flexion of the lead wrist over one swing, at the forearm's samples. Cock is radial
 * deviation, towards the thumb positive on either arm; flexion is towards the palm. Angles since
 * address are against their mean over 250..30 ms before the takeaway.
 */
public final class WristMotion {

  static final double REFERENCE_FROM_S = 0.25;
  private static final double REFERENCE_TO_S = 0.03;
  // the hand of a standing player moves against its mean: our assumption
  private static final double TREMBLE_SD_DEG = 0.1;
  private static final double RATE_SPAN_S = 0.02;

  private final TwoAxisJoint joint;
  private final int sign;
  private final double[][] cockRows;
  private final double referenceRad;
  private final double[] referenceRow;
  private final double referenceFlexionRad;
  private final SkinSlip skin;
  private final Source source;

  /**
   * What the motion was read from.
   *
   * @param point the hand, or the club shaft in its place
   * @param absolute whether angles from the straight wrist have a meaning
   * @param syncSdS spread of its clock against the forearm's, s
   * @param against the shaft's view of the hand, where the two disagree
   */
  record Source(
      BodyPoint point,
      boolean absolute,
      double syncSdS,
      PeakRepair.Repaired forearm,
      PeakRepair.Repaired other,
      Optional<HandOnShaft> against) {}

  WristMotion(TwoAxisJoint joint, int sign, SkinSlip skin, Source source) {
    this.joint = joint;
    this.sign = sign;
    this.skin = skin;
    this.source = source;
    this.cockRows = new double[joint.size()][0];
    int from = Math.min(indexAt(skin.takeawayS() - REFERENCE_FROM_S), joint.size() - 1);
    int to = Math.max(from + 1, indexAt(skin.takeawayS() - REFERENCE_TO_S));
    double cock = 0;
    double flexion = 0;
    for (int k = from; k < to; k++) {
      cock += cockRad(k) / (to - from);
      flexion += joint.flexionRad(k) / (to - from);
    }
    this.referenceRad = cock;
    this.referenceFlexionRad = flexion;
    this.referenceRow = cockRow((from + to) / 2);
  }

  /** Fits one swing; empty when a unit or an event is missing. */
  public static Optional<WristMotion> of(
      Recording recording, RestBiases biases, Swing swing, WristSteps worn, WristClocks clocks) {
    return WristFit.of(recording, biases, swing, worn, clocks);
  }

  /** Whether the club shaft stood in for the hand. */
  public boolean fromShaft() {
    return source.point() == BodyPoint.CLUB_SHAFT;
  }

  /** Whether a shaft unit says that the hand unit slipped, or that the grip moved. */
  public boolean handMovesOnShaft() {
    return source.against().isPresent();
  }

  /** Whether angles from the straight wrist have a meaning. */
  public boolean absolute() {
    return source.absolute();
  }

  double syncSdS() {
    return source.syncSdS();
  }

  /** Number of samples. */
  public int size() {
    return joint.size();
  }

  public double timeS(int k) {
    return joint.timeS(k);
  }

  /** First sample at or after the instant. */
  public int indexAt(double timeS) {
    return TimeAxis.indexAt(joint::timeS, joint.size(), timeS);
  }

  private double cockRad(int k) {
    return -sign * joint.deviationRad(k);
  }

  /** Cock since address at sample k, deg. */
  public double cockDeg(int k) {
    return Math.toDegrees(cockRad(k) - referenceRad);
  }

  /** Cock from the straight wrist at sample k, deg: as good as the alignment of the units. */
  public double absoluteCockDeg(int k) {
    return Math.toDegrees(cockRad(k));
  }

  /** Flexion since address at sample k, deg. */
  public double flexionDeg(int k) {
    return Math.toDegrees(joint.flexionRad(k) - referenceFlexionRad);
  }

  /** Flexion from the straight wrist at sample k, deg. */
  public double absoluteFlexionDeg(int k) {
    return Math.toDegrees(joint.flexionRad(k));
  }

  /** Standard deviation of the flexion from the straight wrist, deg. */
  public double absoluteFlexionSdDeg(int k) {
    return widened(Math.toDegrees(joint.sdRad(joint.flexionRow(k))), againstFlexionDeg(k));
  }

  /** Where hand and shaft turn against each other, the truth lies anywhere between the two. */
  private static double widened(double sdDeg, double againstDeg) {
    return Math.hypot(sdDeg, againstDeg / 2);
  }

  private double againstDeg(int k) {
    return source.against().map(a -> Math.toDegrees(a.turnHandRad(timeS(k)).z())).orElse(0.0);
  }

  private double againstFlexionDeg(int k) {
    return source.against().map(a -> Math.toDegrees(a.turnHandRad(timeS(k)).y())).orElse(0.0);
  }

  /** Rate of cocking at sample k, deg/s; negative while the wrist lets go. */
  public double cockRateDegPerS(int k) {
    return Math.toDegrees(-sign * joint.deviationRateRadPerS(k));
  }

  /** Cock since address at an instant, deg, by a straight line between samples. */
  public double cockDegAt(double timeS) {
    int k = Math.max(1, Math.min(size() - 1, indexAt(timeS)));
    double part = (timeS - timeS(k - 1)) / (timeS(k) - timeS(k - 1));
    double within = Math.max(0, Math.min(1, part));
    return cockDeg(k - 1) + within * (cockDeg(k) - cockDeg(k - 1));
  }

  private double[] cockRow(int k) {
    if (cockRows[k].length == 0) {
      double[] row = joint.deviationRow(k);
      for (int i = 0; i < row.length; i++) {
        row[i] *= -sign;
      }
      cockRows[k] = row;
    }
    return cockRows[k];
  }

  /** Standard deviation of the cock since address, deg. */
  public double cockSdDeg(int k) {
    return Math.hypot(TREMBLE_SD_DEG, combinedSdDeg(new int[] {k}, new double[] {1}));
  }

  /** Standard deviation of the cock from the straight wrist, deg. */
  public double absoluteCockSdDeg(int k) {
    return widened(Math.toDegrees(joint.sdRad(cockRow(k))), againstDeg(k));
  }

  /** Standard deviation of the cock at an event that was found where a bone is level, deg. */
  double cockSdDegAtLevel(int k, EventTime at, boolean ofHand) {
    double[] row = cockRow(k).clone();
    for (int i = 0; i < row.length; i++) {
      row[i] -= absolute() ? 0 : referenceRow[i];
    }
    double sd = absolute() ? absoluteCockSdDeg(k) : cockSdDeg(k);
    return CockAtLevel.sdDeg(joint, k, at, row, sd, cockRateDegPerS(k), ofHand);
  }

  /** Standard deviation of the flexion since address, deg. */
  public double flexionSdDeg(int k) {
    double[] row = joint.flexionRow(k);
    double[] before = joint.flexionRow(indexAt(skin.takeawayS() - REFERENCE_FROM_S));
    for (int i = 0; i < row.length; i++) {
      row[i] -= before[i];
    }
    double sd = Math.hypot(TREMBLE_SD_DEG, Math.toDegrees(joint.sdRad(row)));
    return widened(sd, againstFlexionDeg(k));
  }

  /** Standard deviation of the rate of cocking around sample k, deg/s. */
  double cockRateSdDegPerS(int k) {
    int from = Math.max(0, indexAt(timeS(k) - RATE_SPAN_S / 2));
    int to = Math.min(size() - 1, indexAt(timeS(k) + RATE_SPAN_S / 2));
    return changeSdDeg(from, to) / (timeS(to) - timeS(from));
  }

  /** Standard deviation of the slope of that rate around sample k, deg/s^2. */
  double cockBendSdDegPerS2(int k) {
    int from = Math.max(0, indexAt(timeS(k) - RATE_SPAN_S));
    int to = Math.min(size() - 1, indexAt(timeS(k) + RATE_SPAN_S));
    double halfS = (timeS(to) - timeS(from)) / 2;
    double part = (timeS(k) - timeS(from)) / (timeS(to) - timeS(from));
    double[] weights = {2 * (1 - part), -2, 2 * part};
    return combinedSdDeg(new int[] {from, k, to}, weights) / (halfS * halfS);
  }

  /** Standard deviation of the change of the cock between two samples, deg. */
  public double changeSdDeg(int from, int to) {
    return combinedSdDeg(new int[] {from, to}, new double[] {-1, 1});
  }

  /** Standard deviation of a weighted sum of cocks since address, deg. */
  double combinedSdDeg(int[] samples, double[] weights) {
    double[] row = new double[referenceRow.length];
    double against = 0;
    for (int s = 0; s < samples.length; s++) {
      double[] one = cockRow(samples[s]);
      for (int i = 0; i < row.length; i++) {
        row[i] += weights[s] * (one[i] - referenceRow[i]);
      }
      against += weights[s] * againstDeg(samples[s]);
    }
    return Math.hypot(Math.toDegrees(joint.sdRad(row)), against / 2);
  }

  /** How badly the two units violate the wrist's two axes, RMS, deg. */
  public double constraintRmsDeg() {
    return Math.toDegrees(joint.residualRmsRad());
  }

  /** Shift of the hand's clock that the fit found, s. */
  public double clockShiftS() {
    return joint.clockShiftS();
  }

  boolean repairedBefore(double timeS) {
    return source.forearm().angleSdRad(timeS) > 0 || source.other().angleSdRad(timeS) > 0;
  }

  /** Whether a rate cut beyond repair lies between takeaway and the instant. */
  public boolean cutBeyondRepairBefore(double timeS) {
    return source.forearm().beyondBefore(timeS) || source.other().beyondBefore(timeS);
  }
}
