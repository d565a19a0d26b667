package steadyturn.cli.output.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.coach.Advice;
import steadyturn.analysis.coach.LessonStep;
import steadyturn.analysis.coach.PlayerProgress;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.compare.Comparison;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.GroupComparison;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.MeanDifference;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.compare.PairRow;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.compare.SwingPair;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.reading.MadeBy;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.reason.Reason;

/**
 * Swings written by hand: turn at the top of -40 - 0.3 k deg in one lesson, 8 deg more in the next,
 * each +- 1 deg. Expect: each number of a comparison under its own key, rounded to a thousandth.
 */
class ComparedValuesTest {

  private static final MadeBy MADE_BY = MadeBy.of(AnalysisSettings.defaults(), Stream.empty());

  private static final MeasureAt TURN = new MeasureAt(Measure.PELVIS_TURN, "top");
  private static final MeasureAt RELEASE = new MeasureAt(Measure.WRIST_RELEASE, "");

  private static LessonSwing swing(String lesson, int number, double turnDeg) {
    MeasureValue turn =
        MeasureValue.of(
            Measure.PELVIS_TURN, "top", turnDeg, 1 / MeasureValue.Z95, Grade.MEASURED, Reason.NONE);
    return new LessonSwing(
        lesson,
        new SwingResult(
            number, "7-iron", SwingKind.HIT, List.of(), List.of(), List.of(turn), List.of()));
  }

  private static List<LessonSwing> swings(String lesson, double turnDeg, int count) {
    List<LessonSwing> swings = new ArrayList<>();
    for (int k = 1; k <= count; k++) {
      swings.add(swing(lesson, k, turnDeg - 0.3 * k));
    }
    return swings;
  }

  private static void expect(JsonNode node, String key, double value) {
    assertThat(node.get(key).isNumber()).as(key).isTrue();
    assertThat(node.get(key).asDouble()).as(key).isCloseTo(value, within(0.000501));
  }

  private static void expectRow(JsonNode node, ComparisonRow row) {
    MeanDifference d = row.difference().orElseThrow();
    assertThat(node.get("measure").asText()).isEqualTo(row.what().measure().id());
    assertThat(node.get("at").asText()).isEqualTo(row.what().at());
    assertThat(node.get("unit").asText()).isEqualTo(row.what().measure().unit());
    expect(node, "difference", d.value());
    expect(node, "low", d.low());
    expect(node, "high", d.high());
    expect(node, "detectable", d.detectable());
    expect(node, "typicalError", row.typicalError().orElseThrow().value());
    expect(node, "margin", row.margin());
    assertThat(node.get("chance").asDouble()).isCloseTo(row.adjustedChance(), within(0.00000501));
    assertThat(node.get("verdict").asText()).isEqualTo(row.verdict().word());
    assertThat(List.of(d.low(), d.value(), d.high(), d.detectable())).doesNotHaveDuplicates();
    expectGroup(node.get("first"), row.first());
    expectGroup(node.get("second"), row.second());
  }

  private static void expectGroup(JsonNode node, GroupSummary group) {
    assertThat(node.get("group").asText()).isEqualTo(group.group());
    assertThat(node.get("swings").asInt()).isEqualTo(group.count());
    assertThat(node.get("withheld").asInt()).isEqualTo(group.withheld());
    expect(node, "mean", group.mean());
    expect(node, "spread", group.spread());
  }

  @Test
  void aComparisonOfGroupsHasEachOfItsNumbers() throws IOException {
    List<SwingGroup> groups =
        List.of(
            new SwingGroup("before", swings("01", -40, 5)),
            new SwingGroup("after", swings("02", -48, 6)));
    Comparison comparison = GroupComparison.compare(groups, List.of(TURN, RELEASE));
    StringWriter text = new StringWriter();
    ComparisonJson.write(comparison, "lesson", MADE_BY, text);
    assertThat(text.toString()).endsWith("}\n");
    JsonNode root = new ObjectMapper().readTree(text.toString());
    assertThat(root.get("by").asText()).isEqualTo("lesson");
    assertThat(root.get("groups").toString()).isEqualTo("[\"before\",\"after\"]");
    assertThat(root.get("rows")).hasSize(2);
    expectRow(root.get("rows").get(0), comparison.rows().get(0));
    JsonNode release = root.get("rows").get(1);
    for (String key : List.of("difference", "low", "high", "detectable")) {
      assertThat(release.get(key).isNull()).as(key).isTrue();
    }
    assertThat(release.get("verdict").asText()).isEqualTo("too-few-swings");
    assertThat(release.get("first").get("mean").isNull()).isTrue();
    assertThat(release.get("first").get("withheld").asInt()).isEqualTo(5);
    assertThat(root.get("notices")).hasSameSizeAs(comparison.notices());
  }

