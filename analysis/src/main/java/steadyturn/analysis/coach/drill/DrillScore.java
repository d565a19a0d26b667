package steadyturn.analysis.coach.drill;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.GoalVerdict;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.GroupComparison;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.swing.DrillMark;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.sample.Mark;

/**
 * How a drill went in one recording, and whether the full swing changed with it.
 *
 * @param reps repetitions with a value, in order
 * @param unseen repetitions that were marked but gave no value
 * @param inBand how many lay in the band
 * @param near how many lie so near an edge of the band that their interval crosses it
 * @param longestRun most in the band one after the other
 * @param effect full swings after the drill against those before; empty without swings on both
 *     sides
 */
public record DrillScore(
    Drill drill,
    List<DrillRep> reps,
    int unseen,
    int inBand,
    int near,
    int longestRun,
    Optional<ComparisonRow> effect) {

  /** How far the recordings of a lesson are laid apart on one time axis, s; none is as long. */
  public static final double APART_S = 1e6;

  public DrillScore {
    reps = List.copyOf(reps);
  }

  /**
   * Scores every drill that a recording has marks for, in the order they were begun.
   *
   * @param rehearsals movements without a full swing within the marks, on the same time axis
   */
  public static List<DrillScore> of(
      Teaching teaching, List<Mark> marks, List<SwingResult> swings, List<Rehearsal> rehearsals) {
    List<SwingResult> full = fullSwings(swings);
    Map<String, List<Mark>> byDrill =
        DrillMark.reps(marks)
            .collect(
                Collectors.groupingBy(
                    mark -> mark.note().strip(), LinkedHashMap::new, Collectors.toList()));
    List<DrillScore> scores = new ArrayList<>();
    byDrill.forEach(
        (name, own) ->
            teaching.drills().stream()
                .filter(drill -> drill.name().equals(name))
                .map(drill -> score(drill, own, DrillReps.of(drill, own, swings, rehearsals), full))
                .forEach(scores::add));
    return scores;
  }

  /** The swings that count and are no repetition of a drill. */
  public static List<SwingResult> fullSwings(List<SwingResult> swings) {
    return swings.stream().filter(s -> s.kind() != SwingKind.DRILL && s.counts()).toList();
  }

  /** How many repetitions lie so to the band, by their whole interval. */
  public long count(GoalVerdict verdict) {
    return reps.stream().filter(rep -> rep.verdict() == verdict).count();
  }

  private static DrillScore score(
      Drill drill, List<Mark> own, List<Optional<DrillRep>> done, List<SwingResult> full) {
    int run = 0;
    int longest = 0;
    for (Optional<DrillRep> rep : done) {
      run = rep.isPresent() && rep.get().inBand() ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
    List<DrillRep> reps = done.stream().flatMap(Optional::stream).toList();
    int inBand = (int) reps.stream().filter(DrillRep::inBand).count();
    int near = (int) reps.stream().filter(rep -> !rep.sure()).count();
    int unseen = done.size() - reps.size();
    return new DrillScore(drill, reps, unseen, inBand, near, longest, effect(drill, own, full));
  }

  private static Optional<ComparisonRow> effect(
      Drill drill, List<Mark> own, List<SwingResult> full) {
    double firstS = own.get(0).onsetS();
    double lastS = own.get(own.size() - 1).onsetS();
    List<LessonSwing> before = swings(full, Double.NEGATIVE_INFINITY, firstS);
    List<LessonSwing> after = swings(full, lastS, Double.POSITIVE_INFINITY);
    if (before.isEmpty() || after.isEmpty()) {
      return Optional.empty();
    }
    List<SwingGroup> groups =
        List.of(new SwingGroup("before", before), new SwingGroup("after", after));
    return GroupComparison.compare(groups, List.of(drill.judgedBy())).rows().stream().findFirst();
  }

  private static List<LessonSwing> swings(List<SwingResult> full, double fromS, double toS) {
    return full.stream()
        .filter(s -> s.timeS(SwingEvent.TOP) > fromS && s.timeS(SwingEvent.TOP) < toS)
        .map(s -> new LessonSwing("", s))
        .toList();
  }
}
