package steadyturn.analysis.swing;

import java.util.Optional;
import steadyturn.analysis.swing.find.SwingFinder;
import steadyturn.ingest.clock.AlignedRecording;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitStream;

/**
 * The spread of the arm units' clocks against the recording's axis. {@link SwingFinder} states how
 * well a time is known on the clock of the unit that gave it, which is what wrist and tempo need;
 * whoever looks at another unit at that time needs this spread on top.
 */
public final class ClockSpread {

  private ClockSpread() {}

  /** The swing with the spread of the clocks added to the times that the arm units gave. */
  public static Swing added(Swing swing, AlignedRecording aligned) {
    Optional<BodyPoint> arm =
        aligned
            .recording()
            .unit(BodyPoint.LEAD_FOREARM)
            .or(() -> aligned.recording().unit(BodyPoint.LEAD_HAND))
            .map(UnitStream::point);
    if (arm.isEmpty()) {
      return swing;
    }
    BodyPoint axis = aligned.recording().units().get(0).point();
    return swing.with(
        swing.events().stream()
            .map(
                e ->
                    e.event() == SwingEvent.PELVIS_TURNAROUND
                        ? e
                        : wider(e, aligned.sdBetweenS(axis, arm.get(), e.timeS())))
            .toList());
  }

  private static EventTime wider(EventTime e, double sdS) {
    return new EventTime(e.event(), e.timeS(), Math.hypot(e.sdS(), sdS), e.grade(), e.why());
  }
}
