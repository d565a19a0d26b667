package steadyturn.cli.output.table;

import static steadyturn.cli.words.Words.say;

import java.util.ArrayList;
import java.util.List;
import steadyturn.analysis.coach.drill.DrillRep;
import steadyturn.analysis.coach.drill.DrillScore;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.GoalVerdict;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.MeanDifference;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.terminal.Wrapping;
import steadyturn.cli.words.PlainWords;
import steadyturn.cli.words.Verdicts;
import steadyturn.cli.words.Words;

/** The drills of a lesson for people: every repetition with its interval, and what they brought. */
public final class DrillTable {

  private DrillTable() {}

  /** One block a drill; nothing without drills. */
  static List<String> lines(List<DrillScore> scores) {
    List<String> lines = new ArrayList<>();
    for (DrillScore score : scores) {
      lines.addAll(Wrapping.wrapped(head(score.drill()), Layout.WIDTH));
      lines.addAll(repetitions(score));
      lines.addAll(Layout.beside("", 2, summary(score)));
      score.effect().ifPresent(row -> lines.addAll(Layout.beside("", 2, effect(row))));
      lines.add("");
    }
    return lines;
  }

  private static String head(Drill drill) {
    Measure measure = drill.judgedBy().measure();
    String at = drill.judgedBy().at();
    String name = PlainWords.of(measure) + (at.isEmpty() ? "" : ", " + PlainWords.keyPosition(at));
    return say(
        "drills.head",
        say("drill." + drill.name() + ".name"),
        name,
        Figure.nearest(drill.low(), measure),
        Figure.withUnit(drill.high(), measure));
  }

  private static List<String> repetitions(DrillScore score) {
    if (score.reps().isEmpty()) {
      return List.of();
    }
    List<List<String>> cells = new ArrayList<>();
    String unit = PlainWords.unit(score.drill().judgedBy().measure());
    cells.add(List.of("  " + say("drills.rep"), say("drills.time"), unit, ""));
    int number = 0;
    for (DrillRep rep : score.reps()) {
      number++;
      cells.add(
          List.of(
              "  " + number,
              Words.inUse().decimal(rep.timeS() % DrillScore.APART_S, 1),
              Figure.narrow(rep.value()),
              verdict(rep)));
    }
    return Layout.table(cells, 1);
  }

  private static String verdict(DrillRep rep) {
    return say("goal." + rep.verdict().word());
  }

  /** The name of a drill and how it went. */
  public static String went(DrillScore score) {
    return say("drill." + score.drill().name() + ".name") + ": " + summary(score);
  }

  private static String summary(DrillScore score) {
    String words =
        say(
            "drills.summary",
            score.count(GoalVerdict.INSIDE),
            score.count(GoalVerdict.OUTSIDE),
            score.count(GoalVerdict.CANNOT_BE_TOLD));
    return score.unseen() == 0 ? words : words + " " + say("drills.unseen", score.unseen());
  }

  private static String effect(ComparisonRow row) {
    Measure measure = row.what().measure();
    if (row.difference().isEmpty()) {
      return say("drills.effect.few");
    }
    MeanDifference d = row.difference().get();
    return say(
        "drills.effect",
        Figure.nearest(row.first().mean(), measure),
        Figure.nearest(row.second().mean(), measure),
        Figure.nearest(d.value(), measure),
        Figure.nearest(d.low(), measure),
        Figure.withUnit(d.high(), measure),
        Verdicts.of(row, Words.inUse()));
  }
}
