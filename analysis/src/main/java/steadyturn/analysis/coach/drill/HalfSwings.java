package steadyturn.analysis.coach.drill;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.DrillMark;
import steadyturn.analysis.swing.EventReason;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.tempo.TempoMeasures;
import steadyturn.analysis.wrist.WristClocks;
import steadyturn.analysis.wrist.WristReading;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.wrist.WristSteps;
import steadyturn.ingest.clock.AlignedRecording;
import steadyturn.ingest.clock.CommonClock;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Finds half swings in the stretches marked as drill repetitions and says what the wrist units saw:
 * the cock kept, and the tempo. One finder for the recordings of a lesson in their order, as wear
 * steps hold for what comes after them. A half swing without a ball has no impact; the arm's return
 * to its address direction stands for it, so every value is an estimate.
 */
public final class HalfSwings {

  private static final double BEFORE_S = 3;

  /** What can be said of a half swing; a release in ms means nothing at another speed. */
  private static final Set<Measure> SAID =
      Set.of(
          Measure.WRIST_KEPT,
          Measure.WRIST_COCK_MAX,
          Measure.TEMPO_BACK,
          Measure.TEMPO_DOWN,
          Measure.TEMPO_RATIO);

  private WristSteps steps = WristSteps.NONE;

  /** The half swings of the next recording, by time; none without a forearm unit. */
  public List<Rehearsal> of(Recording raw) {
    AlignedRecording aligned = CommonClock.align(raw);
    Recording recording = aligned.recording();
    RestBiases biases = RestBiases.of(recording);
    steps = WristSteps.of(recording, biases, steps);
    return recording.unit(BodyPoint.LEAD_FOREARM).stream()
        .flatMap(
            forearm ->
                DrillMark.reps(recording.marks())
                    .flatMap(mark -> within(mark, forearm, recording).stream()))
        .map(swing -> rehearsal(swing, aligned, biases))
        .sorted(Comparator.comparingDouble(Rehearsal::timeS))
        .toList();
  }

  private List<Swing> within(Mark mark, UnitStream forearm, Recording recording) {
    UnitStream stretch = forearm.between(mark.onsetS() - BEFORE_S, DrillMark.endS(mark));
    return stretch.size() < 2
        ? List.of()
        : ArmRises.of(stretch, steps.alignment(), recording.player().handed().sign()).stream()
            .filter(rise -> rise.topS() >= mark.onsetS())
            .map(ArmRise::swing)
            .toList();
  }

  private Rehearsal rehearsal(Swing swing, AlignedRecording aligned, RestBiases biases) {
    double topS = ArmRise.topS(swing);
    List<MeasureValue> measures = new ArrayList<>(TempoMeasures.of(swing));
    measures.addAll(
        WristReading.of(aligned.recording(), biases, swing, steps, WristClocks.of(aligned, topS))
            .measures());
    return new Rehearsal(
        topS,
        measures.stream()
            .filter(m -> SAID.contains(m.measure()))
            .map(m -> m.estimated(Reason.of(EventReason.HALF_SWING)))
            .toList());
  }
}
