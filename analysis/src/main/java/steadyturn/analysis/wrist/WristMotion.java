package steadyturn.analysis.wrist;

import java.util.Optional;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.attitude.LevelTrack;
import steadyturn.fusion.attitude.PeakRepair;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.SkinSlip;
import steadyturn.fusion.wear.TwoAxisJoint;
import steadyturn.fusion.wear.WristAlignment;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Cock and flexion of the lead wrist over one swing, at the forearm's samples. Cock is radial
 * deviation, towards the thumb positive on either arm; flexion is towards the palm. Angles since
 * address are against their mean over 250..30 ms before the takeaway.
 */
public final class WristMotion {

  private static final double BEFORE_TAKEAWAY_S = 1.2;
  private static final double AFTER_IMPACT_S = 1.6;
  // the hand of a standing player moves against its mean: our assumption
  private static final double TREMBLE_SD_DEG = 0.1;
  private static final double AFTER_IMPACT_SD_DEG = 2;
  // the arm begins to move a tenth of a second before the takeaway, and its push would tilt the
  // level
  private static final double LEVEL_FROM_S = 0.75;
  private static final double LEVEL_TO_S = 0.12;
  private static final double REFERENCE_FROM_S = 0.25;
  private static final double REFERENCE_TO_S = 0.03;
  private static final double RATE_SPAN_S = 0.02;
  private static final double BEFORE_BLOW_S = 0.004;

  private final TwoAxisJoint joint;
  private final int sign;
  private final double[] cockRad;
  private final double[] cockRateRadPerS;
  private final double referenceRad;
  private final double[] referenceRow;
  private final double referenceFlexionRad;
  private final SkinSlip skin;
  private final PeakRepair.Repaired forearmRepair;
  private final PeakRepair.Repaired handRepair;

  private WristMotion(
      TwoAxisJoint joint,
      int sign,
      SkinSlip skin,
      PeakRepair.Repaired forearmRepair,
      PeakRepair.Repaired handRepair) {
    this.joint = joint;
    this.sign = sign;
    this.skin = skin;
    this.forearmRepair = forearmRepair;
    this.handRepair = handRepair;
    this.cockRad = new double[joint.size()];
    this.cockRateRadPerS = new double[joint.size()];
    for (int k = 0; k < cockRad.length; k++) {
      cockRad[k] = -sign * joint.deviationRad(k);
      cockRateRadPerS[k] = -sign * joint.deviationRateRadPerS(k);
    }
    double takeawayS = skin.takeawayS();
    int from = Math.min(indexAt(takeawayS - REFERENCE_FROM_S), joint.size() - 1);
    int to = Math.max(from + 1, indexAt(takeawayS - REFERENCE_TO_S));
    double cock = 0;
    double flexion = 0;
    for (int k = from; k < to; k++) {
      cock += cockRad[k] / (to - from);
      flexion += joint.flexionRad(k) / (to - from);
    }
    this.referenceRad = cock;
    this.referenceFlexionRad = flexion;
    this.referenceRow = cockRow((from + to) / 2);
  }

  /**
   * Fits one swing; empty when a unit or an event is missing.
   *
   * @param syncSdS standard deviation of the hand's clock against the forearm's, s
   */
  public static Optional<WristMotion> of(
      Recording recording,
      RestBiases biases,
      Swing swing,
      WristAlignment alignment,
      double syncSdS) {
    Optional<UnitStream> forearm = recording.unit(BodyPoint.LEAD_FOREARM);
    Optional<UnitStream> hand = recording.unit(BodyPoint.LEAD_HAND);
    Optional<EventTime> takeaway = swing.event(SwingEvent.TAKEAWAY);
    Optional<EventTime> top = swing.event(SwingEvent.TOP);
    Optional<EventTime> impact = swing.event(SwingEvent.IMPACT);
    if (forearm.isEmpty()
        || hand.isEmpty()
        || takeaway.isEmpty()
        || top.isEmpty()
        || impact.isEmpty()) {
      return Optional.empty();
    }
    double fromS = Math.max(swing.startS(), takeaway.get().timeS() - BEFORE_TAKEAWAY_S);
    double toS = Math.min(swing.endS(), impact.get().timeS() + AFTER_IMPACT_S);
    UnitStream forearmStretch = forearm.get().between(fromS, toS);
    UnitStream handStretch = hand.get().between(fromS, toS);
    if (forearmStretch.size() < 50 || handStretch.size() < 50) {
      return Optional.empty();
    }
    SkinSlip skin = new SkinSlip(takeaway.get().timeS(), top.get().timeS(), impact.get().timeS());
    return Optional.of(
        fit(
            forearmStretch,
            handStretch,
            biases,
            skin,
            alignment,
            syncSdS,
            recording.player().handed().sign()));
  }