  @Test
  void twoSwingsSideBySideHaveEachOfTheirNumbers() throws IOException {
    LessonSwing first = swing("01", 3, -40);
    LessonSwing second = swing("02", 7, -48);
    SwingPair pair = SwingPair.of(first, second, swings("03", -44, 6), List.of(TURN, RELEASE));
    StringWriter text = new StringWriter();
    PairJson.write(pair, MADE_BY, text);
    JsonNode root = new ObjectMapper().readTree(text.toString());
    assertThat(root.get("by").asText()).isEqualTo("swings");
    assertThat(root.get("first").toString())
        .isEqualTo("{\"lesson\":\"01\",\"swing\":3,\"club\":\"7-iron\",\"kind\":\"hit\"}");
    assertThat(root.get("second").get("swing").asInt()).isEqualTo(7);
    JsonNode turn = root.get("rows").get(0);
    PairRow row = pair.rows().get(0);
    PairRow.Difference d = row.difference().orElseThrow();
    expect(turn, "difference", -8);
    expect(turn, "low", d.low());
    expect(turn, "high", d.high());
    expect(turn, "usual", row.usual().orElseThrow());
    assertThat(List.of(d.low(), d.value(), d.high())).isSorted().doesNotHaveDuplicates();
    assertThat(turn.get("found").asText()).isEqualTo(row.found().word());
    expect(turn.get("first"), "value", -40);
    expect(turn.get("first"), "low", -41);
    expect(turn.get("first"), "high", -39);
    expect(turn.get("second"), "value", -48);
    assertThat(turn.get("first").get("grade").asText()).isEqualTo("measured");
    JsonNode release = root.get("rows").get(1);
    for (String key : List.of("difference", "low", "high", "usual")) {
      assertThat(release.get(key).isNull()).as(key).isTrue();
    }
    assertThat(release.get("first").get("grade").asText()).isEqualTo("withheld");
    assertThat(release.get("found").asText()).isEqualTo("not-measured");
  }

  private static LessonStep step(String lesson, String date, double turnDeg, int count) {
    return new LessonStep(
        lesson,
        date,
        swings(lesson, turnDeg, count).stream().map(LessonSwing::swing).toList(),
        new Advice(count, List.of(), Optional.empty(), List.of(), List.of(), List.of()));
  }

  @Test
  void aPlayersLessonsHaveEachOfTheirNumbers() throws IOException {
    PlayerProgress progress =
        PlayerProgress.of(
            List.of(
                step("01", "2026-04-01", -40, 5), step("02", "", -44, 2), step("03", "", -48, 6)));
    StringWriter text = new StringWriter();
    ProgressJson.write("mika", "7-iron", progress, TeachingReader.shipped(), MADE_BY, text);
    JsonNode root = new ObjectMapper().readTree(text.toString());
    assertThat(root.get("player").asText()).isEqualTo("mika");
    assertThat(root.get("club").asText()).isEqualTo("7-iron");
    JsonNode first = root.get("lessons").get(0);
    assertThat(first.get("lesson").asText()).isEqualTo("01");
    assertThat(first.get("date").asText()).isEqualTo("2026-04-01");
    assertThat(first.get("swings").asInt()).isEqualTo(5);
    assertThat(first.get("priority").isNull()).isTrue();
    GroupSummary mean = PlayerProgress.mean(progress.steps().get(0), TURN);
    JsonNode turn = first.get("means").get(0);
    expect(turn, "mean", -40.9);
    expect(turn, "low", -40.9 - mean.halfWidthOfMean());
    expect(turn, "high", -40.9 + mean.halfWidthOfMean());
    assertThat(turn.get("swings").asInt()).isEqualTo(5);
    JsonNode two = root.get("lessons").get(1).get("means").get(0);
    expect(two, "mean", -44.45);
    assertThat(two.get("low").isNull()).isTrue();
    assertThat(two.get("high").isNull()).isTrue();
    expectRow(root.get("sinceFirst").get(0), progress.sinceFirst().orElseThrow().rows().get(0));
    assertThat(root.get("sinceLast")).hasSize(1);
  }
}
