package steadyturn.cli.output.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import java.util.Optional;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.PairRow;
import steadyturn.analysis.compare.SwingPair;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.reading.MadeBy;
import steadyturn.cli.words.Verdicts;
import steadyturn.cli.words.Words;

/** Two single swings for scripts: one object; what is not there is {@code null}. */
public final class PairJson {

  private PairJson() {}

  /** Writes the pair and a line end; leaves the writer open. */
  public static void write(SwingPair pair, MadeBy madeBy, Writer to) throws IOException {
    ObjectNode root = Json.root(madeBy).put("by", "swings");
    root.set("first", swing(pair.first()));
    root.set("second", swing(pair.second()));
    Json.list(root, "rows", pair.rows(), PairJson::node);
    Json.write(root, to);
  }

  private static ObjectNode swing(LessonSwing each) {
    return Json.object()
        .put("lesson", each.lesson())
        .put("swing", each.swing().number())
        .put("club", each.swing().club())
        .put("kind", each.swing().kind().word());
  }

  private static ObjectNode node(PairRow row) {
    ObjectNode node = Json.measure(row.what());
    node.set("first", value(row.first()));
    node.set("second", value(row.second()));
    row.difference()
        .ifPresentOrElse(
            d -> Json.range(node, "difference", d.value(), d.low(), d.high()),
            () -> node.putNull("difference").putNull("low").putNull("high"));
    Json.number(node, "usual", row.usual().orElse(Double.NaN));
    node.put("found", row.found().word());
    return node.put("words", Verdicts.of(row, Words.english()));
  }

  private static ObjectNode value(Optional<MeasureValue> value) {
    ObjectNode node = Json.object();
    value.ifPresentOrElse(
        v -> Json.range(node, "value", v.value(), v.low(), v.high()),
        () -> node.putNull("value").putNull("low").putNull("high"));
    return node.put("grade", value.map(v -> v.grade().word()).orElse("withheld"));
  }
}
