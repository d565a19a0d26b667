package steadyturn.cli.output.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.coach.LessonStep;
import steadyturn.analysis.coach.PlayerProgress;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.Comparison;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.GroupComparison;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.reading.MadeBy;

/** A player's lessons for scripts: values in the units of the measures. */
public final class ProgressJson {

  private ProgressJson() {}

  /** Writes one object and a line end; leaves the writer open. */
  public static void write(
      String player,
      String club,
      PlayerProgress progress,
      Teaching teaching,
      MadeBy madeBy,
      Writer to)
      throws IOException {
    ObjectNode root = Json.root(madeBy).put("player", player).put("club", club);
    Json.list(root, "lessons", progress.steps(), step -> lesson(step, progress.given(), teaching));
    changes(root, "sinceLast", progress.sinceLast());
    changes(root, "sinceFirst", progress.sinceFirst());
    Json.write(root, to);
  }

  private static ObjectNode lesson(LessonStep step, List<MeasureAt> given, Teaching teaching) {
    ObjectNode node = Json.object().put("lesson", step.lesson()).put("date", step.date());
    node.put("swings", step.swings().size());
    Json.list(node, "means", given, what -> mean(step, what));
    given(node, step, teaching);
    return node;
  }

  private static ObjectNode mean(LessonStep step, MeasureAt what) {
    GroupSummary mean = PlayerProgress.mean(step, what);
    ObjectNode node = Json.measure(what).put("swings", mean.count());
    boolean ranged = mean.count() >= GroupComparison.FEWEST_SWINGS;
    double half = ranged ? mean.halfWidthOfMean() : Double.NaN;
    Json.range(node, "mean", mean.mean(), mean.mean() - half, mean.mean() + half);
    return node;
  }

  private static void given(ObjectNode node, LessonStep step, Teaching teaching) {
    step.advice()
        .priority()
        .ifPresentOrElse(
            finding -> {
              node.put("priority", finding.rule().name());
              step.given(teaching).ifPresent(drill -> node.set("drill", drill(drill)));
            },
            () -> node.putNull("priority"));
  }

  private static ObjectNode drill(Drill drill) {
    return Json.object()
        .put("id", drill.name())
        .put("measure", drill.judgedBy().measure().id())
        .put("at", drill.judgedBy().at())
        .put("low", drill.low())
        .put("high", drill.high());
  }

  private static void changes(ObjectNode root, String key, Optional<Comparison> changes) {
    List<ComparisonRow> rows = changes.map(Comparison::rows).orElse(List.of());
    Json.list(root, key, rows, ComparisonJson::node);
  }
}
