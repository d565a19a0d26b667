package steadyturn.cli.output.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.measure.Decimals;
import steadyturn.cli.output.InventedLesson;

/** Given in every test: the lesson written by hand. Expect: the contract of docs/formats.md. */
final class JsonReportTest {

  private static JsonNode json(List<LessonResult> results) throws IOException {
    StringWriter text = new StringWriter();
    JsonReport.write(results, AnalysisSettings.defaults(), text);
    return new ObjectMapper().readTree(text.toString());
  }

  private static List<String> keys(JsonNode object) {
    List<String> keys = new ArrayList<>();
    object.fieldNames().forEachRemaining(keys::add);
    return keys;
  }

  @Test
  void oneRecordingIsOneObjectWithItsKeysInOrder() throws IOException {
    JsonNode lesson = json(List.of(InventedLesson.result())).at("/recordings/0");
    JsonNode swing = lesson.at("/swings/0");
    assertThat(keys(lesson))
        .containsExactly(
            "recording", "player", "aim", "units", "swings", "notices", "noticeReasons");
    assertThat(keys(lesson.at("/player"))).containsExactly("id", "handed");
    assertThat(keys(lesson.at("/units/0")))
        .containsExactly("point", "rateHz", "lostPct", "saturatedSamples", "calibratedOn");
    assertThat(keys(swing)).containsExactly("swing", "club", "kind", "flags", "events", "measures");
    assertThat(keys(swing.at("/events/0")))
        .containsExactly("name", "timeS", "sdS", "grade", "why", "reason", "args");
    assertThat(keys(swing.at("/measures/0")))
        .containsExactly(
            "id", "at", "value", "unit", "low", "high", "grade", "why", "reason", "args");
  }

  @Test
  void severalRecordingsStandInOneObject() throws IOException {
    JsonNode both = json(List.of(InventedLesson.result(), InventedLesson.result()));
    assertThat(keys(both)).containsExactly("version", "madeBy", "recordings");
    assertThat(both.at("/recordings")).hasSize(2);
  }

  @Test
  void aWithheldValueIsNullAndSaysWhy() throws IOException {
    JsonNode release = measure("wrist.release");
    assertThat(release.get("value").isNull()).isTrue();
    assertThat(release.get("low").isNull()).isTrue();
    assertThat(release.get("high").isNull()).isTrue();
    assertThat(release.get("grade").asText()).isEqualTo("withheld");
    assertThat(release.get("why").asText()).contains("lead hand");
    assertThat(release.get("reason").asText()).isEqualTo("measure.needs-hand");
    assertThat(release.get("args")).isEmpty();
  }

  @Test
  void aNoticeNamesItsUnitItsCodeAndItsFigures() throws IOException {
    // Given: two gaps of the pelvis unit, the longest 0.314 s. Expect: the same sentence in both
    // lists, and the figures by name.
    JsonNode lesson = json(List.of(InventedLesson.result())).at("/recordings/0");
    JsonNode gap = lesson.at("/noticeReasons/0");
    assertThat(keys(gap)).containsExactly("about", "why", "reason", "args");
    assertThat(lesson.at("/notices/0").asText())
        .isEqualTo("pelvis: " + gap.get("why").asText())
        .contains("2 gaps, the longest 0.31 s");
    assertThat(gap.get("about").asText()).isEqualTo("pelvis");
    assertThat(gap.get("reason").asText()).isEqualTo("quality.gap");
    assertThat(gap.at("/args/count").asInt()).isEqualTo(2);
    assertThat(gap.at("/args/longestS").asDouble()).isEqualTo(0.314);
  }

  @Test
  void theOpenEndOfAnAtLeastValueIsNull() throws IOException {
    JsonNode atLeast = measure("pelvis.turn-to-slide");
    assertThat(atLeast.get("low").asDouble()).isEqualTo(31);
    assertThat(atLeast.get("high").isNull()).isTrue();
    assertThat(atLeast.get("why").asText()).contains("at least");
  }

  @Test
  void neitherNanNorMinusZeroIsPrinted() throws IOException {
    StringWriter text = new StringWriter();
    JsonReport.write(List.of(InventedLesson.result()), AnalysisSettings.defaults(), text);
    assertThat(text.toString()).doesNotContain("NaN", "Infinity", "-0,", "-0.0,");
    assertThat(Decimals.round(-0.0001, 3).toPlainString()).isEqualTo("0");
  }

  private static JsonNode measure(String id) throws IOException {
    for (JsonNode measure :
        json(List.of(InventedLesson.result())).at("/recordings/0/swings/0/measures")) {
      if (measure.get("id").asText().equals(id)) {
        return measure;
      }
    }
    throw new AssertionError("no measure " + id);
  }
}
