package steadyturn.cli.output;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.cli.output.json.JsonReport;
import steadyturn.cli.output.tsv.TsvReport;

/** Given: the lesson written by hand. Expect: each of its numbers, in its place, in both files. */
class WrittenValuesTest {

  private static JsonNode json() throws IOException {
    StringWriter text = new StringWriter();
    JsonReport.write(List.of(InventedLesson.result()), AnalysisSettings.defaults(), text);
    assertThat(text.toString()).endsWith("}\n");
    JsonNode root = new ObjectMapper().readTree(text.toString());
    return root.has("recordings") ? root.at("/recordings/0") : root;
  }

  @Test
  void valueLowAndHighAreThemselvesInJson() throws IOException {
    // Given: turn at the top of swing 1, -45 deg with SD 0.46. Expect: -45 -+ 1.959964 x 0.46.
    JsonNode turn = json().at("/swings/0/measures/0");
    assertThat(turn.get("id").asText()).isEqualTo("pelvis.turn");
    assertThat(turn.get("at").asText()).isEqualTo("top");
    assertThat(turn.get("value").asText()).isEqualTo("-45");
    assertThat(turn.get("unit").asText()).isEqualTo("deg");
    assertThat(turn.get("low").asText()).isEqualTo("-45.902");
    assertThat(turn.get("high").asText()).isEqualTo("-44.098");
    assertThat(turn.get("grade").asText()).isEqualTo("measured");
    assertThat(turn.get("why").asText()).isEmpty();
    JsonNode centre = json().at("/swings/3/measures/4");
    assertThat(centre.get("low").asDouble()).isEqualTo(-31);
    assertThat(centre.get("value").asDouble()).isEqualTo(-7);
    assertThat(centre.get("high").asDouble()).isEqualTo(40);
    assertThat(centre.get("grade").asText()).isEqualTo("estimated");
    assertThat(centre.get("why").asText()).contains("0.7 s");
    assertThat(centre.get("reason").asText()).isEqualTo("measure.address-short");
  }

  @Test
  void playerUnitsSwingsAndEventsAreThemselvesInJson() throws IOException {
    JsonNode lesson = json();
    assertThat(lesson.get("recording").asText()).isEqualTo("sub-mika_ses-01_task-swing");
    assertThat(lesson.at("/player/id").asText()).isEqualTo("mika");
    assertThat(lesson.at("/player/handed").asText()).isEqualTo("right");
    assertThat(lesson.get("aim").asText()).isEqualTo("square-hips");
    assertThat(lesson.at("/units/0/point").asText()).isEqualTo("pelvis");
    assertThat(lesson.at("/units/0/rateHz").asDouble()).isEqualTo(200);
    assertThat(lesson.at("/units/0/lostPct").asDouble()).isEqualTo(0.1);
    assertThat(lesson.at("/units/1/point").asText()).isEqualTo("lead_forearm");
    assertThat(lesson.at("/units/1/saturatedSamples").asInt()).isEqualTo(12);
    assertThat(lesson.at("/swings")).hasSize(4);
    assertThat(lesson.at("/swings/1/swing").asInt()).isEqualTo(2);
    assertThat(lesson.at("/swings/1/club").asText()).isEqualTo("7-iron");
    assertThat(lesson.at("/swings/1/kind").asText()).isEqualTo("hit");
    assertThat(lesson.at("/swings/3/kind").asText()).isEqualTo("practice");
    assertThat(lesson.at("/swings/1/flags/0").asText()).isEqualTo("address-not-still");
    assertThat(lesson.at("/swings/0/flags")).isEmpty();
    assertThat(lesson.at("/swings/0/events/0/name").asText()).isEqualTo("top");
    assertThat(lesson.at("/swings/0/events/0/timeS").asText()).isEqualTo("32.539");
    assertThat(lesson.at("/swings/0/events/0/sdS").asText()).isEqualTo("0.006");
    assertThat(lesson.at("/swings/0/events/0/grade").asText()).isEqualTo("measured");
    assertThat(lesson.at("/swings/0/events/1/name").asText()).isEqualTo("impact");
    assertThat(lesson.at("/notices")).hasSize(1);
  }

  @Test
  void everyValueIsOneRowOfTheTable() throws IOException {
    // Given: four swings of eight values. Expect: a header and 32 rows; the first to the letter.
    StringWriter text = new StringWriter();
    TsvReport.write(List.of(InventedLesson.result()), text);
    List<String> lines = text.toString().lines().toList();
    assertThat(text.toString()).endsWith("\n");
    assertThat(lines).hasSize(33);
    assertThat(lines.get(0))
        .isEqualTo(
            "recording\tplayer\tswing\tclub\tkind\tflags\tmeasure\tat\tvalue\tunit\tlow\thigh"
                + "\tgrade\twhy");
    assertThat(lines.get(1))
        .isEqualTo(
            "sub-mika_ses-01_task-swing\tmika\t1\t7-iron\thit\tn/a\tpelvis.turn\ttop\t-45\tdeg"
                + "\t-45.902\t-44.098\tmeasured\tn/a");
    assertThat(lines.get(7))
        .startsWith(
            "sub-mika_ses-01_task-swing\tmika\t1\t7-iron\thit\tn/a\twrist.release\tn/a\tn/a\tms")
        .contains("\tn/a\tn/a\twithheld\t");
    assertThat(lines.get(9)).contains("\taddress-not-still\tpelvis.turn\ttop\t-46\tdeg\t");
  }

  @Test
  void aCellNeverBreaksItsRow() throws IOException {
    StringWriter text = new StringWriter();
    TsvReport.row(text, "a\tb", "c\r\nd", "", " ", "e");
    assertThat(text.toString()).isEqualTo("a b\tc d\tn/a\tn/a\te\n");
    StringWriter first = new StringWriter();
    TsvReport.row(first, "", "x");
    assertThat(first.toString()).isEqualTo("n/a\tx\n");
  }
}
