package steadyturn.analysis.lesson;

import java.util.Optional;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.rest.RestGate;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * What the pelvis unit alone says of one swing: its rests, with the samples from one to the other
 * and no more, as those of all swings of a lesson are kept at once.
 *
 * @param rests none where too little was seen
 * @param missing why the swing has no measures of the pelvis, where it has none
 */
record PelvisReading(Optional<SwingRests> rests, MeasureReason missing) {

  /** What is left where the reading met a mistake of the program. */
  static final PelvisReading FAILED = without(MeasureReason.GAP_AT_ADDRESS);

  /** What is left where the unit's clock is not tied to the arm's. */
  static final PelvisReading UNTIED = without(MeasureReason.CLOCK_LOOSE);

  /** A swing needs more samples than this. */
  private static final int LEAST_SAMPLES = 50;

  /** So much is looked at before a swing: an earlier rest tells of a drifting address, s. */
  private static final double EARLIER_S = 4;

  private static PelvisReading without(MeasureReason missing) {
    return new PelvisReading(Optional.empty(), missing);
  }

  static PelvisReading of(Recording recording, Swing swing, PelvisSteps steps) {
    Optional<UnitStream> window =
        recording
            .unit(BodyPoint.PELVIS)
            .map(unit -> unit.between(swing.startS() - EARLIER_S, swing.endS()));
    if (window.isEmpty()) {
      return without(MeasureReason.NEEDS_PELVIS);
    }
    if (window.get().size() <= LEAST_SAMPLES) {
      return without(MeasureReason.FEW_PELVIS_SAMPLES);
    }
    double impactS = swing.timeS(SwingEvent.IMPACT).orElse(swing.endS());
    SwingRests.Stance over =
        SwingRests.Stance.of(steps.geometry(recording.player()), recording.player().handed());
    Optional<SwingRests> rests =
        SeenPart.of(window.get(), takeawayS(swing), impactS)
            .map(seen -> SwingRests.of(swing, seen, bias(swing, seen.window(), steps), over));
    return new PelvisReading(rests, MeasureReason.GAP_AT_ADDRESS);
  }

  /** Bias for the rest gate: from the table, else the mean rate just before the takeaway. */
  private static Vector3 bias(Swing swing, UnitStream window, PelvisSteps steps) {
    double takeawayS = takeawayS(swing);
    return steps
        .tableBias()
        .orElseGet(() -> RestGate.meanRateRadPerS(window, takeawayS - 0.6, takeawayS - 0.05));
  }

  /** Where a swing without one is taken to begin. */
  static double takeawayS(Swing swing) {
    return swing.timeS(SwingEvent.TAKEAWAY).orElse(swing.startS() + 1);
  }
}
