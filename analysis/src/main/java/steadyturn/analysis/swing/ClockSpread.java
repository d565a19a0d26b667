package steadyturn.analysis.swing;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadyturn.analysis.swing.find.SwingFinder;
import steadyturn.ingest.clock.AlignedRecording;
import steadyturn.ingest.clock.ClockReason;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * The spread of the arm units' clocks against the recording's axis. {@link SwingFinder} states how
 * well a time is known on the clock of the unit that gave it, which is what wrist and tempo need;
 * whoever looks at another unit at that time needs this spread on top.
 */
public final class ClockSpread {

  /**
   * Where two clocks are known less well than this to each other, values that need both are
   * withheld: at impact hips turn by 10 deg in it (our choice), s.
   */
  public static final double LOOSEST_S = 0.03;

  /** Flag of a swing in which values are withheld for that. */
  public static final String LOOSE = "clock-loose";

  private ClockSpread() {}

  /** Whether a unit's clock is tied well enough to that of the arm, which gives the times. */
  public static boolean isTied(AlignedRecording aligned, BodyPoint point, double timeS) {
    return sdToArmS(aligned, point, timeS) <= LOOSEST_S;
  }

  /** Without the units whose clock is not tied to the arm's at an instant. */
  public static Recording tied(AlignedRecording aligned, double timeS) {
    Recording all = aligned.recording();
    List<UnitStream> units =
        all.units().stream().filter(u -> isTied(aligned, u.point(), timeS)).toList();
    return new Recording(all.id(), all.player(), units, all.marks());
  }

  /** What of each unit's clock was mended, and which is not known well enough at these instants. */
  public static Map<BodyPoint, List<Reason>> reasons(
      AlignedRecording aligned, List<Double> timesS) {
    Map<BodyPoint, List<Reason>> out = new EnumMap<>(BodyPoint.class);
    aligned.reasons().forEach((point, said) -> out.put(point, new ArrayList<>(said)));
    for (UnitStream unit : aligned.recording().units()) {
      double worstS =
          timesS.stream().mapToDouble(t -> sdToArmS(aligned, unit.point(), t)).max().orElse(0);
      if (worstS > LOOSEST_S) {
        out.computeIfAbsent(unit.point(), point -> new ArrayList<>())
            .add(Reason.of(ClockReason.LOOSE, 1000 * worstS));
      }
    }
    return out;
  }

  /** Spread of a unit's clock against that of the arm, s; 0 where no arm unit is worn. */
  private static double sdToArmS(AlignedRecording aligned, BodyPoint point, double timeS) {
    return arm(aligned).map(arm -> aligned.sdBetweenS(point, arm, timeS)).orElse(0.0);
  }

  private static Optional<BodyPoint> arm(AlignedRecording aligned) {
    return aligned
        .recording()
        .unit(BodyPoint.LEAD_FOREARM)
        .or(() -> aligned.recording().unit(BodyPoint.LEAD_HAND))
        .map(UnitStream::point);
  }

  /** The swing with the spread of the clocks added to the times that the arm units gave. */
  public static Swing added(Swing swing, AlignedRecording aligned) {
    Optional<BodyPoint> arm = arm(aligned);
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
    return e.withSdS(Math.hypot(e.sdS(), sdS));
  }
}
