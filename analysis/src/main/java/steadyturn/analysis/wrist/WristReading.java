package steadyturn.analysis.wrist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleSupplier;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.ClockSpread;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.wrist.WristSteps;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;

/**
 * What one swing says about the lead wrist.
 *
 * @param measures all wrist measures, withheld ones with their reason
 * @param motion the course of the angles, where both units were worn
 * @param flags what a reader must know: {@code gyro-repaired}, {@code gyro-beyond-repair}, {@code
 *     wrist-units-disagree}, {@code wrist-from-shaft}, {@code hand-moves-on-shaft}
 */
public record WristReading(
    List<MeasureValue> measures, Optional<WristMotion> motion, List<String> flags) {

  // our choice: skin and play explain 3 deg; units on the wrong arm or slipping give far more
  private static final double DISAGREE_DEG = 7;

  /** No wrist comes near these: angles beyond are those of another arm, or of a lost heading. */
  private static final double MOST_COCK_DEG = 130;

  private static final double MOST_FLEXION_DEG = 120;

  private static final double LOOK_STEP_S = 0.02;

  private static final Reason FROM_SHAFT = Reason.of(MeasureReason.WRIST_FROM_SHAFT);

  public WristReading {
    measures = List.copyOf(measures);
    flags = List.copyOf(flags);
  }

  /**
   * Reads one swing.
   *
   * @param recording with the clocks of its units aligned
   * @param biases of that recording
   * @param worn how the units sit, from the wear steps or {@link WristSteps#NONE}
   * @param clocks how well the clocks are tied around the swing
   */
  public static WristReading of(
      Recording recording, RestBiases biases, Swing swing, WristSteps worn, WristClocks clocks) {
    Optional<WristMotion> motion = WristMotion.of(recording, biases, swing, worn, clocks);
    if (motion.isEmpty()) {
      return new WristReading(WristMeasures.withheld(why(recording, clocks)), motion, List.of());
    }
    if (swing.flags().contains("arm-gap") && disagree(motion.get())) {
      // what is left of the swing does not fit one wrist: the turn over the gap was not found
      return new WristReading(
          WristMeasures.withheld(Reason.of(MeasureReason.WRIST_GAP)),
          Optional.empty(),
          flags(motion.get(), swing));
    }
    if (!isWrist(motion.get(), swing)) {
      return new WristReading(
          WristMeasures.withheld(Reason.of(MeasureReason.NO_WRIST_BENDS_SO)),
          Optional.empty(),
          flags(motion.get(), swing));
    }
    List<MeasureValue> measures =
        new WristMeasures(motion.get(), swing)
            .all().stream()
                .map(m -> motion.get().fromShaft() ? m.estimated(FROM_SHAFT.and(m.why())) : m)
                .toList();
    return new WristReading(measures, motion, flags(motion.get(), swing));
  }

  /** Cock and flexion over the swing up to an instant; none where they are not known. */
  public List<Curve> curves(double toS) {
    return motion.map(m -> WristCurves.of(m, toS)).orElse(List.of());
  }

  /** The grip may give way between hand and shaft, so such a value is an estimate. */
  private static Reason why(Recording recording, WristClocks clocks) {
    if (clocks.handSdS() > ClockSpread.LOOSEST_S) {
      return Reason.of(MeasureReason.CLOCK_LOOSE);
    }
    boolean forearm = recording.unit(BodyPoint.LEAD_FOREARM).isPresent();
    boolean hand = recording.unit(BodyPoint.LEAD_HAND).isPresent();
    boolean shaft = recording.unit(BodyPoint.CLUB_SHAFT).isPresent();
    if (forearm && (hand || shaft)) {
      return Reason.of(hand ? MeasureReason.HAND_NOT_THROUGH : MeasureReason.SHAFT_NOT_THROUGH);
    }
    if (forearm) {
      return Reason.of(MeasureReason.NEEDS_HAND);
    }
    return hand
        ? Reason.of(MeasureReason.NEEDS_FOREARM_BESIDE_HAND)
        : Reason.of(MeasureReason.NEEDS_FOREARM_AND_HAND);
  }

  /** Whether all angles since address, up to impact, may be such as a wrist can have. */
  private static boolean isWrist(WristMotion motion, Swing swing) {
    double toS = swing.event(SwingEvent.IMPACT).map(EventTime::timeS).orElse(swing.endS());
    for (double t = motion.timeS(0); t < toS; t += LOOK_STEP_S) {
      int k = Math.min(motion.size() - 1, motion.indexAt(t));
      if (isSurelyBeyond(motion.cockDeg(k), MOST_COCK_DEG, () -> motion.spreads().cockDeg(k))
          || isSurelyBeyond(
              motion.flexionDeg(k), MOST_FLEXION_DEG, () -> motion.spreads().flexionDeg(k))) {
        return false;
      }
    }
    return true;
  }

  /** By two spreads; behind a gap an angle may be far off and known to be so. */
  private static boolean isSurelyBeyond(double deg, double mostDeg, DoubleSupplier sdDeg) {
    return Math.abs(deg) > mostDeg && Math.abs(deg) > mostDeg + 2 * sdDeg.getAsDouble();
  }

  private static boolean disagree(WristMotion motion) {
    return motion.constraintRmsDeg() > DISAGREE_DEG;
  }

  private static List<String> flags(WristMotion motion, Swing swing) {
    double endS = swing.timeS(SwingEvent.IMPACT).orElse(swing.endS());
    List<String> flags = new ArrayList<>();
    if (motion.repairedBefore(endS)) {
      flags.add("gyro-repaired");
    }
    if (motion.cutBeyondRepairBefore(endS)) {
      flags.add("gyro-beyond-repair");
    }
    if (disagree(motion)) {
      flags.add("wrist-units-disagree");
    }
    if (motion.fromShaft()) {
      flags.add("wrist-from-shaft");
    }
    if (motion.handMovesOnShaft()) {
      flags.add("hand-moves-on-shaft");
    }
    return flags;
  }
}
