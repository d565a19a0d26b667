package steadyturn.analysis.lab.study;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Which samples a value can need at all: those of its units, from the address to shortly after its
 * instant. Written down from the definitions of the measures, not from what the analysis does.
 *
 * @param units whose samples it may need
 * @param toS after this instant it needs none, s
 */
record DropoutNeed(Set<BodyPoint> units, double toS) {

  private static final double BEFORE_TAKEAWAY_S = 1.3;
  private static final double FILTER_S = 0.15;

  /** Whether a lost stretch takes away what the value of a swing can need. */
  boolean touchedBy(Dropout lost, SwingResult swing) {
    double fromS = DropoutPhase.timeS(swing, SwingEvent.TAKEAWAY) - BEFORE_TAKEAWAY_S;
    return units.contains(lost.unit()) && lost.toS() > fromS && lost.fromS() < toS;
  }

  /** What an event needs. */
  static DropoutNeed of(SwingResult swing, SwingEvent event) {
    return new DropoutNeed(unitsOf(event), DropoutPhase.timeS(swing, event) + FILTER_S);
  }

  /** What a measure at a key position needs, or one of the whole swing. */
  static DropoutNeed of(SwingResult swing, Measure measure, String at) {
    SwingEvent event = event(at).orElse(lastEvent(measure));
    Set<BodyPoint> units = EnumSet.copyOf(unitsOf(measure));
    units.addAll(unitsOf(event));
    if (at.isEmpty()) {
      units.add(BodyPoint.LEAD_FOREARM);
    }
    return new DropoutNeed(units, DropoutPhase.timeS(swing, event) + FILTER_S);
  }

  private static Optional<SwingEvent> event(String word) {
    for (SwingEvent event : SwingEvent.values()) {
      if (event.word().equals(word)) {
        return Optional.of(event);
      }
    }
    return Optional.empty();
  }

  private static SwingEvent lastEvent(Measure measure) {
    return measure == Measure.TEMPO_BACK ? SwingEvent.TOP : SwingEvent.IMPACT;
  }

  private static Set<BodyPoint> unitsOf(SwingEvent event) {
    return switch (event) {
      case PELVIS_TURNAROUND -> EnumSet.of(BodyPoint.PELVIS);
      case SHAFT_LEVEL_DOWN -> EnumSet.of(BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND);
      case FINISH -> EnumSet.of(BodyPoint.LEAD_FOREARM, BodyPoint.PELVIS);
      default -> EnumSet.of(BodyPoint.LEAD_FOREARM);
    };
  }

  private static Set<BodyPoint> unitsOf(Measure measure) {
    String id = measure.id();
    if (id.startsWith("pelvis.") || measure == Measure.ORDER_PELVIS) {
      return EnumSet.of(BodyPoint.PELVIS);
    }
    if (id.startsWith("wrist.") || measure == Measure.ORDER_HAND) {
      return EnumSet.of(BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND);
    }
    return measure == Measure.ORDER_THORAX
        ? EnumSet.of(BodyPoint.THORAX)
        : EnumSet.of(BodyPoint.LEAD_FOREARM);
  }
}