  private static WristMotion fit(
      UnitStream forearm,
      UnitStream hand,
      RestBiases biases,
      SkinSlip skin,
      WristAlignment alignment,
      double syncSdS,
      int sign) {
    PeakRepair.Repaired forearmRepair = PeakRepair.repair(forearm);
    PeakRepair.Repaired handRepair = PeakRepair.repair(hand);
    LevelTrack forearmTrack = track(forearmRepair, biases, skin.takeawayS());
    LevelTrack handTrack = track(handRepair, biases, skin.takeawayS());
    TwoAxisJoint joint =
        TwoAxisJoint.fit(
            forearmTrack,
            handTrack,
            alignment,
            skin,
            skin.takeawayS() - REFERENCE_FROM_S,
            skin.impactS() - BEFORE_BLOW_S,
            syncSdS);
    return new WristMotion(joint, sign, skin, forearmRepair, handRepair);
  }

  private static LevelTrack track(
      PeakRepair.Repaired repaired, RestBiases biases, double takeawayS) {
    UnitStream stream = repaired.stream();
    return LevelTrack.of(
        repaired,
        biases.radPerS(stream.point()),
        LevelTrack.Spreads.of(stream),
        takeawayS - LEVEL_FROM_S,
        takeawayS - LEVEL_TO_S);
  }

  /** Number of samples. */
  public int size() {
    return cockRad.length;
  }

  public double timeS(int k) {
    return joint.timeS(k);
  }

  /** First sample at or after the instant. */
  public int indexAt(double timeS) {
    int low = 0;
    int high = joint.size();
    while (low < high) {
      int middle = (low + high) / 2;
      if (joint.timeS(middle) < timeS) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Cock since address at sample k, deg. */
  public double cockDeg(int k) {
    return Math.toDegrees(cockRad[k] - referenceRad);
  }

  /** Cock from the straight wrist at sample k, deg: as good as the alignment of the units. */
  public double absoluteCockDeg(int k) {
    return Math.toDegrees(cockRad[k]);
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
    return afterImpact(k, Math.toDegrees(joint.sdRad(joint.flexionRow(k))));
  }

  /** The skin slips anew after impact, which the fit does not follow. */
  private double afterImpact(int k, double sdDeg) {
    return timeS(k) > skin.impactS() + 0.02 ? Math.hypot(sdDeg, AFTER_IMPACT_SD_DEG) : sdDeg;
  }

  /** Rate of cocking at sample k, deg/s; negative while the wrist lets go. */
  public double cockRateDegPerS(int k) {
    return Math.toDegrees(cockRateRadPerS[k]);
  }

  /** Cock since address at an instant, deg, by a straight line between samples. */
  public double cockDegAt(double timeS) {
    int k = Math.max(1, Math.min(size() - 1, indexAt(timeS)));
    double part = (timeS - timeS(k - 1)) / (timeS(k) - timeS(k - 1));
    double within = Math.max(0, Math.min(1, part));
    return cockDeg(k - 1) + within * (cockDeg(k) - cockDeg(k - 1));
  }

  private double[] cockRow(int k) {
    double[] row = joint.deviationRow(k);
    for (int i = 0; i < row.length; i++) {
      row[i] *= -sign;
    }
    return row;
  }

  /** Standard deviation of the cock since address, deg. */
  public double cockSdDeg(int k) {
    double sd = Math.hypot(TREMBLE_SD_DEG, combinedSdDeg(new int[] {k}, new double[] {1}));
    return afterImpact(k, sd);
  }

  /** Standard deviation of the cock from the straight wrist, deg. */
  public double absoluteCockSdDeg(int k) {
    return afterImpact(k, Math.toDegrees(joint.sdRad(cockRow(k))));
  }

  /** Standard deviation of the flexion since address, deg. */
  public double flexionSdDeg(int k) {
    double[] row = joint.flexionRow(k);
    double[] before = joint.flexionRow(indexAt(skin.takeawayS() - REFERENCE_FROM_S));
    for (int i = 0; i < row.length; i++) {
      row[i] -= before[i];
    }
    return afterImpact(k, Math.hypot(TREMBLE_SD_DEG, Math.toDegrees(joint.sdRad(row))));
  }

  /** Standard deviation of the rate of cocking around sample k, deg/s. */
  double cockRateSdDegPerS(int k) {
    int from = Math.max(0, indexAt(timeS(k) - RATE_SPAN_S / 2));
    int to = Math.min(size() - 1, indexAt(timeS(k) + RATE_SPAN_S / 2));
    return changeSdDeg(from, to) / (timeS(to) - timeS(from));
  }

  /** Standard deviation of the change of the cock between two samples, deg. */
  public double changeSdDeg(int from, int to) {
    return combinedSdDeg(new int[] {from, to}, new double[] {-1, 1});
  }

  /** Standard deviation of a weighted sum of cocks since address, deg. */
  double combinedSdDeg(int[] samples, double[] weights) {
    double[] row = new double[referenceRow.length];
    for (int s = 0; s < samples.length; s++) {
      double[] one = cockRow(samples[s]);
      for (int i = 0; i < row.length; i++) {
        row[i] += weights[s] * (one[i] - referenceRow[i]);
      }
    }
    return Math.toDegrees(joint.sdRad(row));
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
    return forearmRepair.angleSdRad(timeS) > 0 || handRepair.angleSdRad(timeS) > 0;
  }

  /** Whether a rate cut beyond repair lies between takeaway and the instant. */
  public boolean cutBeyondRepairBefore(double timeS) {
    return forearmRepair.beyondBefore(timeS) || handRepair.beyondBefore(timeS);
  }
}
