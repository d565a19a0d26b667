package steadyturn.cli.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import steadyturn.analysis.coach.Advice;
import steadyturn.analysis.coach.ModelComparison;
import steadyturn.analysis.coach.drill.DrillScore;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.reading.MadeBy;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.cli.words.Words;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;

/**
 * Swings written by hand, so that every point of a picture can be told beforehand; no number in
 * them was measured. Swing k begins at 10 k s; takeaway, top and impact lie 1.0, 1.75 and 2.0 s
 * later.
 */
final class DrawnLesson {

  static final double TAKEAWAY_S = 1.0;
  static final double TOP_S = 1.75;
  static final double IMPACT_S = 2.0;

  private final Handedness handed;
  private final List<SwingResult> swings = new ArrayList<>();
  private OptionalDouble pelvisWidthMm = OptionalDouble.empty();
  private Audience audience = Audience.TEACHER;
  private LengthUnits units = LengthUnits.METRIC;
  private Teaching teaching = TeachingReader.shipped();
  private Optional<ModelComparison> model = Optional.empty();
  private List<DrillScore> drills = List.of();
  private Advice advice =
      new Advice(3, List.of(), Optional.empty(), List.of(), List.of(), List.of());

  DrawnLesson(Handedness handed) {
    this.handed = handed;
  }

  DrawnLesson swing(List<MeasureValue> values, Curve... curves) {
    swings.add(swing(swings.size() + 1, values, curves));
    return this;
  }

  DrawnLesson with(SwingResult swing) {
    swings.add(swing);
    return this;
  }

  /** The same swing so many times. */
  DrawnLesson swings(int count, List<MeasureValue> values) {
    for (int i = 0; i < count; i++) {
      swing(values);
    }
    return this;
  }

  DrawnLesson pelvisWidth(double mm) {
    pelvisWidthMm = OptionalDouble.of(mm);
    return this;
  }

  DrawnLesson forPlayer() {
    audience = Audience.PLAYER;
    return this;
  }

  DrawnLesson inches() {
    units = LengthUnits.IMPERIAL;
    return this;
  }

  DrawnLesson taught(Teaching rules) {
    teaching = rules;
    return this;
  }

  DrawnLesson beside(ModelComparison comparison) {
    model = Optional.of(comparison);
    return this;
  }

  DrawnLesson drilled(DrillScore... scores) {
    drills = List.of(scores);
    return this;
  }

  DrawnLesson advised(Advice found) {
    advice = found;
    return this;
  }

  Sheet sheet() {
    return new Sheet(
        "02",
        "2026-04-01",
        new Player("mika", handed, pelvisWidthMm, OptionalDouble.empty(), OptionalDouble.empty()),
        "7-iron",
        swings,
        Map.of(),
        List.of(),
        teaching,
        advice,
        drills,
        model,
        List.of(),
        MadeBy.of(AnalysisSettings.defaults(), Stream.empty()));
  }

  Pen pen() {
    return new Pen(sheet(), Words.of(Locale.ENGLISH), units, audience);
  }

  static SwingResult swing(int number, List<MeasureValue> values, Curve... curves) {
    double zeroS = 10.0 * number;
    return new SwingResult(
        number,
        "7-iron",
        SwingKind.HIT,
        List.of(),
        List.of(
            event(SwingEvent.TAKEAWAY, zeroS + TAKEAWAY_S),
            event(SwingEvent.TOP, zeroS + TOP_S),
            event(SwingEvent.IMPACT, zeroS + IMPACT_S)),
        values,
        List.of(curves));
  }

  static EventTime event(SwingEvent event, double timeS) {
    return new EventTime(event, timeS, 0.001, Grade.MEASURED, Reason.NONE);
  }

  static MeasureValue value(Measure measure, String at, double value, double half) {
    return new MeasureValue(
        measure, at, value, value - half, value + half, Grade.MEASURED, Reason.NONE);
  }

  /** A curve of swing {@code number} through (time since the swing's zero, value) in turn. */
  static Curve curve(int number, Measure measure, double... timeAndValue) {
    List<Double> timeS = new ArrayList<>();
    List<Double> value = new ArrayList<>();
    List<Double> sd = new ArrayList<>();
    for (int i = 0; i < timeAndValue.length; i += 2) {
      timeS.add(10.0 * number + timeAndValue[i]);
      value.add(timeAndValue[i + 1]);
      sd.add(1.0);
    }
    return new Curve(measure.id(), measure.unit(), timeS, value, sd);
  }
}
