package steadyturn.cli.output.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.IOException;
import java.io.Writer;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.lesson.UnitResult;
import steadyturn.analysis.measure.Decimals;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.reading.MadeBy;
import steadyturn.analysis.swing.EventTime;
import steadyturn.ingest.reason.Reason;

/**
 * The result for scripts: always one object with the version of its form and a list of recordings,
 * keys in the same order (docs/schema/analyze.json). A withheld value, and the open end of an "at
 * least" value, is {@code null}; {@code why} says the reason in English, {@code reason} and {@code
 * args} say it for machines.
 */
public final class JsonReport {

  private final JsonGenerator json;

  /** The same few reasons come with every swing. */
  private final Map<Reason, ObjectNode> told = new HashMap<>();

  private JsonReport(JsonGenerator json) {
    this.json = json;
  }

  /** Writes the results and a line end; leaves the writer open. */
  public static void write(List<LessonResult> results, AnalysisSettings settings, Writer to)
      throws IOException {
    JsonFactory factory =
        JsonFactory.builder()
            .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .build();
    try (JsonGenerator json = new JsonMapper(factory).createGenerator(to)) {
      json.setPrettyPrinter(new DefaultPrettyPrinter());
      MadeBy madeBy = MadeBy.of(settings, results.stream().flatMap(r -> r.units().stream()));
      new JsonReport(json).results(results, madeBy);
    }
    to.write('\n');
  }

  private void results(List<LessonResult> results, MadeBy madeBy) throws IOException {
    json.writeStartObject();
    json.writeNumberField("version", Json.VERSION);
    json.writeFieldName("madeBy");
    json.writeTree(Json.node(madeBy));
    json.writeArrayFieldStart("recordings");
    for (LessonResult result : results) {
      lesson(result);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  /** Swing after swing: a long lesson as one tree would fill the memory. */
  private void lesson(LessonResult result) throws IOException {
    ObjectNode head = Json.object().put("recording", result.recording());
    head.putObject("player")
        .put("id", result.player().id())
        .put("handed", result.player().handed().word());
    head.put("aim", result.aim());
    Json.list(head, "units", result.units(), JsonReport::unit);
    ObjectNode tail = Json.object();
    ReasonJson.notices(tail, result.notices());
    json.writeStartObject();
    fields(head);
    json.writeArrayFieldStart("swings");
    for (SwingResult swing : result.swings()) {
      json.writeTree(swing(swing));
    }
    json.writeEndArray();
    fields(tail);
    json.writeEndObject();
  }

  private void fields(ObjectNode node) throws IOException {
    for (Map.Entry<String, JsonNode> field : node.properties()) {
      json.writeFieldName(field.getKey());
      json.writeTree(field.getValue());
    }
  }

  private static ObjectNode unit(UnitResult unit) {
    ObjectNode node = Json.object().put("point", unit.point().trackedPoint());
    Json.number(node, "rateHz", unit.rateHz());
    Json.number(node, "lostPct", unit.lostPct());
    node.put("saturatedSamples", unit.saturatedSamples());
    unit.calibratedOn()
        .ifPresentOrElse(
            day -> node.put("calibratedOn", day.toString()), () -> node.putNull("calibratedOn"));
    return node;
  }

  private ObjectNode swing(SwingResult swing) {
    ObjectNode node = Json.object().put("swing", swing.number());
    node.put("club", swing.club()).put("kind", swing.kind().word());
    Json.list(node, "flags", swing.flags(), TextNode::valueOf);
    Json.list(node, "events", swing.events(), this::event);
    Json.list(node, "measures", swing.measures(), this::measure);
    return node;
  }

  private ObjectNode event(EventTime event) {
    ObjectNode node = Json.object().put("name", event.event().word());
    Json.number(node, "timeS", event.timeS(), Decimals.OF_TIME_S);
    Json.number(node, "sdS", event.sdS(), Decimals.OF_TIME_S);
    return why(node.put("grade", event.grade().word()), event.why());
  }

  private ObjectNode measure(MeasureValue measure) {
    ObjectNode node = Json.object().put("id", measure.measure().id()).put("at", measure.at());
    Json.number(node, "value", measure.value());
    node.put("unit", measure.measure().unit());
    Json.number(node, "low", measure.low());
    Json.number(node, "high", measure.high());
    return why(node.put("grade", measure.grade().word()), measure.why());
  }

  private ObjectNode why(ObjectNode node, Reason reason) {
    return node.setAll(told.computeIfAbsent(reason, ReasonJson::fields));
  }
}
