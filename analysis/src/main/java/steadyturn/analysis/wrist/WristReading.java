package steadyturn.analysis.wrist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.WristAlignment;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;

/**
 * What one swing says about the lead wrist.
 *
 * @param measures all wrist measures, withheld ones with their reason
 * @param curves cock and flexion over the swing
 * @param motion the course of the angles, where both units were worn
 * @param flags what a reader must know: {@code gyro-repaired}, {@code gyro-beyond-repair}, {@code
 *     wrist-units-disagree}
 */
public record WristReading(
    List<MeasureValue> measures,
    List<Curve> curves,
    Optional<WristMotion> motion,
    List<String> flags) {

  // our choice: skin and play explain 3 deg; units on the wrong arm or slipping give far more
  private static final double DISAGREE_DEG = 7;

  public WristReading {
    measures = List.copyOf(measures);
    curves = List.copyOf(curves);
    flags = List.copyOf(flags);
  }

  /**
   * Reads one swing.
   *
   * @param recording with the clocks of its units aligned
   * @param biases of that recording
   * @param alignment of the wrist units, from the wear steps or {@link WristAlignment#nominal}
   * @param syncSdS standard deviation of the hand's clock against the forearm's around the swing, s
   */
  public static WristReading of(
      Recording recording,
      RestBiases biases,
      Swing swing,
      WristAlignment alignment,
      double syncSdS) {
    Optional<WristMotion> motion = WristMotion.of(recording, biases, swing, alignment, syncSdS);
    if (motion.isEmpty()) {
      return new WristReading(WristMeasures.withheld(why(recording)), List.of(), motion, List.of());
    }
    WristMeasures measures = new WristMeasures(motion.get(), swing, alignment, syncSdS);
    List<Curve> curves = WristCurves.of(motion.get(), alignment.posed(), swing.endS());
    return new WristReading(measures.all(), curves, motion, flags(motion.get(), swing));
  }

  private static String why(Recording recording) {
    boolean forearm = recording.unit(BodyPoint.LEAD_FOREARM).isPresent();
    boolean hand = recording.unit(BodyPoint.LEAD_HAND).isPresent();
    if (forearm && hand) {
      return "forearm and hand unit do not both cover the swing from address to impact";
    }
    if (forearm) {
      return "needs a unit on the lead hand: a forearm unit alone cannot see the wrist";
    }
    return hand
        ? "needs a unit on the lead forearm: a hand unit alone cannot see the wrist"
        : "needs units on the lead forearm and the lead hand";
  }

  private static List<String> flags(WristMotion motion, Swing swing) {
    double endS = swing.event(SwingEvent.IMPACT).map(EventTime::timeS).orElse(swing.endS());
    List<String> flags = new ArrayList<>();
    if (motion.repairedBefore(endS)) {
      flags.add("gyro-repaired");
    }
    if (motion.cutBeyondRepairBefore(endS)) {
      flags.add("gyro-beyond-repair");
    }
    if (motion.constraintRmsDeg() > DISAGREE_DEG) {
      flags.add("wrist-units-disagree");
    }
    return flags;
  }
}
