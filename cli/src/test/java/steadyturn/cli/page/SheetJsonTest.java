package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.coach.Advice;
import steadyturn.analysis.coach.Certainty;
import steadyturn.analysis.coach.Evidence;
import steadyturn.analysis.coach.ModelComparison;
import steadyturn.analysis.coach.ModelGap;
import steadyturn.analysis.coach.RuleFinding;
import steadyturn.analysis.coach.teaching.Rule;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.cli.page.reader.Audience;
import steadyturn.ingest.sample.Handedness;

/** Given: a sheet written by hand. Expect: each of its numbers under its own key. */
class SheetJsonTest {

  private static DrawnLesson lesson() {
    DrawnLesson lesson = new DrawnLesson(Handedness.LEFT);
    for (int k = 1; k <= 3; k++) {
      lesson.swing(
          List.of(
              DrawnLesson.value(Measure.PELVIS_TURN, "top", -40.1234 - k, 1),
              DrawnLesson.value(Measure.PELVIS_SLIDE, "top", -20, 5)),
          DrawnLesson.curve(k, Measure.PELVIS_SLIDE, 1, 0, 1.75, -20.26, 2, 70),
          DrawnLesson.curve(k, Measure.PELVIS_TURN, 1, 0, 1.75, -40.04, 2, 40));
    }
    return lesson;
  }

  private static JsonNode json(DrawnLesson lesson, Audience audience) throws IOException {
    String text = SheetJson.json(lesson.sheet(), audience);
    assertThat(text).endsWith("}\n");
    return new ObjectMapper().readTree(text);
  }

  private static JsonNode json(DrawnLesson lesson) throws IOException {
    return json(lesson, Audience.TEACHER);
  }

  @Test
  void theHeadSaysWhoWhenAndForWhom() throws IOException {
    JsonNode root = json(lesson(), Audience.PLAYER);
    assertThat(root.path("lesson").asText()).isEqualTo("02");
    assertThat(root.path("date").asText()).isEqualTo("2026-04-01");
    assertThat(root.path("for").asText()).isEqualTo("player");
    assertThat(root.at("/player/id").asText()).isEqualTo("mika");
    assertThat(root.at("/player/handed").asText()).isEqualTo("left");
    assertThat(root.path("club").asText()).isEqualTo("7-iron");
    assertThat(root.path("swings").toString()).isEqualTo("[1,2,3]");
    assertThat(root.path("priority").isNull()).isTrue();
    assertThat(root.has("besideTheModel")).isFalse();
    assertThat(root.path("cannotTell").asText())
        .startsWith("The units measure how the body moves.");
  }

  @Test
  void theNumbersAreMeanRangeAndSpread() throws IOException {
    // Given: -41.1234, -42.1234, -43.1234. Expect: mean -42.123, spread 1, ends the half-width off.
    DrawnLesson lesson = lesson();
    GroupSummary mean = lesson.pen().mean(Measure.PELVIS_TURN, "top").orElseThrow();
    JsonNode turn = number(json(lesson), "pelvis.turn", "top");
    assertThat(turn.path("unit").asText()).isEqualTo("deg");
    assertThat(turn.path("mean").asDouble()).isEqualTo(-42.123);
    assertThat(turn.path("spread").asDouble()).isEqualTo(1);
    assertThat(turn.path("low").asDouble())
        .isCloseTo(-42.1234 - mean.halfWidthOfMean(), within(0.00051));
    assertThat(turn.path("high").asDouble())
        .isCloseTo(-42.1234 + mean.halfWidthOfMean(), within(0.00051));
    assertThat(turn.path("swings").asInt()).isEqualTo(3);
  }

  private static JsonNode number(JsonNode root, String measure, String at) {
    for (JsonNode node : root.path("numbers")) {
      if (node.path("measure").asText().equals(measure) && node.path("at").asText().equals(at)) {
        return node;
      }
    }
    throw new AssertionError("no " + measure + " at " + at);
  }

