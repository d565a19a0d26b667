package steadyturn.cli.output.table;

import static steadyturn.cli.words.Words.say;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.LessonStep;
import steadyturn.analysis.coach.PlayerProgress;
import steadyturn.analysis.compare.Comparison;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.GroupComparison;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeanDifference;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.terminal.Wrapping;
import steadyturn.cli.words.PlainWords;
import steadyturn.cli.words.Verdicts;
import steadyturn.cli.words.Words;

/** A player's lessons for people, at most 100 columns wide. */
public final class ProgressTable {

  private ProgressTable() {}

  /**
   * Writes what changed, the means of each lesson, and the drills; leaves the writer open.
   *
   * @param told what changed from the first lesson to the last, in sentences
   * @param drills what was given after each lesson
   */
  public static void write(
      PlayerProgress progress, List<String> told, List<String> drills, Writer to)
      throws IOException {
    List<String> lines = new ArrayList<>();
    if (!told.isEmpty()) {
      lines.add(say("progress.one"));
      told.forEach(line -> lines.addAll(Layout.beside(" ", 2, line)));
      lines.add("");
    }
    for (MeasureAt what : progress.given()) {
      lines.add(name(what));
      List<List<String>> cells = new ArrayList<>();
      for (LessonStep step : progress.steps()) {
        GroupSummary mean = PlayerProgress.mean(step, what);
        cells.add(
            List.of(
                "  " + say("progress.lesson", step.lesson()),
                step.date(),
                Figure.ifAny(mean.mean(), what.measure()) + range(mean, what.measure()),
                PlainWords.swings(mean.count())));
      }
      lines.addAll(Layout.table(cells, 2));
    }
    lines.add("");
    changes(lines, say("progress.since-last"), progress.sinceLast());
    changes(lines, say("progress.since-first"), progress.sinceFirst());
    lines.add(say("progress.drills"));
    drills.forEach(drill -> lines.addAll(Layout.beside(" ", 2, drill)));
    lines.add("");
    lines.addAll(Wrapping.wrapped(say("progress.read"), Layout.WIDTH));
    lines.addAll(Cautions.afterATable());
    Layout.write(lines, to);
  }

  private static String range(GroupSummary mean, Measure measure) {
    if (mean.count() < GroupComparison.FEWEST_SWINGS) {
      return mean.count() == 0 ? "" : " " + say("progress.no-range");
    }
    double half = mean.halfWidthOfMean();
    return between(mean.mean() - half, mean.mean() + half, measure);
  }

  private static String between(double low, double high, Measure measure) {
    return " (" + Figure.ifAny(low, measure) + " to " + Figure.ifAny(high, measure) + ")";
  }

  private static void changes(List<String> lines, String title, Optional<Comparison> changes) {
    if (changes.isEmpty()) {
      return;
    }
    List<List<String>> cells = new ArrayList<>();
    cells.add(List.of(title, say("progress.change-range"), say("progress.could-show"), ""));
    for (ComparisonRow row : changes.get().rows()) {
      Measure measure = row.what().measure();
      Optional<MeanDifference> d = row.difference();
      cells.add(
          List.of(
              "  " + name(row.what()),
              d.map(x -> Figure.ifAny(x.value(), measure) + between(x.low(), x.high(), measure))
                  .orElse(Figure.WITHHELD),
              d.map(x -> Figure.ifAny(x.detectable(), measure)).orElse(Figure.WITHHELD),
              Verdicts.of(row, Words.inUse())));
    }
    lines.addAll(Layout.table(cells, 1));
    lines.add("");
  }

  private static String name(MeasureAt what) {
    String name = PlainWords.withUnit(what.measure());
    return what.at().isEmpty() ? name : name + ", " + PlainWords.keyPosition(what.at());
  }
}
