package steadyturn.cli.output.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.cli.CommandLineRun;

/**
 * What the commands print for scripts is what docs/schema says (JSON Schema draft 2020-12, held by
 * com.networknt:json-schema-validator).
 */
class SchemaTest {

  private static final Path HOME = CommandLineRun.projectFolder();
  private static final ObjectMapper JSON = new ObjectMapper();

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource({
    "analyze, ''",
    "check, ''",
    "progress, mika",
    "compare, ''",
    "compare, '--swings 1,2'",
    "players, ''",
    "lessons, ''"
  })
  void theOutputOfTheBundledLessonFollowsItsSchema(String command, String what) throws IOException {
    // Expect: no breach; and, so that the schema is known to bind, one for another version, one for
    // a field that nobody described, and one for each field that is gone.
    Path archive = HOME.resolve("sample-recordings");
    List<String> words = new ArrayList<>(List.of(command));
    words.addAll(what.isEmpty() ? List.of() : List.of(what.split(" ", -1)));
    words.addAll(List.of(archive.toString(), "--format", "json"));
    CommandLineRun run = CommandLineRun.of(words.toArray(String[]::new));
    assertThat(run.exitCode()).as(run.err()).isZero();
    Schema schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(
                JSON.readTree(Files.readString(HOME.resolve("docs/schema/" + command + ".json"))));
    JsonNode root = JSON.readTree(run.out());
    assertThat(schema.validate(root)).isEmpty();
    assertThat(root.fieldNames().next()).isEqualTo("version");
    ObjectNode other = root.deepCopy();
    assertThat(schema.validate(other.put("version", 2))).isNotEmpty();
    other = root.deepCopy();
    assertThat(schema.validate(other.put("news", 1))).isNotEmpty();
    for (String field : (Iterable<String>) root::fieldNames) {
      ObjectNode less = root.deepCopy();
      less.remove(field);
      assertThat(schema.validate(less)).as("without " + field).isNotEmpty();
    }
  }
}
