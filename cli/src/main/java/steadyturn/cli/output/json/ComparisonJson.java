package steadyturn.cli.output.json;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import steadyturn.analysis.compare.Comparison;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.cli.output.Decimals;
import steadyturn.cli.words.Verdicts;
import steadyturn.cli.words.Words;

/** A comparison of groups for scripts: one object; what is not there is {@code null}. */
public final class ComparisonJson {

  private static final ObjectMapper JSON =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  private ComparisonJson() {}

  /** Writes the comparison and a line end; leaves the writer open. */
  public static void write(Comparison comparison, String by, Writer to) throws IOException {
    ObjectNode root = JSON.createObjectNode();
    root.put("by", by);
    ArrayNode groups = root.putArray("groups");
    comparison.groups().forEach(groups::add);
    ArrayNode rows = root.putArray("rows");
    comparison.rows().forEach(row -> rows.add(node(row)));
    ArrayNode notices = root.putArray("notices");
    comparison.notices().forEach(n -> notices.add(Words.english().text(n)));
    root.set(
        "noticeReasons",
        JSON.valueToTree(comparison.notices().stream().map(ReasonJson::fields).toList()));
    to.write(JSON.writeValueAsString(root));
    to.write('\n');
  }

  /** One row as the contract has it. */
  public static ObjectNode node(ComparisonRow row) {
    ObjectNode node = JSON.createObjectNode();
    node.put("measure", row.what().measure().id());
    node.put("at", row.what().at());
    node.put("unit", row.what().measure().unit());
    node.set("first", node(row.first()));
    node.set("second", node(row.second()));
    row.difference()
        .ifPresentOrElse(
            d -> {
              number(node, "difference", d.value());
              number(node, "low", d.low());
              number(node, "high", d.high());
              number(node, "detectable", d.detectable());
            },
            () -> node.putNull("difference").putNull("low").putNull("high").putNull("detectable"));
    row.typicalError().ifPresent(t -> number(node, "typicalError", t.value()));
    node.put("chance", Math.rint(row.adjustedChance() * 1e5) / 1e5);
    number(node, "margin", row.margin());
    node.put("verdict", row.verdict().word());
    node.put("words", Verdicts.of(row, Words.english()));
    return node;
  }

  private static ObjectNode node(GroupSummary group) {
    ObjectNode node = JSON.createObjectNode();
    node.put("group", group.group());
    node.put("swings", group.count());
    node.put("withheld", group.withheld());
    number(node, "mean", group.mean());
    number(node, "spread", group.spread());
    return node;
  }

  private static void number(ObjectNode node, String key, double value) {
    if (Double.isFinite(value)) {
      node.put(key, Decimals.round(value, Decimals.OF_VALUE));
    } else {
      node.putNull(key);
    }
  }
}
