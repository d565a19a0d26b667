package steadyturn.cli.output.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.IOException;
import java.io.Writer;
import steadyturn.analysis.compare.Comparison;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.Drift;
import steadyturn.analysis.compare.FurtherBalls;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeanDifference;
import steadyturn.analysis.reading.MadeBy;
import steadyturn.cli.words.Verdicts;
import steadyturn.cli.words.Words;

/** A comparison of groups for scripts: one object; what is not there is {@code null}. */
public final class ComparisonJson {

  private ComparisonJson() {}

  /** Writes the comparison and a line end; leaves the writer open. */
  public static void write(Comparison comparison, String by, MadeBy madeBy, Writer to)
      throws IOException {
    ObjectNode root = Json.root(madeBy).put("by", by);
    Json.list(root, "groups", comparison.groups(), TextNode::valueOf);
    Json.list(root, "rows", comparison.rows(), ComparisonJson::node);
    Json.list(
        root, "notices", comparison.notices(), n -> TextNode.valueOf(Words.english().text(n)));
    Json.list(root, "noticeReasons", comparison.notices(), ReasonJson::fields);
    Json.write(root, to);
  }

  /** One row as the contract has it. */
  public static ObjectNode node(ComparisonRow row) {
    ObjectNode node = Json.measure(row.what());
    node.set("first", node(row.first()));
    node.set("second", node(row.second()));
    row.difference()
        .ifPresentOrElse(
            d -> {
              Json.range(node, "difference", d.value(), d.low(), d.high());
              Json.number(node, "detectable", d.detectable());
            },
            () -> node.putNull("difference").putNull("low").putNull("high").putNull("detectable"));
    row.typicalError().ifPresent(t -> Json.number(node, "typicalError", t.value()));
    Json.number(node, "chance", row.adjustedChance(), 5);
    double beyond = row.difference().map(MeanDifference::beyondMargin).orElse(Double.NaN);
    Json.number(node, "beyondMargin", beyond, 5);
    Json.number(node, "margin", row.margin());
    node.put("verdict", row.verdict().word());
    node.put("words", Verdicts.of(row, Words.english()));
    row.further()
        .ifPresentOrElse(more -> node.set("further", node(more)), () -> node.putNull("further"));
    row.drift()
        .ifPresentOrElse(drift -> node.set("drift", node(drift)), () -> node.putNull("drift"));
    return node;
  }

  private static ObjectNode node(FurtherBalls more) {
    ObjectNode node = Json.object();
    Json.number(node, "difference", more.difference());
    Json.number(node, "power", more.power());
    more.balls().ifPresentOrElse(n -> node.put("balls", n), () -> node.putNull("balls"));
    return node;
  }

  private static ObjectNode node(Drift drift) {
    ObjectNode node = Json.object();
    Json.range(node, "change", drift.change(), drift.low(), drift.high());
    Json.number(node, "inDifference", drift.inDifference());
    return node;
  }

  private static ObjectNode node(GroupSummary group) {
    ObjectNode node = Json.object().put("group", group.group());
    node.put("swings", group.count()).put("withheld", group.withheld());
    Json.number(node, "mean", group.mean());
    Json.number(node, "spread", group.spread());
    return node;
  }
}
