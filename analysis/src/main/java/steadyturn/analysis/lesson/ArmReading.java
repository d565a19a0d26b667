package steadyturn.analysis.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.tempo.OrderMeasures;
import steadyturn.analysis.tempo.TempoMeasures;
import steadyturn.analysis.wrist.WristClocks;
import steadyturn.analysis.wrist.WristReading;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.wrist.WristSteps;
import steadyturn.ingest.sample.Recording;

/**
 * What one swing says besides the pelvis: wrist, tempo, order of the peaks.
 *
 * @param curves course of cock and flexion over the swing, where both wrist units were worn and the
 *     course was asked for
 */
record ArmReading(List<MeasureValue> measures, List<Curve> curves, List<String> flags) {

  /** Flag of a swing of which a part was given up for a mistake of the program. */
  static final String FAULT = "program-fault";

  /** What is left where the reading met a mistake of the program. */
  static final ArmReading FAILED = new ArmReading(List.of(), List.of(), List.of(FAULT));

  /** The same with one more flag. */
  ArmReading flagged(String flag) {
    return new ArmReading(
        measures, curves, Stream.concat(flags.stream(), Stream.of(flag)).toList());
  }

  ArmReading {
    measures = List.copyOf(measures);
    curves = List.copyOf(curves);
    flags = List.copyOf(flags);
  }

  static ArmReading of(
      Recording recording,
      RestBiases biases,
      Swing swing,
      WristSteps worn,
      WristClocks clocks,
      boolean withCurves) {
    WristReading wrist = WristReading.of(recording, biases, swing, worn, clocks);
    List<MeasureValue> measures = new ArrayList<>(wrist.measures());
    measures.addAll(TempoMeasures.of(swing));
    measures.addAll(OrderMeasures.of(recording, biases, swing, worn.alignment(), clocks.handSdS()));
    return new ArmReading(
        measures, withCurves ? wrist.curves(swing.endS()) : List.of(), wrist.flags());
  }
}
