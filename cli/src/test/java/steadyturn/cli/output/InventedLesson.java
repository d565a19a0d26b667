package steadyturn.cli.output;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.lesson.UnitResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.quality.QualityReason;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;

/** A lesson written by hand, for tests of how results look; no number in it was measured. */
public final class InventedLesson {

  private InventedLesson() {}

  public static LessonResult result() {
    return new LessonResult(
        "sub-mika_ses-01_task-swing",
        new Player(
            "mika",
            Handedness.RIGHT,
            OptionalDouble.of(251),
            OptionalDouble.of(152),
            OptionalDouble.empty()),
        "square-hips",
        List.of(
            new UnitResult(BodyPoint.PELVIS, "A1", 200, 0.1, 0),
            new UnitResult(BodyPoint.LEAD_FOREARM, "A2", 200, 0, 12)),
        swings(),
        List.of(new Notice("pelvis", Reason.of(QualityReason.GAP, 2, 0.314))));
  }

  private static List<SwingResult> swings() {
    List<SwingResult> swings = new ArrayList<>();
    for (int number = 1; number <= 4; number++) {
      swings.add(swing(number, number == 4 ? SwingKind.PRACTICE : SwingKind.HIT));
    }
    return swings;
  }

  static SwingResult swing(int number, SwingKind kind) {
    return new SwingResult(
        number,
        "7-iron",
        kind,
        number == 2 ? List.of("address-not-still") : List.of(),
        List.of(
            new EventTime(SwingEvent.TOP, 2.539 + 30 * number, 0.006, Grade.MEASURED, Reason.NONE),
            new EventTime(
                SwingEvent.IMPACT, 2.82 + 30 * number, 0.001, Grade.MEASURED, Reason.NONE)),
        measures(number),
        List.of());
  }

  private static List<MeasureValue> measures(int number) {
    return List.of(
        MeasureValue.of(
            Measure.PELVIS_TURN, "top", -44 - number, 0.46, Grade.MEASURED, Reason.NONE),
        MeasureValue.of(
            Measure.PELVIS_TURN, "impact", 38.25 + number, 0.5, Grade.MEASURED, Reason.NONE),
        MeasureValue.of(
            Measure.PELVIS_SLIDE, "top", -12 - number, 4.6, Grade.MEASURED, Reason.NONE),
        MeasureValue.of(
            Measure.PELVIS_SLIDE, "impact", 61 + number, 9, Grade.MEASURED, Reason.NONE),
        new MeasureValue(
            Measure.PELVIS_CENTRE_ALONG,
            "top",
            -7,
            -31,
            40,
            Grade.ESTIMATED,
            Reason.of(MeasureReason.ADDRESS_SHORT)),
        new MeasureValue(
            Measure.PELVIS_TURN_TO_SLIDE,
            "top",
            31,
            31,
            Double.POSITIVE_INFINITY,
            Grade.MEASURED,
            Reason.of(MeasureReason.AT_LEAST)),
        MeasureValue.withheld(Measure.WRIST_RELEASE, "", Reason.of(MeasureReason.NEEDS_HAND)),
        new MeasureValue(Measure.TEMPO_RATIO, "", 3.02, 2.9, 3.3, Grade.MEASURED, Reason.NONE));
  }
}
