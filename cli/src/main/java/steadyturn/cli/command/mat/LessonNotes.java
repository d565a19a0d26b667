package steadyturn.cli.command.mat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import steadyturn.cli.output.json.Json;
import steadyturn.ingest.recording.disk.WholeFile;

/**
 * What the page knows of a lesson beside the recording, kept in a small file of the archive so that
 * a lesson goes on where it was: the stage, the goal, the units, and what was said of balls.
 */
final class LessonNotes {

  private static final String NAME = ".steadyturn-lesson.json";

  private final Path file;
  private final ObjectNode all;

  private LessonNotes(Path file, ObjectNode all) {
    this.file = file;
    this.all = all;
  }

  /** Those of an archive; none where the file is not there or is no longer readable. */
  static LessonNotes of(Path root) throws IOException {
    Path file = root.resolve(NAME);
    if (Files.isRegularFile(file)) {
      try {
        if (new JsonMapper().readTree(Files.readString(file)) instanceof ObjectNode all) {
          return new LessonNotes(file, all);
        }
      } catch (JsonProcessingException e) {
        WholeFile.move(file, root.resolve(NAME + ".unreadable"));
      }
    }
    return new LessonNotes(file, Json.object());
  }

  private void save() {
    WholeFile.write(file, Json.text(all));
  }

  String kept(String key) {
    return all.path(key).asText();
  }

  void put(String key, String value) {
    all.put(key, value);
    save();
  }

  List<String> list(String key) {
    List<String> list = new ArrayList<>();
    all.path(key).forEach(each -> list.add(each.asText()));
    return list;
  }

  void put(String key, List<String> values) {
    Json.list(all, key, values, TextNode::valueOf);
    save();
  }

  /** What is known of one of a group, such as a ball. */
  JsonNode of(String group, String id) {
    return all.path(group).path(id);
  }

  void put(String group, String id, ObjectNode what) {
    ObjectNode its = all.path(group) instanceof ObjectNode there ? there : all.putObject(group);
    its.set(id, what);
    save();
  }

  /** Another lesson. */
  void forgetLesson() {
    all.removeAll();
    save();
  }
}
