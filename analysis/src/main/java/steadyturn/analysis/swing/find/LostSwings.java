package steadyturn.analysis.swing.find;

import java.util.ArrayList;
import java.util.List;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.UnplacedMarks;
import steadyturn.fusion.attitude.Unseen;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Gaps;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Gaps of the arm units in which a swing may have gone: something else says that there was one, a
 * mark or a unit that turned fast, and none was found there.
 */
public final class LostSwings {

  // shorter gaps hide no swing (our choice)
  private static final double SHORTEST_S = 0.1;
  private static final double AROUND_S = 1.0;
  private static final double BEFORE_TAKEAWAY_S = 0.8;
  private static final double AFTER_IMPACT_S = 1.2;
  private static final double ARM_RAD_PER_S = Math.toRadians(500);
  private static final double PELVIS_RAD_PER_S = Math.toRadians(150);

  private LostSwings() {}

  /** Instants in such gaps, by time, s. */
  public static List<Double> timesS(Recording recording, List<Swing> found) {
    List<Double> signs = signsOfSwings(recording, found);
    List<Double> out = new ArrayList<>();
    for (UnitStream unit : recording.units()) {
      if (unit.point() == BodyPoint.LEAD_FOREARM || unit.point() == BodyPoint.LEAD_HAND) {
        for (Gaps.Gap gap : Unseen.ofBoth(unit).gaps()) {
          if (lostS(unit, gap) >= SHORTEST_S) {
            signs.stream()
                .filter(t -> t > gap.beforeS() - AROUND_S && t < gap.afterS() + AROUND_S)
                .filter(t -> found.stream().noneMatch(s -> holds(s, t)))
                .filter(t -> out.stream().noneMatch(other -> Math.abs(other - t) < 2 * AROUND_S))
                .findFirst()
                .ifPresent(out::add);
          }
        }
      }
    }
    out.sort(Double::compare);
    return out;
  }

  /** How much of a gap the unit ran for, s. */
  private static double lostS(UnitStream unit, Gaps.Gap gap) {
    return unit.size() == 0
        ? 0
        : Math.min(gap.afterS(), unit.timeS(unit.size() - 1))
            - Math.max(gap.beforeS(), unit.timeS(0));
  }

  private static List<Double> signsOfSwings(Recording recording, List<Swing> found) {
    List<Double> out = new ArrayList<>();
    for (Mark mark : recording.marks()) {
      // what was noted beside a swing may speak of that one
      if (UnplacedMarks.isOfSwing(mark)
          && (mark.durationS() > 0 || found.stream().noneMatch(s -> isBeside(s, mark)))) {
        out.add((mark.onsetS() + mark.endS()) / 2);
      }
    }
    for (UnitStream unit : recording.units()) {
      boolean arm = unit.point() == BodyPoint.LEAD_FOREARM || unit.point() == BodyPoint.LEAD_HAND;
      for (int peak : FastBursts.peaks(unit, arm ? ARM_RAD_PER_S : PELVIS_RAD_PER_S)) {
        out.add(unit.timeS(peak));
      }
    }
    return out;
  }

  private static boolean isBeside(Swing swing, Mark mark) {
    return mark.onsetS() > swing.startS() - UnplacedMarks.WITHIN_S
        && mark.onsetS() < swing.endS() + UnplacedMarks.WITHIN_S;
  }

  private static boolean holds(Swing swing, double timeS) {
    double fromS = swing.event(SwingEvent.TAKEAWAY).map(EventTime::timeS).orElse(swing.startS());
    double toS = swing.event(SwingEvent.IMPACT).map(EventTime::timeS).orElse(swing.endS());
    return timeS > fromS - BEFORE_TAKEAWAY_S && timeS < toS + AFTER_IMPACT_S;
  }
}
