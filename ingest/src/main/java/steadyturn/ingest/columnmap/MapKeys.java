package steadyturn.ingest.columnmap;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import steadyturn.ingest.columnmap.layout.ColumnRef;
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

  private ColumnRef column(String key, JsonNode value) {
    if (value.isTextual() && !value.asText().replace("-", "").isBlank()) {
      return ColumnRef.named(value.asText());
    }
    if (value.canConvertToInt() && value.asInt() != 0) {
      return ColumnRef.numbered(value.asInt());
    }
    throw wrong(key, "must be a column's name in quotes or its number from 1, is " + value);
  }

  /** One column, or a list of so many; x, y and z are three. */
  List<ColumnRef> columns(String key, int fewest, int most) {
    JsonNode value = node.path(key);
    if (!value.isArray()) {
      if (fewest > 1) {
        throw wrong(key, "must be three columns, for x, y and z: [\"ax\", \"ay\", \"-az\"]");
      }
      return List.of(column(key, value));
    }
    if (value.size() < fewest || value.size() > most) {
      throw wrong(
          key,
          fewest == 3
              ? "must be three columns, for x, y and z: [\"ax\", \"ay\", \"-az\"]"
              : "names " + value.size() + " columns, " + most + " at most are of use");
    }
    List<ColumnRef> columns = new ArrayList<>();
    value.forEach(v -> columns.add(column(key, v)));
    if (columns.stream().map(c -> c.turned(c.sign())).distinct().count() < columns.size()) {
      throw wrong(key, "names a column twice: " + value);
    }
    return columns;
  }

  boolean truth(String key) {
    JsonNode value = node.path(key);
    if (!value.isMissingNode() && !value.isBoolean()) {
      throw wrong(key, "must be true or false, is " + value);
    }
    return value.asBoolean(false);
  }

  /** A section inside this one. */
  Optional<MapKeys> section(String key, List<String> known) {
    return has(key)
        ? Optional.of(new MapKeys(file, section + "." + key, node.path(key), known))
        : Optional.empty();
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
