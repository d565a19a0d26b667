package steadyturn.analysis.coach;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.GroupComparison;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.sample.Mark;

/**
 * How a drill went in one recording, and whether the full swing changed with it.
 *
 * @param reps repetitions with a value, in order
 * @param unseen repetitions that were marked but gave no value
 * @param inBand how many lay in the band
 * @param longestRun most in the band one after the other
 * @param effect full swings after the drill against those before; empty without swings on both
 *     sides
 */
public record DrillScore(
    Drill drill,
    List<DrillRep> reps,
    int unseen,
    int inBand,
    int longestRun,
    Optional<ComparisonRow> effect) {

  /** The mark of a repetition in the events file; its note is the name of the drill. */
  public static final String MARK = "drill-rep";

  private static final double LONGEST_REP_S = 12;

  public DrillScore {
    reps = List.copyOf(reps);
  }

  /** Scores every drill that a recording has marks for, in the order they were begun. */
  public static List<DrillScore> of(Teaching teaching, List<Mark> marks, List<SwingResult> swings) {
    Map<String, List<Mark>> byDrill = new LinkedHashMap<>();
    for (Mark mark : marks) {
      if (mark.trialType().equals(MARK)) {
        byDrill.computeIfAbsent(mark.note().strip(), name -> new ArrayList<>()).add(mark);
      }
    }
    List<DrillScore> scores = new ArrayList<>();
    byDrill.forEach(
        (name, reps) ->
            teaching.drills().stream()
                .filter(drill -> drill.name().equals(name))
                .forEach(drill -> scores.add(score(drill, reps, marks, swings))));
    return scores;
  }

  /** The swings that are no repetition of a drill. */
  public static List<SwingResult> fullSwings(List<Mark> marks, List<SwingResult> swings) {
    return swings.stream()
        .filter(
            s -> marks.stream().filter(m -> m.trialType().equals(MARK)).noneMatch(m -> isRep(m, s)))
        .toList();
  }

  private static DrillScore score(
      Drill drill, List<Mark> own, List<Mark> marks, List<SwingResult> swings) {
    List<DrillRep> reps = new ArrayList<>();
    int run = 0;
    int longest = 0;
    for (Mark mark : own) {
      Optional<DrillRep> rep = rep(drill, mark, swings);
      rep.ifPresent(reps::add);
      run = rep.isPresent() && rep.get().inBand() ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
    int inBand = (int) reps.stream().filter(DrillRep::inBand).count();
    List<SwingResult> full = fullSwings(marks, swings);
    Optional<ComparisonRow> effect = effect(drill, own, full);
    return new DrillScore(drill, reps, own.size() - reps.size(), inBand, longest, effect);
  }

  private static Optional<DrillRep> rep(Drill drill, Mark mark, List<SwingResult> swings) {
    return swings.stream()
        .filter(swing -> isRep(mark, swing))
        .findFirst()
        .flatMap(
            swing ->
                swing
                    .measure(drill.judgedBy().measure(), drill.judgedBy().at())
                    .filter(MeasureValue::given)
                    .map(v -> new DrillRep(swing.number(), v, inBand(drill, v))));
  }

  private static boolean inBand(Drill drill, MeasureValue value) {
    return drill.low() <= value.value() && value.value() <= drill.high();
  }

  /** The top lies within the mark; a mark that is only an instant lasts 12 s at most. */
  private static boolean isRep(Mark mark, SwingResult swing) {
    double endS = mark.durationS() > 0 ? mark.endS() : mark.onsetS() + LONGEST_REP_S;
    double topS = timeS(swing);
    return mark.onsetS() <= topS && topS <= endS;
  }

  private static double timeS(SwingResult swing) {
    return swing.events().stream()
        .filter(e -> e.event() == SwingEvent.TOP)
        .findFirst()
        .map(EventTime::timeS)
        .orElse(Double.NaN);
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
    return GroupComparison.withDefaults().compare(groups, List.of(drill.judgedBy())).rows().stream()
        .findFirst();
  }

  private static List<LessonSwing> swings(List<SwingResult> full, double fromS, double toS) {
    return full.stream()
        .filter(s -> timeS(s) > fromS && timeS(s) < toS)
        .map(s -> new LessonSwing("", s))
        .toList();
  }
}
