package steadyturn.analysis.lesson;

import java.util.ArrayList;
import java.util.List;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.tempo.OrderMeasures;
import steadyturn.analysis.tempo.TempoMeasures;
import steadyturn.analysis.wrist.WristMotion;
import steadyturn.analysis.wrist.WristReading;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.WristAlignment;
import steadyturn.ingest.sample.Recording;

/**
 * What one swing says besides the pelvis: wrist, tempo, order of the peaks.
 *
 * @param curves course of cock and flexion over the swing, where both wrist units were worn
 */
record ArmReading(List<MeasureValue> measures, List<Curve> curves, List<String> flags) {

  private static final double CURVE_STEP_S = 0.01;

  ArmReading {
    measures = List.copyOf(measures);
    curves = List.copyOf(curves);
    flags = List.copyOf(flags);
  }

  static ArmReading of(
      Recording recording,
      RestBiases biases,
      Swing swing,
      WristAlignment alignment,
      double wristSyncSdS) {
    WristReading wrist = WristReading.of(recording, biases, swing, alignment, wristSyncSdS);
    List<MeasureValue> measures = new ArrayList<>(wrist.measures());
    measures.addAll(TempoMeasures.of(swing));
    measures.addAll(OrderMeasures.of(recording, biases, swing, alignment));
    List<Curve> curves = new ArrayList<>();
    wrist.motion().ifPresent(m -> curves.addAll(curves(m, swing)));
    return new ArmReading(measures, curves, wrist.flags());
  }

  private static List<Curve> curves(WristMotion motion, Swing swing) {
    List<Double> timeS = new ArrayList<>();
    List<Double> cock = new ArrayList<>();
    List<Double> cockSd = new ArrayList<>();
    List<Double> flexion = new ArrayList<>();
    List<Double> flexionSd = new ArrayList<>();
    double next = swing.startS();
    for (int k = 0; k < motion.size() && motion.timeS(k) <= swing.endS(); k++) {
      if (motion.timeS(k) < next) {
        continue;
      }
      next = motion.timeS(k) + CURVE_STEP_S - 1e-4;
      timeS.add(motion.timeS(k));
      cock.add(motion.cockDeg(k));
      cockSd.add(motion.cockSdDeg(k));
      flexion.add(motion.flexionDeg(k));
      flexionSd.add(motion.flexionSdDeg(k));
    }
    return List.of(
        new Curve(Measure.WRIST_COCK.id(), Measure.WRIST_COCK.unit(), timeS, cock, cockSd),
        new Curve(
            Measure.WRIST_FLEXION.id(), Measure.WRIST_FLEXION.unit(), timeS, flexion, flexionSd));
  }
}
