package steadyturn.ingest.archive;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.TableText;

/**
 * Takes a player's name out of files that are not the player's own. Lines of tables and members of
 * lists that are about the player go; elsewhere the name becomes {@link #SOMEONE}.
 */
final class NameEraser {

  static final String SOMEONE = "someone";

  private static final ObjectMapper JSON =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  private final PlayerNames names;
  private final Pattern words;
  private int rows;

  NameEraser(PlayerNames names) {
    this.names = names;
    words = names.ofWords();
  }

  /** Lines of tables that were taken out so far. */
  int rowsErased() {
    return rows;
  }

  /** Whether the player is named in a text. */
  boolean isIn(String text) {
    return words.matcher(text).find();
  }

  /** Whether the player is named in a file of any kind. */
  boolean isIn(Path file) {
    return ArchiveWalk.holds(file, words);
  }

  /** Writes a table anew without the player's lines, and the name nowhere. */
  void clearTable(Path file) {
    WholeFile.write(file, table(file));
  }

  /** Writes a file anew without the name. */
  void clear(Path file, String text) {
    boolean isJson = file.toString().endsWith(".json");
    Optional<String> cleared = isJson ? json(text) : Optional.empty();
    WholeFile.write(file, cleared.orElseGet(() -> without(text)));
  }

  private String without(String text) {
    return words.matcher(text).replaceAll(SOMEONE);
  }

  private String table(Path file) {
    TableText table = TableText.read(file);
    rows += table.dropWhere(names::isCell);
    table.replaceAll(this::without);
    return without(table.text());
  }

  /** The same content without the name; empty where it is no JSON. */
  private Optional<String> json(String text) {
    try {
      return Optional.of(JSON.writeValueAsString(without(JSON.readTree(text))) + "\n");
    } catch (JsonProcessingException e) {
      return Optional.empty();
    }
  }

  private JsonNode without(JsonNode node) {
    if (node.isTextual()) {
      return TextNode.valueOf(without(node.asText()));
    }
    if (node instanceof ArrayNode array) {
      List<JsonNode> kept = new ArrayList<>();
      array.forEach(
          member -> {
            if (!isAbout(member)) {
              kept.add(without(member));
            }
          });
      array.removeAll();
      return array.addAll(kept);
    }
    if (node instanceof ObjectNode object) {
      for (Iterator<Map.Entry<String, JsonNode>> all = object.properties().iterator();
          all.hasNext(); ) {
        Map.Entry<String, JsonNode> member = all.next();
        if (isIn(member.getKey())) {
          all.remove();
        } else {
          member.setValue(without(member.getValue()));
        }
      }
    }
    return node;
  }

  /** A member of a list that is the player's id, or holds it in a field of its own. */
  private boolean isAbout(JsonNode member) {
    if (member.isTextual()) {
      return names.isCell(member.asText());
    }
    if (member.isObject()) {
      for (JsonNode value : member) {
        if (value.isTextual() && names.isCell(value.asText())) {
          return true;
        }
      }
    }
    return false;
  }
}
