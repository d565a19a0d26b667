package steadyturn.ingest.columnmap;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import steadyturn.ingest.recording.table.RecordingException;

/** One section of a map: reads its keys and refuses those it does not know. */
final class MapKeys {

  private final Path file;
  private final String section;
  private final JsonNode node;

  MapKeys(Path file, String section, JsonNode node, List<String> known) {
    this.file = file;
    this.section = section;
    this.node = node;
    if (!node.isObject()) {
      throw RecordingException.of(file, "lacks the section [" + section + "].");
    }
    node.fieldNames()
        .forEachRemaining(
            key -> {
              if (!known.contains(key)) {
                throw wrong(key, "is no key of this section. Known: " + String.join(", ", known));
              }
            });
  }

  RecordingException wrong(String key, String why) {
    String where = section.isEmpty() ? key : section + "." + key;
    return RecordingException.of(file, where + ": " + why + (why.endsWith(".") ? "" : "."));
  }

  boolean has(String key) {
    return node.has(key);
  }

  String text(String key, String otherwise) {
    JsonNode value = node.path(key);
    if (value.isMissingNode()) {
      return otherwise;
    }
    if (!value.isTextual()) {
      throw wrong(key, "must be text in quotes, is " + value);
    }
    return value.asText();
  }

  String needed(String key) {
    if (!has(key)) {
      throw wrong(key, "is missing");
    }
    return text(key, "");
  }

  int whole(String key, int otherwise) {
    JsonNode value = node.path(key);
    if (value.isMissingNode()) {
      return otherwise;
    }
    if (!value.canConvertToInt() || value.asInt() < 0) {
      throw wrong(key, "must be a whole number of 0 or more, is " + value);
    }
    return value.asInt();
  }

  OptionalDouble positive(String key) {
    JsonNode value = node.path(key);
    if (value.isMissingNode()) {
      return OptionalDouble.empty();
    }
    if (!value.isNumber() || !(value.asDouble() > 0)) {
      throw wrong(key, "must be a number above 0, is " + value);
    }
    return OptionalDouble.of(value.asDouble());
  }

  /** The factor of a unit word, which must be known. */
  double factor(String key, Function<String, OptionalDouble> factors, String examples) {
    String word = needed(key);
    return factors
        .apply(word)
        .orElseThrow(() -> wrong(key, "\"" + word + "\" is no unit known here. Use " + examples));
  }

  ColumnRef column(String key) {
    return column(key, node.path(key));
  }

  private ColumnRef column(String key, JsonNode value) {
    if (value.isTextual() && !value.asText().replace("-", "").isBlank()) {
      return ColumnRef.named(value.asText());
    }
    if (value.canConvertToInt() && value.asInt() != 0) {
      return ColumnRef.numbered(value.asInt());
    }
    throw wrong(key, "must be a column's name in quotes or its number from 1, is " + value);
  }

  /** Three columns for x, y and z. */
  List<ColumnRef> three(String key) {
    JsonNode value = node.path(key);
    if (!value.isArray() || value.size() != 3) {
      throw wrong(key, "must be three columns, for x, y and z: [\"ax\", \"ay\", \"-az\"]");
    }
    List<ColumnRef> columns = new ArrayList<>();
    value.forEach(v -> columns.add(column(key, v)));
    if (columns.stream().map(c -> c.turned(c.sign())).distinct().count() < 3) {
      throw wrong(key, "names a column twice: " + value);
    }
    return columns;
  }

  List<String> words(String key, List<String> otherwise) {
    JsonNode value = node.path(key);
    if (value.isMissingNode()) {
      return otherwise;
    }
    List<String> words = new ArrayList<>();
    value.forEach(v -> words.add(v.asText()));
    return words;
  }
}