  @Test
  void twoSwingsHaveAMeanAndNoRange() throws IOException {
    DrawnLesson two =
        new DrawnLesson(Handedness.RIGHT)
            .swings(2, List.of(DrawnLesson.value(Measure.PELVIS_TURN, "top", -40, 1)));
    JsonNode turn = number(json(two), "pelvis.turn", "top");
    assertThat(turn.path("mean").asDouble()).isEqualTo(-40);
    assertThat(turn.path("low").isNull()).isTrue();
    assertThat(turn.path("high").isNull()).isTrue();
  }

  @Test
  void theMeanPathIsSlideAndTurnToATenth() throws IOException {
    JsonNode path = json(lesson()).path("meanSlideMmTurnDeg");
    assertThat(path).hasSize(101);
    assertThat(path.get(0).toString()).isEqualTo("[0.0,0.0]");
    assertThat(path.get(75).toString()).isEqualTo("[-20.3,-40.0]");
    assertThat(path.get(100).toString()).isEqualTo("[70.0,40.0]");
    assertThat(json(new DrawnLesson(Handedness.RIGHT)).has("meanSlideMmTurnDeg")).isFalse();
  }

  @Test
  void theModelStandsBesideThePlayer() throws IOException {
    ModelGap gap =
        new ModelGap(
            new MeasureAt(Measure.PELVIS_TURN, "top"), -45, -38.5, 2, 11, OptionalDouble.of(1.5));
    ModelGap alone =
        new ModelGap(
            new MeasureAt(Measure.TEMPO_RATIO, ""), 3, 2.5, -0.75, -0.25, OptionalDouble.empty());
    JsonNode array =
        json(lesson().beside(new ModelComparison(List.of(gap, alone), List.of())))
            .path("besideTheModel");
    assertThat(array.get(0).toString())
        .isEqualTo(
            "{\"measure\":\"pelvis.turn\",\"at\":\"top\",\"unit\":\"deg\",\"model\":-45,"
                + "\"player\":-38.5,\"difference\":6.5,\"low\":2,\"high\":11,"
                + "\"ownSpreads\":1.5}");
    assertThat(array.get(1).path("ownSpreads").isNull()).isTrue();
  }

  private static RuleFinding finding(Teaching teaching) {
    Rule rule = teaching.findings().get(0);
    List<Evidence> evidence =
        rule.when().stream()
            .map(
                need ->
                    new Evidence(
                        need,
                        teaching.limit(need.limit()),
                        41.5,
                        38.25,
                        44.75,
                        Certainty.YES,
                        OptionalInt.empty()))
            .toList();
    List<RuleFinding.Link> chain =
        List.of(
            new RuleFinding.Link(
                teaching.consequences().get(0), RuleFinding.Seen.NOT_SURE_YET, List.of()));
    return new RuleFinding(rule, Certainty.YES, evidence, chain, OptionalInt.of(4));
  }

