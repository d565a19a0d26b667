package steadyturn.analysis.lesson;

import java.util.Optional;
import java.util.stream.Stream;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.attitude.RestBias;
import steadyturn.fusion.displace.Anchor;
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
 * @param quiet what its gyroscope shows in the quiet moments around
 */
record PelvisReading(Optional<SwingRests> rests, MeasureReason missing, RestBias.Quiet quiet) {

  /** What is left where the reading met a mistake of the program. */
  static final PelvisReading FAILED = without(MeasureReason.GAP_AT_ADDRESS);

  /** What is left where the unit's clock is not tied to the arm's. */
  static final PelvisReading UNTIED = without(MeasureReason.CLOCK_LOOSE);

  /** A swing needs more samples than this. */
  private static final int LEAST_SAMPLES = 50;

  /** So much is looked at before a swing: an earlier rest tells of a drifting address, s. */
  private static final double EARLIER_S = 4;

  /** So long before a swing and behind it quiet moments are looked for, s. */
  private static final double BEFORE_S = 10;

  private static final double BEHIND_S = 3;

  private static PelvisReading without(MeasureReason missing) {
    return new PelvisReading(Optional.empty(), missing, RestBias.Quiet.NONE);
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
    RestBias.Quiet quiet =
        recording
            .unit(BodyPoint.PELVIS)
            .map(u -> RestBias.quiet(u.between(swing.startS() - BEFORE_S, swing.endS() + BEHIND_S)))
            .orElse(RestBias.Quiet.NONE);
    return new PelvisReading(rests, MeasureReason.GAP_AT_ADDRESS, quiet);
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

  /** The mean rate of a still address, unit axes, rad/s; none where it was not still. */
  Optional<Vector3> addressRateRadPerS() {
    return rests
        .filter(
            its ->
                Stream.of(SwingRests.ADDRESS_NOT_STILL, SwingRests.ADDRESS_SHORT)
                    .noneMatch(its.flags()::contains))
        .map(
            its -> {
              Anchor address = its.span().anchors().get(0);
              return RestGate.meanRateRadPerS(
                  its.span().stream(), address.startS(), address.endS());
            });
  }
}
