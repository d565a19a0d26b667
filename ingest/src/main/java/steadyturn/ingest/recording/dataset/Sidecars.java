package steadyturn.ingest.recording.dataset;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.table.TextFile;

/**
 * Finds what speaks for a motion table. A file in a folder above speaks for all tables below whose
 * name has its entities; the nearest table wins, and JSON is laid over JSON (the inheritance
 * principle of BIDS).
 */
public final class Sidecars {

  private static final ObjectMapper JSON = new ObjectMapper();

  private final Path root;
  private final Path table;
  private final MotionName name;
  private final List<String> notices;

  public Sidecars(Path root, UnitFile unit, List<String> notices) {
    this.root = root;
    table = unit.table();
    name = unit.name();
    this.notices = notices;
  }

  /** The nearest file of that suffix and ending, if there is one. */
  public Optional<Path> nearest(String suffix, String ending) {
    return all(suffix, ending).stream().findFirst();
  }

  /** All members that speak for the table, the nearest ones winning; empty when none does. */
  public Optional<JsonNode> json(String suffix) {
    List<Path> files = new ArrayList<>(all(suffix, "json"));
    if (files.isEmpty()) {
      return Optional.empty();
    }
    Collections.reverse(files);
    ObjectNode merged = JSON.createObjectNode();
    for (Path file : files) {
      merged.setAll(object(file, notices));
    }
    return Optional.of(merged);
  }

  static ObjectNode object(Path file, List<String> notices) {
    try {
      JsonNode read = JSON.readTree(TextFile.read(file, notices));
      if (read instanceof ObjectNode object) {
        return object;
      }
      throw RecordingException.of(file, "is no JSON object. Start it with { and end it with }.");
    } catch (JsonProcessingException e) {
      var where = e.getLocation();
      throw RecordingException.at(
          file,
          where == null ? 0 : where.getLineNr(),
          "is no valid JSON (" + e.getOriginalMessage() + "). Mend this line.");
    }
  }

  private List<Path> all(String suffix, String ending) {
    List<Path> found = new ArrayList<>();
    for (Path folder : Folders.upTo(WholeFile.folderOf(table), root)) {
      Folders.files(folder).stream()
          .filter(file -> speaks(file, suffix, ending))
          .sorted(Comparator.comparingInt(Sidecars::entityCount).reversed())
          .forEach(found::add);
    }
    return found;
  }

  private boolean speaks(Path file, String suffix, String ending) {
    return MotionName.of(file)
        .filter(n -> n.suffix().equals(suffix) && n.ending().equals(ending))
        .filter(n -> n.speaksFor(name))
        .isPresent();
  }

  private static int entityCount(Path file) {
    return MotionName.of(file).map(n -> n.entities().size()).orElse(0);
  }
}
