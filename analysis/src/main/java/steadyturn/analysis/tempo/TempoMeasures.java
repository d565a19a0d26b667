package steadyturn.analysis.tempo;

import java.util.List;
import java.util.Optional;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.reason.Reason;

/** Length of the backswing, of the downswing, and their ratio, from the times of the events. */
public final class TempoMeasures {

  /** A unit that springs on its skin shows takeaway and top late alike (our assumption), s. */
  private static final double SAME_LATE_S = 0.0025;

  private TempoMeasures() {}

  /** The three measures of one swing; withheld where an event was not found. */
  public static List<MeasureValue> of(Swing swing) {
    Optional<EventTime> takeaway = swing.event(SwingEvent.TAKEAWAY);
    Optional<EventTime> top = swing.event(SwingEvent.TOP);
    Optional<EventTime> impact = swing.event(SwingEvent.IMPACT);
    if (takeaway.isEmpty() || top.isEmpty() || impact.isEmpty()) {
      Reason why = Reason.of(MeasureReason.NO_TAKEAWAY_TOP_OR_IMPACT);
      return List.of(
          MeasureValue.withheld(Measure.TEMPO_BACK, "", why),
          MeasureValue.withheld(Measure.TEMPO_DOWN, "", why),
          MeasureValue.withheld(Measure.TEMPO_RATIO, "", why));
    }
    return between(takeaway.get(), top.get(), impact.get());
  }

  private static List<MeasureValue> between(EventTime takeaway, EventTime top, EventTime impact) {
    double backS = top.timeS() - takeaway.timeS();
    double downS = impact.timeS() - top.timeS();
    double lateS = Math.min(SAME_LATE_S, Math.min(takeaway.sdS(), top.sdS()));
    double ownTakeawayS = without(takeaway.sdS(), lateS);
    double ownTopS = without(top.sdS(), lateS);
    // first-order spread of back / down; the top enters both
    double ratio = backS / downS;
    double ratioSd =
        Math.hypot(
                Math.hypot(ownTakeawayS, (1 + ratio) * ownTopS),
                ratio * Math.hypot(lateS, impact.sdS()))
            / downS;
    return List.of(
        value(Measure.TEMPO_BACK, backS, Math.hypot(ownTakeawayS, ownTopS), takeaway, top),
        value(Measure.TEMPO_DOWN, downS, Math.hypot(top.sdS(), impact.sdS()), top, impact),
        value(Measure.TEMPO_RATIO, ratio, ratioSd, takeaway, top, impact));
  }

  private static double without(double sdS, double partS) {
    return Math.sqrt(sdS * sdS - partS * partS);
  }

  private static MeasureValue value(Measure measure, double value, double sd, EventTime... events) {
    for (EventTime event : events) {
      if (event.grade() != Grade.MEASURED) {
        return MeasureValue.of(measure, "", value, sd, Grade.ESTIMATED, event.why());
      }
    }
    return MeasureValue.of(measure, "", value, sd, Grade.MEASURED, Reason.NONE);
  }
}
