package steadyturn.cli.output.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.Writer;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.lesson.UnitResult;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.cli.output.Decimals;
import steadyturn.cli.words.Words;
import steadyturn.ingest.reason.Reason;

/**
 * The result for scripts: one object a recording, keys always in the same order. Where several
 * recordings were asked for, one object with them in {@code recordings}. A withheld value, and the
 * open end of an "at least" value, is {@code null}; {@code why} says the reason in English, {@code
 * reason} and {@code args} say it for machines.
 */
public final class JsonReport {

  private final JsonGenerator json;
  private final Map<Reason, Map<String, Object>> told = new HashMap<>();

  private JsonReport(JsonGenerator json) {
    this.json = json;
  }

  /** Writes the results and a line end; leaves the writer open. */
  public static void write(List<LessonResult> results, Writer to) throws IOException {
    JsonFactory factory =
        JsonFactory.builder()
            .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .build();
    try (JsonGenerator json = new JsonMapper(factory).createGenerator(to)) {
      json.setPrettyPrinter(new DefaultPrettyPrinter());
      new JsonReport(json).results(results);
    }
    to.write('\n');
  }

  private void results(List<LessonResult> results) throws IOException {
    if (results.size() == 1) {
      lesson(results.get(0));
      return;
    }
    json.writeStartObject();
    json.writeArrayFieldStart("recordings");
    for (LessonResult result : results) {
      lesson(result);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void lesson(LessonResult result) throws IOException {
    json.writeStartObject();
    json.writeStringField("recording", result.recording());
    json.writeObjectFieldStart("player");
    json.writeStringField("id", result.player().id());
    json.writeStringField("handed", result.player().handed().word());
    json.writeEndObject();
    json.writeStringField("aim", result.aim());
    json.writeArrayFieldStart("units");
    for (UnitResult unit : result.units()) {
      unit(unit);
    }
    json.writeEndArray();
    json.writeArrayFieldStart("swings");
    for (SwingResult swing : result.swings()) {
      swing(swing);
    }
    json.writeEndArray();
    words("notices", Words.english().told(result.notices()).keySet());
    json.writePOJOField("noticeReasons", ReasonJson.notices(result.notices()));
    json.writeEndObject();
  }

  private void unit(UnitResult unit) throws IOException {
    json.writeStartObject();
    json.writeStringField("point", unit.point().trackedPoint());
    number("rateHz", unit.rateHz(), Decimals.OF_VALUE);
    number("lostPct", unit.lostPct(), Decimals.OF_VALUE);
    json.writeNumberField("saturatedSamples", unit.saturatedSamples());
    json.writeEndObject();
  }

  private void swing(SwingResult swing) throws IOException {
    json.writeStartObject();
    json.writeNumberField("swing", swing.number());
    json.writeStringField("club", swing.club());
    json.writeStringField("kind", swing.kind().word());
    words("flags", swing.flags());
    json.writeArrayFieldStart("events");
    for (EventTime event : swing.events()) {
      event(event);
    }
    json.writeEndArray();
    json.writeArrayFieldStart("measures");
    for (MeasureValue measure : swing.measures()) {
      measure(measure);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void event(EventTime event) throws IOException {
    json.writeStartObject();
    json.writeStringField("name", event.event().word());
    number("timeS", event.timeS(), Decimals.OF_TIME_S);
    number("sdS", event.sdS(), Decimals.OF_TIME_S);
    json.writeStringField("grade", event.grade().word());
    why(event.why());
    json.writeEndObject();
  }

  private void measure(MeasureValue measure) throws IOException {
    json.writeStartObject();
    json.writeStringField("id", measure.measure().id());
    json.writeStringField("at", measure.at());
    number("value", measure.value(), Decimals.OF_VALUE);
    json.writeStringField("unit", measure.measure().unit());
    number("low", measure.low(), Decimals.OF_VALUE);
    number("high", measure.high(), Decimals.OF_VALUE);
    json.writeStringField("grade", measure.grade().word());
    why(measure.why());
    json.writeEndObject();
  }

  private void why(Reason reason) throws IOException {
    for (Map.Entry<String, Object> field :
        told.computeIfAbsent(reason, ReasonJson::fields).entrySet()) {
      json.writePOJOField(field.getKey(), field.getValue());
    }
  }

  private void words(String key, Collection<String> words) throws IOException {
    json.writeArrayFieldStart(key);
    for (String word : words) {
      json.writeString(word);
    }
    json.writeEndArray();
  }

  private void number(String key, double number, int decimals) throws IOException {
    if (Double.isFinite(number)) {
      json.writeNumberField(key, Decimals.round(number, decimals));
    } else {
      json.writeNullField(key);
    }
  }
}
