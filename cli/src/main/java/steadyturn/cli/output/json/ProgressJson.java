package steadyturn.cli.output.json;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import java.util.Optional;
import steadyturn.analysis.coach.LessonStep;
import steadyturn.analysis.coach.PlayerProgress;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.Comparison;
import steadyturn.analysis.compare.GroupComparison;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.cli.output.Decimals;

/** A player's lessons for scripts: values in the units of the measures. */
public final class ProgressJson {

  private static final ObjectMapper JSON =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  private ProgressJson() {}

  /** Writes one object and a line end; leaves the writer open. */
  public static void write(
      String player, String club, PlayerProgress progress, Teaching teaching, Writer to)
      throws IOException {
    ObjectNode root = JSON.createObjectNode().put("player", player).put("club", club);
    ArrayNode lessons = root.putArray("lessons");
    for (LessonStep step : progress.steps()) {
      ObjectNode node = lessons.addObject();
      node.put("lesson", step.lesson()).put("date", step.date());
      node.put("swings", step.swings().size());
      ArrayNode means = node.putArray("means");
      progress.given().forEach(what -> means.add(mean(step, what)));
      given(node, step, teaching);
    }
    changes(root, "sinceLast", progress.sinceLast());
    changes(root, "sinceFirst", progress.sinceFirst());
    to.write(JSON.writeValueAsString(root));
    to.write('\n');
  }

  private static ObjectNode mean(LessonStep step, MeasureAt what) {
    GroupSummary mean = PlayerProgress.mean(step, what);
    ObjectNode node = JSON.createObjectNode();
    node.put("measure", what.measure().id()).put("at", what.at());
    node.put("unit", what.measure().unit()).put("swings", mean.count());
    boolean ranged = mean.count() >= GroupComparison.FEWEST_SWINGS;
    double half = ranged ? mean.halfWidthOfMean() : Double.NaN;
    number(node, "mean", mean.mean());
    number(node, "low", mean.mean() - half);
    number(node, "high", mean.mean() + half);
    return node;
  }

  private static void given(ObjectNode node, LessonStep step, Teaching teaching) {
    step.advice()
        .priority()
        .ifPresentOrElse(
            finding -> {
              node.put("priority", finding.rule().name());
              finding.rule().drills().stream()
                  .findFirst()
                  .ifPresent(name -> node.set("drill", drill(teaching.drill(name))));
            },
            () -> node.putNull("priority"));
  }

  private static ObjectNode drill(Drill drill) {
    return JSON.createObjectNode()
        .put("id", drill.name())
        .put("measure", drill.judgedBy().measure().id())
        .put("at", drill.judgedBy().at())
        .put("low", drill.low())
        .put("high", drill.high());
  }

  private static void changes(ObjectNode root, String key, Optional<Comparison> changes) {
    ArrayNode rows = root.putArray(key);
    changes.ifPresent(c -> c.rows().forEach(row -> rows.add(ComparisonJson.node(row))));
  }

  private static void number(ObjectNode node, String key, double value) {
    if (Double.isFinite(value)) {
      node.put(key, Decimals.round(value, Decimals.OF_VALUE));
    } else {
      node.putNull(key);
    }
  }
}
