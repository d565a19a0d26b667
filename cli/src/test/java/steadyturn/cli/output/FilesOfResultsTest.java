package steadyturn.cli.output;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.cli.output.tsv.Derivatives;
import steadyturn.cli.output.tsv.TsvReport;

/** Given in every test: the lesson written by hand, with 4 swings of 8 values each. */
final class FilesOfResultsTest {

  private static final String PLACE = "sub-mika/ses-01/motion/sub-mika_ses-01_task-swing_measures";

  @Test
  void theTsvHasOneRowAValueUnderOneHeader() throws IOException {
    StringWriter text = new StringWriter();
    TsvReport.write(List.of(InventedLesson.result()), text);
    List<String[]> rows = text.toString().lines().map(line -> line.split("\t", -1)).toList();
    assertThat(rows).hasSize(1 + 4 * 8);
    assertThat(rows).allMatch(row -> row.length == TsvReport.COLUMNS.size());
    assertThat(rows).allSatisfy(row -> assertThat(row).doesNotContain("", "NaN"));
  }

  @Test
  void everyColumnOfADerivativeIsExplainedInItsSidecar(@TempDir Path archive) throws IOException {
    Path folder = Derivatives.write(List.of(InventedLesson.result()), archive);
    List<String> header =
        List.of(Files.readAllLines(folder.resolve(PLACE + ".tsv")).get(0).split("\t", -1));
    JsonNode sidecar = new ObjectMapper().readTree(folder.resolve(PLACE + ".json").toFile());
    assertThat(header).isEqualTo(TsvReport.COLUMNS).allMatch(sidecar::has);
  }

  @Test
  void theDerivativeSaysThatItIsOne(@TempDir Path archive) throws IOException {
    Path folder = Derivatives.write(List.of(InventedLesson.result()), archive);
    assertThat(folder).isEqualTo(archive.resolve("derivatives/steadyturn"));
    assertThat(folder.resolve("dataset_description.json")).content().contains("derivative");
  }

  @Test
  void resultsWrittenTwiceAreThereOnce(@TempDir Path archive) throws IOException {
    Path folder = Derivatives.write(List.of(InventedLesson.result()), archive);
    String first = Files.readString(folder.resolve(PLACE + ".tsv"));
    Derivatives.write(List.of(InventedLesson.result()), archive);
    assertThat(folder.resolve(PLACE + ".tsv")).hasContent(first);
  }
}
