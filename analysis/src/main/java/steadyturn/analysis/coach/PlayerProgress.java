package steadyturn.analysis.coach;

import java.util.List;
import java.util.Optional;
import steadyturn.analysis.compare.Comparison;
import steadyturn.analysis.compare.ErrorSplit;
import steadyturn.analysis.compare.GroupComparison;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.measure.Measure;

/**
 * A player's lessons one after the other, and what truly changed. Units are put on anew for every
 * lesson, so the error that swings of one lesson share counts in full between lessons.
 *
 * @param steps the lessons with full swings, the oldest first
 * @param sinceLast the last lesson against the one before; empty with one lesson
 * @param sinceFirst the last lesson against the first; empty with fewer than three lessons, where
 *     both are the same
 */
public record PlayerProgress(
    List<LessonStep> steps, Optional<Comparison> sinceLast, Optional<Comparison> sinceFirst) {

  /** What is followed: few, as every further row asks for stronger evidence in all of them. */
  public static final List<MeasureAt> FOLLOWED =
      List.of(
          new MeasureAt(Measure.PELVIS_TURN, "top"),
          new MeasureAt(Measure.PELVIS_SLIDE, "top"),
          new MeasureAt(Measure.PELVIS_SLIDE, "impact"),
          new MeasureAt(Measure.PELVIS_CIRCLE, ""),
          new MeasureAt(Measure.WRIST_KEPT, "lead-arm-level-down"),
          new MeasureAt(Measure.WRIST_RELEASE, ""),
          new MeasureAt(Measure.TEMPO_RATIO, ""));

  public PlayerProgress {
    steps = List.copyOf(steps);
  }

  /** Compares lessons; those without a full swing drop out. */
  public static PlayerProgress of(List<LessonStep> lessons) {
    List<LessonStep> steps = lessons.stream().filter(step -> !step.swings().isEmpty()).toList();
    int n = steps.size();
    return new PlayerProgress(
        steps,
        n < 2 ? Optional.empty() : compared(steps.get(n - 2), steps.get(n - 1)),
        n < 3 ? Optional.empty() : compared(steps.get(0), steps.get(n - 1)));
  }

  /** The last lesson against the first, however many lie between; empty with one lesson. */
  public Optional<Comparison> overall() {
    return sinceFirst.isPresent() ? sinceFirst : sinceLast;
  }

  /** The mean of a measure in one lesson; count 0 where no swing has it. */
  public static GroupSummary mean(LessonStep step, MeasureAt what) {
    return GroupSummary.of(group(step), what, ErrorSplit.defaults());
  }

  /** The measures that any lesson has. */
  public List<MeasureAt> given() {
    return FOLLOWED.stream()
        .filter(what -> steps.stream().anyMatch(step -> has(step, what)))
        .toList();
  }

  private static boolean has(LessonStep step, MeasureAt what) {
    return mean(step, what).count() > 0;
  }

  private static Optional<Comparison> compared(LessonStep before, LessonStep now) {
    List<MeasureAt> both =
        FOLLOWED.stream().filter(what -> has(before, what) && has(now, what)).toList();
    return both.isEmpty()
        ? Optional.empty()
        : Optional.of(GroupComparison.compare(List.of(group(before), group(now)), both));
  }

  /** The swings of a lesson. */
  public static SwingGroup group(LessonStep step) {
    return new SwingGroup(
        step.lesson(), step.swings().stream().map(s -> new LessonSwing(step.lesson(), s)).toList());
  }
}
