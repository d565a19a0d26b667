package steadyturn.analysis.coach;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.sample.TimeAxis;

/**
 * A common time axis for swings of different speed: each key position lies at a fixed place, and
 * time runs evenly between two of them. Places in percent from takeaway to impact, our choice:
 * about where they lie in an unhurried swing.
 */
record Landmarks(List<SwingEvent> shared) {

  private static final Map<SwingEvent, Double> PLACE =
      Map.of(
          SwingEvent.TAKEAWAY, 0.0,
          SwingEvent.LEAD_ARM_LEVEL_BACK, 40.0,
          SwingEvent.TOP, 75.0,
          SwingEvent.LEAD_ARM_LEVEL_DOWN, 90.0,
          SwingEvent.SHAFT_LEVEL_DOWN, 95.0,
          SwingEvent.IMPACT, 100.0,
          SwingEvent.LEAD_ARM_LEVEL_THROUGH, 110.0,
          SwingEvent.FINISH, 150.0);

  /** The key positions that all the swings have, each later than the one before. */
  static Landmarks sharedBy(List<SwingResult> swings) {
    Set<SwingEvent> events = new TreeSet<>(PLACE.keySet());
    swings.forEach(s -> events.retainAll(s.events().stream().map(EventTime::event).toList()));
    List<SwingEvent> kept = new ArrayList<>();
    for (SwingEvent event : events) {
      boolean later =
          kept.isEmpty()
              || swings.stream().allMatch(s -> s.timeS(event) > s.timeS(kept.get(kept.size() - 1)));
      if (later) {
        kept.add(event);
      }
    }
    return new Landmarks(kept);
  }

  /** Whether there is anything to lie between. */
  boolean usable() {
    return shared.size() >= 2;
  }

  double firstPlace() {
    return PLACE.getOrDefault(shared.get(0), 0.0);
  }

  double lastPlace() {
    return PLACE.getOrDefault(shared.get(shared.size() - 1), 0.0);
  }

  /** Time of a place in one swing, s. */
  double timeAtS(SwingResult swing, double place) {
    int i = 0;
    while (i < shared.size() - 2 && PLACE.getOrDefault(shared.get(i + 1), 0.0) < place) {
      i++;
    }
    double from = PLACE.getOrDefault(shared.get(i), 0.0);
    double to = PLACE.getOrDefault(shared.get(i + 1), 0.0);
    double part = (place - from) / (to - from);
    return (1 - part) * swing.timeS(shared.get(i)) + part * swing.timeS(shared.get(i + 1));
  }

  /** Value of a curve at an instant, linear between samples; NaN outside. */
  static double valueAt(Curve curve, double instantS) {
    List<Double> t = curve.timeS();
    int high = TimeAxis.indexAt(t::get, t.size(), instantS);
    if (high < t.size() && t.get(high) == instantS) {
      return curve.value().get(high);
    }
    if (high == 0 || high == t.size()) {
      return Double.NaN;
    }
    double part = (instantS - t.get(high - 1)) / (t.get(high) - t.get(high - 1));
    return (1 - part) * curve.value().get(high - 1) + part * curve.value().get(high);
  }
}