  @Test
  void aFindingHasItsEvidenceItsChainAndItsDrills() throws IOException {
    Teaching teaching = TeachingReader.shipped();
    RuleFinding found = finding(teaching);
    Advice advice =
        new Advice(
            3,
            List.of("set-up-aim"),
            Optional.of(found),
            List.of(found),
            List.of(found).subList(0, 0),
            List.of(found, found));
    JsonNode root = json(lesson().advised(advice));
    JsonNode first = root.path("priority");
    assertThat(first.path("id").asText()).isEqualTo(found.rule().name());
    assertThat(first.path("name").asText()).isEqualTo("Slides more than it turns");
    assertThat(first.path("words").asText()).startsWith("In the backswing the pelvis slides");
    assertThat(first.at("/tendsTo/0/words").asText())
        .isEqualTo("the point turned about lies far from the middle of the hips");
    assertThat(root.path("asks").get(0).asText())
        .startsWith("Are feet and hips along the target line?");
    assertThat(first.path("found").asText()).isEqualTo("yes");
    assertThat(first.path("confidence").asText()).isEqualTo(found.rule().confidence());
    assertThat(first.path("source").asText()).isEqualTo(found.rule().source());
    assertThat(first.path("moreSwings").asInt()).isEqualTo(4);
    JsonNode evidence = first.path("evidence").get(0);
    assertThat(evidence.path("measure").asText()).isEqualTo("pelvis.turn-share");
    assertThat(evidence.path("of").asText()).isEqualTo("mean");
    assertThat(evidence.path("value").asDouble()).isEqualTo(41.5);
    assertThat(evidence.path("low").asDouble()).isEqualTo(38.25);
    assertThat(evidence.path("high").asDouble()).isEqualTo(44.75);
    assertThat(evidence.path("side").asText()).isEqualTo("below");
    assertThat(evidence.path("limit").asDouble()).isEqualTo(60);
    assertThat(evidence.path("limitSource").asText()).isNotBlank();
    assertThat(evidence.path("holds").asText()).isEqualTo("yes");
    assertThat(first.at("/tendsTo/0/id").asText()).isEqualTo(teaching.consequences().get(0).name());
    assertThat(first.at("/tendsTo/0/seen").asText()).isEqualTo("not-sure-yet");
    assertThat(first.path("drills")).hasSameSizeAs(found.rule().drills());
    assertThat(root.path("further")).hasSize(1);
    assertThat(root.path("open")).hasSize(2);
    assertThat(root.path("asks")).hasSize(1);
  }

  @Test
  void aDrillHasItsRepetitionsAndItsEffect() throws IOException {
    // Given: three swings before, two repetitions, three after; see BeforeAndAfterTest.
    JsonNode drill =
        json(lesson().drilled(BeforeAndAfterTest.score(BeforeAndAfterTest.swings())))
            .at("/drillsDone/0");
    MeasureValue inside = BeforeAndAfterTest.swings().get(3).measures().get(0);
    assertThat(drill.path("id").asText()).isEqualTo(BeforeAndAfterTest.DRILL.name());
    assertThat(drill.path("name").asText()).isNotBlank();
    assertThat(drill.path("nearEdge").asInt()).isZero();
    assertThat(drill.path("low").asDouble()).isEqualTo(BeforeAndAfterTest.DRILL.low());
    assertThat(drill.path("high").asDouble()).isEqualTo(BeforeAndAfterTest.DRILL.high());
    assertThat(drill.path("inGoal").asInt()).isEqualTo(2);
    assertThat(drill.path("inARow").asInt()).isEqualTo(2);
    assertThat(drill.path("unseen").asInt()).isZero();
    assertThat(drill.path("repetitions")).hasSize(2);
    JsonNode rep = drill.at("/repetitions/0");
    assertThat(rep.path("kind").asText()).isEqualTo("swing");
    assertThat(rep.path("swing").asInt()).isEqualTo(4);
    assertThat(rep.path("value").asDouble()).isEqualTo(inside.value());
    assertThat(rep.path("low").asDouble()).isEqualTo(inside.low());
    assertThat(rep.path("high").asDouble()).isEqualTo(inside.high());
    assertThat(rep.path("inGoal").asBoolean()).isTrue();
    assertThat(drill.at("/effect/first/swings").asInt()).isEqualTo(3);
  }

  @Test
  void theWordsArePlainerForThePlayer() throws IOException {
    Advice advice =
        new Advice(
            3,
            List.of(),
            Optional.of(finding(TeachingReader.shipped())),
            List.of(),
            List.of(),
            List.of());
    String teacher = json(lesson().advised(advice)).at("/priority/words").asText();
    String player = json(lesson().advised(advice), Audience.PLAYER).at("/priority/words").asText();
    assertThat(player).isNotBlank().isNotEqualTo(teacher);
  }
}
