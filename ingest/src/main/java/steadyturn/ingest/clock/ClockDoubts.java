package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * From when on ties of clocks are worth less than they say, because something that was seen may
 * also be of the other clock's making.
 *
 * @param hub the unit whose turning the others' was held against
 * @param jumping units whose time jumps
 * @param recording as it was read
 * @param paths the lags of the others to the hub
 * @param fit of the hub
 */
record ClockDoubts(
    BodyPoint hub,
    List<BodyPoint> jumping,
    Recording recording,
    Map<BodyPoint, LagPath> paths,
    ClockFit fit) {

  /**
   * In a shorter recording a jump that one unit shows is rather chance than the hub's (our choice).
   */
  private static final int ENOUGH_WINDOWS = 10;

  /** The links with looser ones behind them; adds to the reasons what is to be said. */
  List<ClockLink> of(List<ClockLink> links, Map<BodyPoint, List<Reason>> reasons) {
    List<ClockLink> loose = links;
    for (BodyPoint unit : jumping) {
      List<LagPath> pieces = path(unit).pieces();
      if (unit != hub && pieces.size() > 1 && !isSeenByThird(unit)) {
        double jumpS = Math.abs(pieces.get(1).windows().get(0).lagS() - pieces.get(0).endLagS());
        Predicate<ClockLink> third = l -> touches(l, hub) && !jumping.contains(l.unit());
        loose = loosened(loose, third, jumpS, pieces.get(0).lastS());
      }
    }
    return atEnds(loose, reasons);
  }

  /**
   * A unit jumps against the hub. Where no third unit sees that, it may be the hub's clock that
   * jumps, and from then on the third units are tied no better than the jump is large.
   */
  private boolean isSeenByThird(BodyPoint unit) {
    return path(unit).windows().size() < ENOUGH_WINDOWS
        || recording.units().stream()
            .filter(u -> u.point() != hub && !jumping.contains(u.point()))
            .anyMatch(u -> LagPath.of(u, stream(unit)).pieces().size() > 1);
  }

  /** Where a unit ends early, its clock or the hub's may have stood still before. */
  private List<ClockLink> atEnds(List<ClockLink> links, Map<BodyPoint, List<Reason>> reasons) {
    Map<BodyPoint, StoppedClock> stopped = new EnumMap<>(BodyPoint.class);
    for (UnitStream unit : recording.units()) {
      LagPath path = path(unit.point());
      if (unit.point() != hub) {
        StoppedClock.of(stream(hub), unit, path.windows().isEmpty() ? 0 : path.endLagS())
            .ifPresent(since -> stopped.put(unit.point(), since));
      }
    }
    boolean isHubs = stopped.size() > 1 && stopped.size() == recording.units().size() - 1;
    List<ClockLink> loose = links;
    for (Map.Entry<BodyPoint, StoppedClock> each : stopped.entrySet()) {
      BodyPoint point = isHubs ? hub : each.getKey();
      BodyPoint other = isHubs ? each.getKey() : hub;
      double lagS = Math.abs(each.getValue().lagS());
      loose = loosened(loose, l -> touches(l, point), lagS, each.getValue().sinceS());
      List<Reason> said = new ArrayList<>(reasons.getOrDefault(point, List.of()));
      said.add(Reason.of(ClockReason.STOPPED, other, each.getValue().sinceS(), lagS));
      reasons.put(point, said);
    }
    return loose;
  }

  private List<ClockLink> loosened(
      List<ClockLink> links, Predicate<ClockLink> which, double sdS, double sinceS) {
    return ClockLink.loosened(links, which, sdS, fit.toReferenceS(sinceS));
  }

  private static boolean touches(ClockLink link, BodyPoint point) {
    return link.unit() == point || link.tiedTo() == point;
  }

  private UnitStream stream(BodyPoint point) {
    return recording.unit(point).orElseThrow();
  }

  private LagPath path(BodyPoint point) {
    return paths.getOrDefault(point, new LagPath(List.of()));
  }
}
