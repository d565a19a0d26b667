package steadyturn.analysis.limits;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.limits.TrunkDoubt.Witness;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Faults;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.find.SwingFinder;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.ingest.clock.AlignedRecording;
import steadyturn.ingest.clock.ClockReason;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Holds the clock of the pelvis against the order in which a body moves, where no blow ties it to
 * the arm's: hips and arm leave the address together, the hips turn round before the hands, are
 * fastest before the ball and feel its blow. Where that says the clock is off, the tie gets wider;
 * nothing is moved by it.
 */
public final class TrunkClock {

  /** Known better than this a clock was tied by blows, s. */
  private static final double TIED_S = 0.008;

  private final List<Witness> takeaways = new ArrayList<>();
  private final List<Witness> turns = new ArrayList<>();
  private final List<Witness> fastest = new ArrayList<>();
  private final List<Double> blowsS = new ArrayList<>();
  private double knownS;

  private TrunkClock() {}

  /** The ties as they were, or wider where the body speaks against them. */
  public static AlignedRecording judged(
      AlignedRecording aligned, List<Swing> swings, RestBiases biases, Faults faults) {
    Recording recording = aligned.recording();
    Optional<BodyPoint> arm =
        recording
            .unit(BodyPoint.LEAD_FOREARM)
            .or(() -> recording.unit(BodyPoint.LEAD_HAND))
            .map(UnitStream::point);
    if (arm.isEmpty() || recording.unit(BodyPoint.PELVIS).isEmpty()) {
      return aligned;
    }
    TrunkClock clock = new TrunkClock();
    SwingFinder finder = SwingFinder.withDefaults();
    for (Swing swing : swings) {
      Optional<Double> impactS = swing.timeS(SwingEvent.IMPACT);
      double sdS = impactS.map(s -> aligned.sdBetweenS(BodyPoint.PELVIS, arm.get(), s)).orElse(0.0);
      if (sdS > TIED_S) {
        double reachS = TrunkDoubt.REACH_S;
        clock.hear(
            finder.byPelvis(recording, impactS.orElseThrow(), reachS, biases, faults), swing, sdS);
      }
    }
    return clock.takeaways.isEmpty() ? aligned : clock.weighed(aligned, arm.get());
  }

  private void hear(List<EventTime> hips, Swing swing, double sdS) {
    compare(hips, SwingEvent.TAKEAWAY, swing).ifPresent(takeaways::add);
    compare(hips, SwingEvent.TOP, swing).ifPresent(turns::add);
    Optional<Witness> impact = compare(hips, SwingEvent.IMPACT, swing);
    boolean isFelt =
        EventTime.of(SwingEvent.IMPACT, hips).filter(e -> e.why().isNone()).isPresent();
    impact.filter(w -> !isFelt).ifPresent(fastest::add);
    impact.filter(w -> isFelt).map(Witness::lateS).ifPresent(blowsS::add);
    knownS = Math.max(knownS, sdS);
  }

  private static Optional<Witness> compare(List<EventTime> hips, SwingEvent event, Swing swing) {
    return EventTime.of(event, hips)
        .flatMap(
            seen ->
                swing
                    .event(event)
                    .map(
                        own ->
                            new Witness(
                                seen.timeS() - own.timeS(), Math.hypot(seen.sdS(), own.sdS()))));
  }

  private AlignedRecording weighed(AlignedRecording aligned, BodyPoint arm) {
    TrunkDoubt doubt = TrunkDoubt.of(List.of(takeaways, turns, fastest), blowsS, knownS);
    Reason why =
        doubt.isDisbelieved()
            ? Reason.of(ClockReason.BODY, arm, 1000 * doubt.offS(), takeaways.size())
            : Reason.NONE;
    return aligned.doubted(BodyPoint.PELVIS, doubt.sdS(), why);
  }
}
