package steadyturn.cli.output.json;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import java.util.Optional;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.PairRow;
import steadyturn.analysis.compare.SwingPair;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.cli.output.Decimals;
import steadyturn.cli.words.Verdicts;
import steadyturn.cli.words.Words;

/** Two single swings for scripts: one object; what is not there is {@code null}. */
public final class PairJson {

  private static final ObjectMapper JSON =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  private PairJson() {}

  /** Writes the pair and a line end; leaves the writer open. */
  public static void write(SwingPair pair, Writer to) throws IOException {
    ObjectNode root = JSON.createObjectNode();
    root.put("by", "swings");
    root.set("first", swing(pair.first()));
    root.set("second", swing(pair.second()));
    var rows = root.putArray("rows");
    pair.rows().forEach(row -> rows.add(node(row)));
    to.write(JSON.writeValueAsString(root));
    to.write('\n');
  }

  private static ObjectNode swing(LessonSwing each) {
    ObjectNode node = JSON.createObjectNode();
    node.put("lesson", each.lesson());
    node.put("swing", each.swing().number());
    node.put("club", each.swing().club());
    node.put("kind", each.swing().kind().word());
    return node;
  }

  private static ObjectNode node(PairRow row) {
    ObjectNode node = JSON.createObjectNode();
    node.put("measure", row.what().measure().id());
    node.put("at", row.what().at());
    node.put("unit", row.what().measure().unit());
    node.set("first", value(row.first()));
    node.set("second", value(row.second()));
    number(node, "difference", row.difference().map(PairRow.Difference::value));
    number(node, "low", row.difference().map(PairRow.Difference::low));
    number(node, "high", row.difference().map(PairRow.Difference::high));
    number(node, "usual", row.usual());
    node.put("found", row.found().word());
    node.put("words", Verdicts.of(row, Words.english()));
    return node;
  }

  private static ObjectNode value(Optional<MeasureValue> value) {
    ObjectNode node = JSON.createObjectNode();
    number(node, "value", value.map(MeasureValue::value));
    number(node, "low", value.map(MeasureValue::low));
    number(node, "high", value.map(MeasureValue::high));
    node.put("grade", value.map(v -> v.grade().word()).orElse("withheld"));
    return node;
  }

  private static void number(ObjectNode node, String key, Optional<Double> value) {
    value
        .filter(Double::isFinite)
        .ifPresentOrElse(
            v -> node.put(key, Decimals.round(v, Decimals.OF_VALUE)), () -> node.putNull(key));
  }
}
