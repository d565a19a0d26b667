package steadyturn.ingest.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.write.DatasetFiles;
import steadyturn.ingest.recording.write.RecordingWriter;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** The public validator of BIDS datasets (bids-validator 1.15.0) over what we write. */
class ValidatorTest {

  private static final Path VALIDATOR =
      Path.of("src/test/node/node_modules/bids-validator/bin/bids-validator");

  @TempDir Path root;

  @Test
  void whatIsWrittenPassesThePublicValidatorWithoutAnError() throws Exception {
    // Given: an archive of two players (one of whom nothing is known but the side), three runs,
    // three units with clocks of their own, lost values, a unit without serial number or full
    // scale, a derivatives folder. Expect: no error of any kind; warnings are read, not tested.
    requireValidator();
    RecordingWriter writer = RecordingWriter.into(root, "Lessons of the test range");
    writer.write(Lessons.threeUnits(500, 1), RunLabel.run("mika", "01", 1), Lessons.NINE_O_CLOCK);
    writer.write(
        Lessons.threeUnits(500, 2),
        RunLabel.run("mika", "01", 2),
        Lessons.NINE_O_CLOCK.plusMinutes(4));
    writer.write(withLostValues(), RunLabel.lesson("noor", "2024a"), Lessons.NINE_O_CLOCK);
    DatasetFiles.derivatives(root, "steadyturn", "0.1.0");

    assertThat(errors()).isEmpty();
  }

  @Test
  void theValidatorSeesAFaultWhenThereIsOne() throws Exception {
    // Given: a lesson with one more motion table that names no tracking system. Expect: an error;
    // otherwise the test above could not fail.
    requireValidator();
    RecordingWriter.into(root, "Lessons of the test range")
        .write(Lessons.threeUnits(50, 1), RunLabel.lesson("mika", "01"), Lessons.NINE_O_CLOCK);
    Files.writeString(
        root.resolve("sub-mika/ses-01/motion/sub-mika_ses-01_task-swing_motion.tsv"), "1\n");

    assertThat(errors()).isNotEmpty();
  }

  private static Recording withLostValues() {
    double[] timeS = {0, 0.01, 0.02, 0.05};
    double[][] accelMps2 = {{0.1, Double.NaN, 0.2, 0.3}, {0, 0, 0, 0}, {9.8, 9.8, 9.8, 9.8}};
    double[][] gyroRadPerS = {{0, 0, 0, 0}, {0, 0, 0, 0}, {0, Double.NaN, 0, 0}};
    UnitFacts facts = UnitFacts.plain(BodyPoint.PELVIS, 100);
    return new Recording(
        "noor",
        Player.unmeasured("noor", Handedness.RIGHT),
        List.of(new UnitStream(facts, timeS, accelMps2, gyroRadPerS)),
        List.of());
  }

  private List<String> errors() throws IOException, InterruptedException {
    Path report = Files.createTempFile("validator", ".json");
    Process validator =
        new ProcessBuilder("node", VALIDATOR.toString(), "--json", root.toString())
            .redirectOutput(report.toFile())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    validator.waitFor();
    JsonNode issues = new ObjectMapper().readTree(report.toFile()).path("issues");
    Files.delete(report);
    assertThat(issues.path("errors").isArray()).as("a report with a list of errors").isTrue();
    List<String> errors = new ArrayList<>();
    issues
        .path("errors")
        .forEach(e -> errors.add(e.path("key").asText() + " " + e.path("files").toString()));
    return errors;
  }

  private static void requireValidator() {
    boolean there = Files.exists(VALIDATOR) && nodeRuns();
    String how = "bids-validator is not installed: run npm ci in ingest/src/test/node";
    if (!there && (isSet("CI") || isSet("STEADYTURN_CHECK"))) {
      fail(how);
    }
    assumeTrue(there, how);
  }

  private static boolean isSet(String variable) {
    String value = System.getenv(variable);
    return value != null && !value.isEmpty();
  }

  private static boolean nodeRuns() {
    try {
      return new ProcessBuilder("node", "--version")
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start()
              .waitFor()
          == 0;
    } catch (IOException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }
}
