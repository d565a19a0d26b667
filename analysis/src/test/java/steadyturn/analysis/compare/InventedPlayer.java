package steadyturn.analysis.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.reason.Reason;

/**
 * Swing results drawn from a player whose means and spreads are known, with measuring errors that
 * are partly shared by the swings of a lesson. Slide goes with turn, and slide per turn and turn
 * share are computed from both, so the measures hang together as in life.
 */
final class InventedPlayer {

  private static final double HALF_HIPS_MM = 86.5;
  private static final double TURN_SD_DEG = 1.2;
  private static final double SLIDE_SD_MM = 9.8;
  private static final double RELEASE_SD_MS = 1.8;

  private final Random random;
  private final double turnTopDeg;
  private final double slideTopMm;

  InventedPlayer(Random random, double turnTopDeg, double slideTopMm) {
    this.random = random;
    this.turnTopDeg = turnTopDeg;
    this.slideTopMm = slideTopMm;
  }

  /** Errors that all swings of a lesson share, drawn anew for every lesson. */
  record Lesson(String name, double turnDeg, double slideMm, double timeMs) {}

  Lesson lesson(String name) {
    return new Lesson(
        name,
        gaussian(0, shared(Measure.PELVIS_TURN, "top", TURN_SD_DEG)),
        gaussian(0, shared(Measure.PELVIS_SLIDE, "top", SLIDE_SD_MM)),
        gaussian(0, shared(Measure.WRIST_RELEASE, "", RELEASE_SD_MS)));
  }

  /**
   * @param spread factor on the player's usual spread (turn 2 deg, slide 8 mm, release 6 ms)
   * @param turnMoreDeg true difference of turn at top and impact
   */
  SwingGroup group(String name, Lesson lesson, int swings, double spread, double turnMoreDeg) {
    List<LessonSwing> out = new ArrayList<>();
    for (int i = 0; i < swings; i++) {
      out.add(new LessonSwing(lesson.name(), swing(lesson, i + 1, spread, turnMoreDeg)));
    }
    return new SwingGroup(name, out);
  }

  private SwingResult swing(Lesson lesson, int number, double spread, double turnMoreDeg) {
    List<MeasureValue> values = new ArrayList<>();
    double effort = random.nextGaussian();
    pelvis("top", turnTopDeg - turnMoreDeg, slideTopMm, effort, lesson, spread, values);
    pelvis("impact", 40 + turnMoreDeg, 80, effort, lesson, spread, values);
    double release =
        gaussian(90, 6 * spread)
            + lesson.timeMs()
            + gaussian(0, own(Measure.WRIST_RELEASE, "", RELEASE_SD_MS));
    values.add(
        MeasureValue.of(
            Measure.WRIST_RELEASE, "", release, RELEASE_SD_MS, Grade.MEASURED, Reason.NONE));
    double ratio = gaussian(3.1, 0.15 * spread) + gaussian(0, 0.05);
    values.add(MeasureValue.of(Measure.TEMPO_RATIO, "", ratio, 0.05, Grade.MEASURED, Reason.NONE));
    return new SwingResult(
        number, "7-iron", SwingKind.HIT, List.of(), List.of(), values, List.of());
  }

  private void pelvis(
      String at,
      double turnMeanDeg,
      double slideMeanMm,
      double effort,
      Lesson lesson,
      double spread,
      List<MeasureValue> values) {
    double turn =
        turnMeanDeg
            + spread * 2 * (0.6 * effort + 0.8 * random.nextGaussian())
            + lesson.turnDeg()
            + gaussian(0, own(Measure.PELVIS_TURN, "top", TURN_SD_DEG));
    double slide =
        slideMeanMm
            + spread * 8 * (0.6 * effort + 0.8 * random.nextGaussian())
            + lesson.slideMm()
            + gaussian(0, own(Measure.PELVIS_SLIDE, "top", SLIDE_SD_MM));
    double arcMm = HALF_HIPS_MM * Math.toRadians(Math.abs(turn));
    double bothMm = arcMm + Math.abs(slide);
    double shareSd =
        100
            * Math.hypot(arcMm * SLIDE_SD_MM, slide * TURN_SD_DEG * arcMm / turn)
            / (bothMm * bothMm);
    values.add(
        MeasureValue.of(Measure.PELVIS_TURN, at, turn, TURN_SD_DEG, Grade.MEASURED, Reason.NONE));
    values.add(
        MeasureValue.of(Measure.PELVIS_SLIDE, at, slide, SLIDE_SD_MM, Grade.MEASURED, Reason.NONE));
    values.add(
        MeasureValue.of(
            Measure.PELVIS_SLIDE_PER_TURN,
            at,
            slide / turn,
            SLIDE_SD_MM / Math.abs(turn),
            Grade.MEASURED,
            Reason.NONE));
    values.add(
        MeasureValue.of(
            Measure.PELVIS_TURN_SHARE,
            at,
            100 * arcMm / bothMm,
            shareSd,
            Grade.MEASURED,
            Reason.NONE));
  }

  /** The part of an error that all swings of a lesson share, by the table of measured shares. */
  private static double shared(Measure measure, String at, double sd) {
    return sd * Math.sqrt(ErrorSplit.defaults().sharedPart(new MeasureAt(measure, at)));
  }

  private static double own(Measure measure, String at, double sd) {
    return sd * Math.sqrt(1 - ErrorSplit.defaults().sharedPart(new MeasureAt(measure, at)));
  }

  private double gaussian(double mean, double sd) {
    return mean + sd * random.nextGaussian();
  }
}
