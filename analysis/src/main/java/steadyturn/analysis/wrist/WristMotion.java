package steadyturn.analysis.wrist;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
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

  private final TwoAxisJoint joint;
  private final int sign;
  private final TwoAxisJoint.@Nullable Angles[] angles;
  private final double referenceRad;
  private final double referenceFlexionRad;
  private final Source source;
  private final WristSpreads spreads;

  /**
   * What the motion was read from.
   *
   * @param point the hand, or the club shaft in its place
   * @param absolute whether angles from the straight wrist have a meaning
   * @param syncSdS spread of its clock against the forearm's, s
   * @param gaps what either of them did not show
   * @param against the shaft's view of the hand, where the two disagree
   */
  record Source(
      BodyPoint point,
      boolean absolute,
      double syncSdS,
      PeakRepair.Repaired forearm,
      PeakRepair.Repaired other,
      WristGaps gaps,
      Optional<HandOnShaft> against) {}

  WristMotion(TwoAxisJoint joint, int sign, SkinSlip skin, Source source) {
    this.joint = joint;
    this.sign = sign;
    this.source = source;
    this.angles = new TwoAxisJoint.Angles[joint.size()];
    int from = Math.min(indexAt(skin.takeawayS() - REFERENCE_FROM_S), joint.size() - 1);
    int to = Math.max(from + 1, indexAt(skin.takeawayS() - REFERENCE_TO_S));
    double cock = 0;
    double flexion = 0;
    for (int k = from; k < to; k++) {
      cock += cockRad(k) / (to - from);
      flexion += angles(k).flexionRad() / (to - from);
    }
    this.referenceRad = cock;
    this.referenceFlexionRad = flexion;
    this.spreads = new WristSpreads(this, joint, source.against(), (from + to) / 2, from);
  }

  /** Worked out for the samples that are asked for, once. */
  private TwoAxisJoint.Angles angles(int k) {
    TwoAxisJoint.Angles known = angles[k];
    if (known == null) {
      known = joint.angles(k);
      angles[k] = known;
    }
    return known;
  }

  private double cockRad(int k) {
    return -sign * angles(k).deviationRad();
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

  /** What the units did not show. */
  WristGaps gaps() {
    return source.gaps();
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
    return Math.toDegrees(angles(k).flexionRad() - referenceFlexionRad);
  }

  /** Flexion from the straight wrist at sample k, deg. */
  public double absoluteFlexionDeg(int k) {
    return Math.toDegrees(angles(k).flexionRad());
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

  /** How well all this is known. */
  public WristSpreads spreads() {
    return spreads;
  }

  /** 1 where the deviation's own sign is turned for the cock, -1 where it is not. */
  int sign() {
    return sign;
  }

  /** How badly the two units violate the wrist's two axes, RMS, deg. */
  public double constraintRmsDeg() {
    return Math.toDegrees(joint.residualRmsRad());
  }

  boolean repairedBefore(double timeS) {
    return source.forearm().angleSdRad(timeS) > 0 || source.other().angleSdRad(timeS) > 0;
  }

  /** Whether a rate cut beyond repair lies between takeaway and the instant. */
  public boolean cutBeyondRepairBefore(double timeS) {
    return source.forearm().beyondBefore(timeS) || source.other().beyondBefore(timeS);
  }
}
