package steadyturn.cli.output.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.function.Function;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Decimals;
import steadyturn.analysis.reading.MadeBy;
import steadyturn.ingest.recording.disk.ProgramVersion;

/** How every result for scripts is put together and written: one object and a line end. */
public final class Json {

  /** Version of the form of all results; it grows when a script would have to change. */
  static final int VERSION = 1;

  private static final JsonMapper JSON =
      JsonMapper.builder()
          .enable(SerializationFeature.INDENT_OUTPUT)
          .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
          .build();

  private Json() {}

  public static ObjectNode object() {
    return JSON.createObjectNode();
  }

  /** The root of a result that rests on no analysis: it begins with the version of its form. */
  static ObjectNode root() {
    return versioned().put("programVersion", ProgramVersion.current());
  }

  private static ObjectNode versioned() {
    return object().put("version", VERSION);
  }

  /** The root of a result of an analysis, which says what made it. */
  static ObjectNode root(MadeBy madeBy) {
    ObjectNode root = versioned();
    root.set("madeBy", node(madeBy));
    return root;
  }

  /** What made a result. */
  public static ObjectNode node(MadeBy madeBy) {
    ObjectNode node = object().put("programVersion", madeBy.programVersion());
    node.put("settings", madeBy.settings());
    list(
        node,
        "calibrations",
        madeBy.calibrations(),
        its -> object().put("unit", its.serialNumber()).put("day", its.day().toString()));
    return node;
  }

  public static String text(JsonNode root) {
    try {
      return JSON.writeValueAsString(root) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("plain nodes can always be written", e);
    }
  }

  /** Leaves the writer open. */
  static void write(JsonNode root, Writer to) throws IOException {
    to.write(text(root));
  }

  /** A list under a key, an object of its own each. */
  public static <T> void list(
      ObjectNode node, String key, List<T> of, Function<T, ? extends JsonNode> each) {
    ArrayNode array = node.putArray(key);
    of.forEach(one -> array.add(each.apply(one)));
  }

  /** What a value is of. */
  public static ObjectNode measure(MeasureAt what) {
    return object()
        .put("measure", what.measure().id())
        .put("at", what.at())
        .put("unit", what.measure().unit());
  }

  /** A value and its interval, which may have an open end. */
  public static void range(ObjectNode node, String key, double value, double low, double high) {
    number(node, key, value);
    number(node, "low", low);
    number(node, "high", high);
  }

  /** A number; {@code null} where it is none or has no end. */
  public static void number(ObjectNode node, String key, double value) {
    number(node, key, value, Decimals.OF_VALUE);
  }

  static void number(ObjectNode node, String key, double value, int decimals) {
    if (Double.isFinite(value)) {
      node.put(key, Decimals.round(value, decimals));
    } else {
      node.putNull(key);
    }
  }
}
