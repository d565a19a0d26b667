package steadyturn.cli.command.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.cli.CommandLineRun;

/**
 * The public validator of BIDS datasets (bids-validator 1.15.0) over what {@code orient} writes.
 */
class OrientationDatasetTest {

  private static final Path VALIDATOR =
      CommandLineRun.projectFolder()
          .resolve("ingest/src/test/node/node_modules/bids-validator/bin/bids-validator");

  @TempDir private Path folder;

  @BeforeEach
  void needsTheValidator() {
    boolean mustBeThere = "1".equals(System.getenv("STEADYTURN_CHECK"));
    assumeTrue(
        Files.exists(VALIDATOR) || mustBeThere,
        "bids-validator is not installed: run npm ci in ingest/src/test/node");
  }

  @Test
  void orientationsOfALessonPassThePublicValidator() throws Exception {
    // Given: the orientations of a lesson of three units. This validator knows the names of raw
    // data only, so the entity desc is taken out of the names; everything else is as written.
    // Expect: no error of any kind, and the archive they lie in has none either.
    Path archive = folder.resolve("archive");
    String[] simulate = {
      "simulate", "--out", archive.toString(), "--swings", "1", "--waggles", "0", "--rate", "100"
    };
    assertThat(CommandLineRun.of(simulate).exitCode()).isZero();
    assertThat(CommandLineRun.of("orient", archive.toString()).exitCode()).isZero();
    assertThat(errors(archive)).isEmpty();

    Path written = archive.resolve("derivatives/steadyturn");
    List<Path> named = withoutDesc(written);
    assertThat(named).hasSize(12);
    assertThat(errors(written)).isEmpty();

    // Expect: an error once a sidecar holds a word that is none; else the above could not fail.
    Path sidecar = named.stream().filter(f -> f.toString().endsWith("motion.json")).toList().get(0);
    Files.writeString(sidecar, Files.readString(sidecar).replace("ORNTChannelCount", "Count"));
    assertThat(errors(written)).isNotEmpty();
  }

  private static List<Path> withoutDesc(Path root) throws IOException {
    List<Path> files;
    try (Stream<Path> all = Files.walk(root)) {
      files = all.filter(f -> f.toString().contains("_desc-orientation_")).toList();
    }
    List<Path> renamed = new ArrayList<>();
    for (Path file : files) {
      String name = file.getFileName().toString().replace("_desc-orientation_", "_");
      renamed.add(Files.move(file, file.resolveSibling(name)));
    }
    return renamed;
  }

  private List<String> errors(Path root) throws IOException, InterruptedException {
    Path report = folder.resolve("report.json");
    new ProcessBuilder("node", VALIDATOR.toString(), "--json", root.toString())
        .redirectOutput(report.toFile())
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start()
        .waitFor();
    JsonNode issues = new ObjectMapper().readTree(report.toFile()).path("issues");
    assertThat(issues.path("errors").isArray()).as("a report with a list of errors").isTrue();
    List<String> errors = new ArrayList<>();
    issues.path("errors").forEach(e -> errors.add(e.path("key").asText() + " " + e.path("files")));
    return errors;
  }
}
