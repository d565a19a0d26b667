package steadyturn.analysis.coach.teaching;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.toml.TomlMapper;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import steadyturn.ingest.recording.disk.Shipped;

/** Reads teaching files (TOML); a mistake is told with its file, its entry and what to do. */
public final class TeachingReader {

  private static final Set<String> SECTIONS =
      Set.of("limit", "ask", "finding", "good", "consequence", "drill", "own-limit");
  private static final Pattern GOAL =
      Pattern.compile(
          "(\\S+) at (\\S+) between (-?[0-9]+\\.?[0-9]*|[a-z][a-z-]*) and (-?[0-9]+\\.?[0-9]*|[a-z][a-z-]*)");
  private static final int MOST_REPS = 1000;

  private TeachingReader() {}

  /** The rules that come with the program. */
  public static Teaching shipped() {
    return parse("teaching.toml", Shipped.text(TeachingReader.class, "teaching.toml")).checked();
  }

  /** The shipped rules with a teacher's file on top. */
  public static Teaching read(Path file) throws IOException {
    Teaching own = parse(file.getFileName().toString(), text(file));
    return within(file.getFileName() + ": ", () -> shipped().with(own).checked());
  }

  private static String text(Path file) throws IOException {
    try {
      return Files.readString(file);
    } catch (CharacterCodingException e) {
      throw new TeachingException(file.getFileName() + " is not UTF-8. Save it as UTF-8.");
    }
  }

  public static Teaching parse(String name, String text) {
    try {
      return teaching(new TomlMapper().readTree(text));
    } catch (StackOverflowError e) {
      throw new TeachingException(
          name + ": is nested too deep. Write it flat, as the shipped one.");
    } catch (JacksonException e) {
      int line = e.getLocation() == null ? 0 : e.getLocation().getLineNr();
      throw new TeachingException(name + ", line " + line + ": " + e.getOriginalMessage());
    } catch (TeachingException e) {
      throw new TeachingException(name + ", " + e.getMessage());
    }
  }

  private static Teaching teaching(JsonNode root) {
    Set<String> unknown = new TreeSet<>();
    root.fieldNames().forEachRemaining(unknown::add);
    unknown.removeAll(SECTIONS);
    if (!unknown.isEmpty()) {
      throw new TeachingException(
          "there is no section " + unknown + ". Use " + new TreeSet<>(SECTIONS) + ".");
    }
    return new Teaching(
        limits(root.path("limit")),
        all(root, "ask", node -> text(node, "name")),
        all(root, "finding", TeachingReader::rule),
        all(root, "good", TeachingReader::rule),
        all(root, "consequence", TeachingReader::consequence),
        all(root, "drill", TeachingReader::drill),
        all(root, "own-limit", TeachingReader::ownLimit));
  }

  private static <T> List<T> all(JsonNode root, String section, Function<JsonNode, T> read) {
    List<T> out = new ArrayList<>();
    if (root.has(section) && !root.path(section).isArray()) {
      throw new TeachingException(
          section + ": is no list of entries. Begin each with [[" + section + "]].");
    }
    int number = 0;
    for (JsonNode node : root.path(section)) {
      number++;
      String name = node.path("name").asText("number " + number);
      out.add(within(section + " " + name + ": ", () -> read.apply(node)));
    }
    return out;
  }

  /** What goes wrong in a part is said with the part's name before it. */
  private static <T> T within(String part, Supplier<T> read) {
    try {
      return read.get();
    } catch (TeachingException e) {
      throw new TeachingException(part + e.getMessage());
    }
  }

  private static Map<String, Limit> limits(JsonNode table) {
    Map<String, Limit> out = new LinkedHashMap<>();
    if (!table.isMissingNode() && !table.isObject()) {
      throw new TeachingException("limit: is no table. Begin it with [limit].");
    }
    for (Map.Entry<String, JsonNode> each : table.properties()) {
      JsonNode node = each.getValue();
      out.put(
          each.getKey(),
          within(
              "limit " + each.getKey() + ": ",
              () -> {
                String source = source(node);
                double value = number(node, "value");
                return new Limit(each.getKey(), value, text(node, "unit"), source);
              }));
    }
    return out;
  }

  private static Rule rule(JsonNode node) {
    return new Rule(
        text(node, "name"),
        texts(node, "when").stream().map(Need::read).toList(),
        texts(node, "covers"),
        texts(node, "tends-to"),
        node.path("confidence").asText(""),
        source(node),
        texts(node, "drills"));
  }

  private static Consequence consequence(JsonNode node) {
    return new Consequence(
        text(node, "name"),
        texts(node, "seen-when").stream().map(Need::read).toList(),
        node.path("tendency-of").asText(""),
        node.path("look").asBoolean(false));
  }

  private static Drill drill(JsonNode node) {
    Matcher goal = GOAL.matcher(text(node, "goal"));
    if (!goal.matches()) {
      throw new TeachingException(
          "write the goal like \"pelvis.turn at top between -55 and -40\".");
    }
    List<String> cautions = new ArrayList<>(Drill.ALWAYS);
    cautions.addAll(texts(node, "cautions"));
    return new Drill(
        text(node, "name"),
        text(node, "works-on"),
        Need.position(goal.group(1), goal.group(2)),
        Drill.Band.named(goal.group(3), goal.group(4)),
        reps(node),
        cautions);
  }

  private static int reps(JsonNode node) {
    double reps = number(node, "reps");
    if (reps < 1 || reps > MOST_REPS || reps != Math.rint(reps)) {
      throw new TeachingException(
          "reps is " + node.path("reps").asText() + ". Write a whole number, 1 to 1000.");
    }
    return (int) reps;
  }

  private static OwnLimit ownLimit(JsonNode node) {
    return new OwnLimit(
        node.path("player").asText(""),
        node.path("club").asText(""),
        text(node, "limit"),
        number(node, "value"));
  }

  private static String text(JsonNode node, String key) {
    if (!node.path(key).isTextual() || node.path(key).asText().isBlank()) {
      String found = node.has(key) ? "is " + node.path(key) : "is missing";
      throw new TeachingException(key + " " + found + ". Write " + key + " = \"...\".");
    }
    return node.path(key).asText();
  }

  /** Where a number comes from; by itself it is the teacher's own. */
  private static String source(JsonNode node) {
    return node.has("source") ? text(node, "source") : "";
  }

  private static double number(JsonNode node, String key) {
    if (!node.path(key).isNumber() || !Double.isFinite(node.path(key).asDouble())) {
      String found = node.has(key) ? ", not " + node.path(key).asText() : "";
      throw new TeachingException(key + " must be a number, like " + key + " = 8" + found + ".");
    }
    return node.path(key).asDouble();
  }

  private static List<String> texts(JsonNode node, String key) {
    JsonNode list = node.path(key);
    if (!list.isMissingNode() && !list.isArray()) {
      throw new TeachingException(key + " is " + list + ". Write " + key + " = [\"...\"].");
    }
    List<String> out = new ArrayList<>();
    list.forEach(each -> out.add(each.asText()));
    return out;
  }
}
