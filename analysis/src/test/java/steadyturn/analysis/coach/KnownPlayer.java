package steadyturn.analysis.coach;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import steadyturn.analysis.compare.ErrorSplit;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.reason.Reason;

/**
 * Lessons of players whose causes are known: usual values that differ a little from player to
 * player, a spread from swing to swing, and measuring errors of which most are the same in all
 * swings of a lesson.
 */
final class KnownPlayer {

  /** Usual value, spread between players, spread between swings, measuring error of one swing. */
  record Habit(double value, double betweenPlayers, double betweenSwings, double error) {
    Habit at(double other) {
      return new Habit(other, betweenPlayers, betweenSwings, error);
    }

    Habit steadier(double factor) {
      return new Habit(value, betweenPlayers, betweenSwings * factor, error);
    }
  }

  private final Map<MeasureAt, Habit> habits;

  private KnownPlayer(Map<MeasureAt, Habit> habits) {
    this.habits = habits;
  }

  /** Turns well about a steady centre, keeps the angle, calm tempo. */
  static KnownPlayer goodTurner() {
    Map<MeasureAt, Habit> h = new LinkedHashMap<>();
    h.put(new MeasureAt(Measure.PELVIS_TURN, "top"), new Habit(-47, 2, 2, 1.2));
    h.put(new MeasureAt(Measure.PELVIS_SLIDE, "top"), new Habit(-15, 6, 8, 10));
    h.put(new MeasureAt(Measure.PELVIS_SLIDE, "impact"), new Habit(85, 8, 10, 14));
    h.put(new MeasureAt(Measure.PELVIS_THRUST, "impact"), new Habit(15, 5, 8, 12));
    h.put(new MeasureAt(Measure.PELVIS_CENTRE_ALONG, "top"), new Habit(-10, 6, 12, 20));
    h.put(new MeasureAt(Measure.PELVIS_CIRCLE, ""), new Habit(65, 6, 8, 8));
    h.put(new MeasureAt(Measure.WRIST_KEPT, "lead-arm-level-down"), new Habit(95, 3, 4, 4));
    h.put(new MeasureAt(Measure.WRIST_RELEASE, ""), new Habit(85, 5, 6, 3));
    h.put(new MeasureAt(Measure.TEMPO_BACK, ""), new Habit(0.85, 0.03, 0.03, 0.01));
    h.put(new MeasureAt(Measure.TEMPO_RATIO, ""), new Habit(3.05, 0.08, 0.12, 0.06));
    return new KnownPlayer(h);
  }

  static KnownPlayer slider() {
    return goodTurner()
        .with(Measure.PELVIS_TURN, "top", -28)
        .with(Measure.PELVIS_SLIDE, "top", -75)
        .with(Measure.PELVIS_CENTRE_ALONG, "top", -160)
        .with(Measure.PELVIS_SLIDE, "impact", -20);
  }

  static KnownPlayer earlyRelease() {
    return goodTurner().with(Measure.WRIST_RELEASE, "", 145);
  }

  static KnownPlayer fastTempo() {
    return goodTurner().with(Measure.TEMPO_BACK, "", 0.50).with(Measure.TEMPO_RATIO, "", 2.1);
  }

  static KnownPlayer lateAndSteady() {
    Map<MeasureAt, Habit> calm = new LinkedHashMap<>();
    var late = goodTurner().with(Measure.WRIST_KEPT, "lead-arm-level-down", 100);
    late.habits.forEach((what, habit) -> calm.put(what, habit.steadier(0.5)));
    return new KnownPlayer(calm);
  }

  static KnownPlayer mixed() {
    return slider()
        .with(Measure.WRIST_RELEASE, "", 145)
        .with(Measure.TEMPO_BACK, "", 0.50)
        .with(Measure.TEMPO_RATIO, "", 2.1);
  }

  KnownPlayer with(Measure measure, String at, double value) {
    Map<MeasureAt, Habit> other = new LinkedHashMap<>(habits);
    other.computeIfPresent(new MeasureAt(measure, at), (what, habit) -> habit.at(value));
    return new KnownPlayer(other);
  }

  /** One and the same player in every lesson: only swings and the wearing of units vary. */
  KnownPlayer unchanging() {
    Map<MeasureAt, Habit> same = new LinkedHashMap<>();
    habits.forEach(
        (what, h) -> same.put(what, new Habit(h.value(), 0, h.betweenSwings(), h.error())));
    return new KnownPlayer(same);
  }

  /** A lesson of one player of this kind. */
  List<SwingResult> lesson(Random random, int swings) {
    Map<MeasureAt, Double> usual = new LinkedHashMap<>();
    habits.forEach(
        (what, h) ->
            usual.put(
                what,
                h.value()
                    + h.betweenPlayers() * random.nextGaussian()
                    + Math.sqrt(shared(what)) * h.error() * random.nextGaussian()));
    List<SwingResult> out = new ArrayList<>();
    for (int i = 0; i < swings; i++) {
      List<MeasureValue> values = new ArrayList<>();
      habits.forEach(
          (what, h) -> values.add(value(what, h, usual.getOrDefault(what, 0.0), random)));
      values.add(turnShare(values));
      out.add(
          new SwingResult(i + 1, "7-iron", SwingKind.HIT, List.of(), List.of(), values, List.of()));
    }
    return out;
  }

  /** As the table of measured shares has it. */
  private static double shared(MeasureAt what) {
    return ErrorSplit.defaults().sharedPart(what);
  }

  /** Computed from turn and slide at the top, for a pelvis 240 mm wide. */
  private static MeasureValue turnShare(List<MeasureValue> values) {
    double arcMm = 86.5 * Math.toRadians(Math.abs(values.get(0).value()));
    double slideMm = values.get(1).value();
    double slideErrorMm = (values.get(1).high() - values.get(1).low()) / (2 * MeasureValue.Z95);
    double bothMm = arcMm + Math.abs(slideMm);
    return MeasureValue.of(
        Measure.PELVIS_TURN_SHARE,
        "top",
        100 * arcMm / bothMm,
        100 * arcMm * slideErrorMm / (bothMm * bothMm),
        Grade.MEASURED,
        Reason.NONE);
  }

  private static MeasureValue value(MeasureAt what, Habit h, double usual, Random random) {
    double own = Math.sqrt(1 - shared(what)) * h.error() * random.nextGaussian();
    double value = usual + h.betweenSwings() * random.nextGaussian() + own;
    return MeasureValue.of(
        what.measure(), what.at(), value, h.error(), Grade.MEASURED, Reason.NONE);
  }
}
