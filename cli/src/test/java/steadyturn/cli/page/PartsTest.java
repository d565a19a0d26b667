package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
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
import steadyturn.cli.page.paper.Html;
import steadyturn.ingest.sample.Handedness;

/** The parts of a page that are words and numbers, from a sheet written by hand. */
class PartsTest {

  private static final Teaching TEACHING = TeachingReader.shipped();

  private static DrawnLesson lesson() {
    DrawnLesson lesson = new DrawnLesson(Handedness.RIGHT);
    for (int k = 0; k < 3; k++) {
      lesson.swing(
          List.of(
              DrawnLesson.value(Measure.PELVIS_TURN, "top", -40 - 2 * k, 1),
              DrawnLesson.value(Measure.PELVIS_SLIDE, "impact", 50.8, 3),
              DrawnLesson.value(Measure.TEMPO_RATIO, "", 3, 0.1)));
    }
    return lesson;
  }

  /**
   * The table's rows as text, cells parted by a bar; a space that never breaks is an underscore.
   */
  private static List<String> rows(Html html) {
    String text = html.toString();
    String body = text.substring(text.indexOf("<tbody>"), text.indexOf("</tbody>"));
    return body.lines()
        .flatMap(line -> List.of(line.split("</tr>")).stream())
        .map(
            row ->
                row.replaceAll("</t[dh]><t[dh][^>]*>", "|")
                    .replaceAll("<[^>]*>", "")
                    .replace('\u00a0', '_'))
        .toList();
  }

  private static String half(Pen pen, Measure measure, String at, double mean, int side) {
    GroupSummary group = pen.mean(measure, at).orElseThrow();
    return pen.amounts().number(mean + side * group.halfWidthOfMean(), measure);
  }

  @Test
  void theTableOfMeansHasTheMeanItsRangeItsSpreadAndTheCount() {
    // Given: -40, -42, -44 deg. Expect: mean -42, spread 2; what no swing has is no row.
    Pen pen = lesson().pen();
    List<String> rows = rows(NumbersPart.means(pen));
    assertThat(rows).hasSize(3);
    assertThat(rows.get(0))
        .isEqualTo(
            "Turn at the top|−42.0_deg ("
                + half(pen, Measure.PELVIS_TURN, "top", -42, -1)
                + "_to_"
                + half(pen, Measure.PELVIS_TURN, "top", -42, 1)
                + ")|2.0|3");
    assertThat(rows.get(1)).startsWith("Slide at impact|51_mm (").endsWith(")|0|3");
    assertThat(rows.get(2)).startsWith("Backswing : downswing|3.0 (").endsWith("|0.0|3");
    assertThat(rows(NumbersPart.means(lesson().inches().pen())).get(1)).contains("|2.0_in (");
  }

  @Test
  void oneSwingHasNoSpreadAndNoRange() {
    DrawnLesson one =
        new DrawnLesson(Handedness.RIGHT)
            .swing(List.of(DrawnLesson.value(Measure.PELVIS_TURN, "top", -40, 1)));
    assertThat(rows(NumbersPart.means(one.pen()))).containsExactly("Turn at the top|−40.0_deg|–|1");
  }

  @Test
  void theTableBesideTheModelHasBothAndTheirDifference() {
    ModelGap gap =
        new ModelGap(
            new MeasureAt(Measure.PELVIS_TURN, "top"), -45, -38.5, 2, 11, OptionalDouble.of(1.46));
    ModelGap alone =
        new ModelGap(
            new MeasureAt(Measure.TEMPO_RATIO, ""), 3, 2.5, -0.8, -0.2, OptionalDouble.empty());
    List<String> rows =
        rows(
            NumbersPart.model(lesson().pen(), new ModelComparison(List.of(gap, alone), List.of())));
    assertThat(rows)
        .containsExactly(
            "Turn at the top|−45.0|−38.5|6.5 deg (2.0 to 11.0)|1.5",
            "Backswing : downswing|3.0|2.5|−0.5 (−0.8 to −0.2)|–");
  }

  private static RuleFinding finding(OptionalInt moreSwings) {
    Rule rule = TEACHING.findings().get(0);
    List<Evidence> evidence =
        rule.when().stream()
            .map(
                need ->
                    new Evidence(
                        need,
                        TEACHING.limit(need.limit()),
                        -41.5,
                        -44.8,
                        -38.2,
                        Certainty.YES,
                        OptionalInt.empty()))
            .toList();
    List<RuleFinding.Link> chain =
        List.of(
            new RuleFinding.Link(TEACHING.consequences().get(0), RuleFinding.Seen.SEEN, List.of()));
    return new RuleFinding(rule, Certainty.YES, evidence, chain, moreSwings);
  }

  private static Advice advice(
      int swings, Optional<RuleFinding> first, List<RuleFinding> further, List<RuleFinding> open) {
    return new Advice(swings, List.of("set-up-ball"), first, further, further, open);
  }

  private static String text(Html html) {
    return html.toString().replaceAll("<[^>]*>", "\n").replaceAll("\n+", "\n").strip();
  }

  private static DrawnLesson advised(Advice advice) {
    return lesson().advised(advice);
  }

  @Test
  void theOneThingHasItsEvidenceBesideItsLimitAndWhatItTendsToCause() {
    Advice advice = advice(3, Optional.of(finding(OptionalInt.empty())), List.of(), List.of());
    assertThat(text(AdvicePart.oneThing(advised(advice).pen())).lines())
        .containsExactly(
            "The one thing",
            "Slides more than it turns",
            "In the backswing the pelvis slides away from the target, far for the turn it makes:"
                + " the point it turns about lies far from the middle of the hips.",
            "Share of turn at the top",
            " ",
            "−42 %",
            " ",
            "(−45 to −38); limit 60 %",
            "Share of turn at the top",
            "−42 % (−45 to −38)",
            "60",
            "Slide at the top",
            " ",
            "−42 mm",
            " ",
            "(−45 to −38); limit −10 mm",
            "Slide at the top",
            "−42 mm (−45 to −38)",
            "−10",
            "← target",
            "What it tends to cause",
            "the point turned about lies far from the middle of the hips",
            " ",
            "seen in these swings",
            "Basis: common practice, no source. Confidence: likely.");
    assertThat(text(AdvicePart.oneThing(advised(advice).forPlayer().pen())).lines())
        .startsWith("Your one thing to work on", "Turn on the spot, slide less")
        .endsWith(
            "How much of the movement of your hips is turning at the end of the backswing: about"
                + " 42 %.",
            "How far your hips move sideways at the end of the backswing: about 4 cm away from the"
                + " target.");
  }

  @ParameterizedTest
  @CsvSource({
    "0, No full swing was recorded in this lesson.",
    "2, These were too few swings to say anything for sure.",
    "3, Nothing stands out beyond doubt"
  })
  void withoutOneThingThePageSaysWhy(int swings, String told) {
    Advice none = advice(swings, Optional.empty(), List.of(), List.of());
    assertThat(text(AdvicePart.oneThing(advised(none).pen()))).contains(told);
  }

  @Test
  void whatCannotBeToldYetStandsInThePlaceOfTheOneThingAndNotAgainBelow() {
    // Given: three swings without a finding, one thing open. Expect: "not sure yet" at the top of
    // both pages, never "nothing stands out", which would be read as praise.
    Advice open = advice(3, Optional.empty(), List.of(), List.of(finding(OptionalInt.of(2))));
    String told = "Slides more than it turns: not sure yet. About 2 more swings would tell.";
    assertThat(text(AdvicePart.oneThing(advised(open).pen())))
        .contains("Not sure yet\n", told)
        .doesNotContain("Nothing stands out");
    assertThat(text(AdvicePart.others(advised(open).pen()))).doesNotContain("not sure");
    assertThat(text(AdvicePart.oneThing(advised(open).forPlayer().pen()))).contains("not sure yet");
    assertThat(text(AdvicePart.others(advised(open).forPlayer().pen()))).isEmpty();
  }

  @Test
  void whatElseWasFoundAndWhatIsOpenBesideTheOneThingIsForTheTeacher() {
    RuleFinding found = finding(OptionalInt.empty());
    Advice advice =
        new Advice(
            3,
            List.of("set-up-ball"),
            Optional.of(found),
            List.of(found),
            List.of(
                new RuleFinding(
                    TEACHING.good().get(0),
                    Certainty.YES,
                    List.of(),
                    List.of(),
                    OptionalInt.empty())),
            List.of(finding(OptionalInt.of(7)), found));
    String teacher = text(AdvicePart.others(advised(advice).pen()));
    assertThat(teacher)
        .contains("Already good\nYour hips make a full turn in the backswing.")
        .contains("Also\nSlides more than it turns. \nIn the backswing")
        .contains("Slide at the top: −42 mm (−45 to −38); limit −10 mm.")
        .contains("Slides more than it turns: not sure yet. About 7 more swings would tell.")
        .contains("The measuring error is too large to tell here");
    String player = text(AdvicePart.others(advised(advice).forPlayer().pen()));
    assertThat(player)
        .doesNotContain("Also\n")
        .doesNotContain("not sure yet"); // the one thing is enough for one page
    assertThat(text(AdvicePart.asks(advised(advice).pen())))
        .endsWith("\nIs the ball where it belongs for this club?");
    Advice nothing = advice(3, Optional.empty(), List.of(), List.of());
    assertThat(text(AdvicePart.others(advised(nothing).pen())))
        .isEqualTo(
            "Already good\nNone of the things looked for is good beyond doubt in these swings.");
    assertThat(text(AdvicePart.others(advised(nothing).forPlayer().pen()))).isEmpty();
  }

  @Test
  void theDrillHasItsGoalItsRepetitionsAndItsCautions() {
    Advice advice = advice(3, Optional.of(finding(OptionalInt.empty())), List.of(), List.of());
    String teacher = text(DrillPart.toDo(advised(advice).pen()));
    assertThat(teacher)
        .startsWith("The drill\nBag beside the hip\n")
        .contains("\nDrawing of the drill: Bag beside the hip\nWhat to do\nStand a golf bag")
        .contains("\nGoal\nShare of turn at the top: 60 % or more. Do it 8 times.\nTake care\n")
        .contains(
            "Warm up for about ten minutes", "In this drill half or three-quarter swings only.")
        .doesNotContain("Other drills"); // a turn of 42 deg and 51 mm at impact are there already
    String player = text(DrillPart.toDo(advised(advice).forPlayer().pen()));
    assertThat(player)
        .contains("turning at the end of the backswing: 60 % or more. Do it 8 times.")
        .doesNotContain("Other drills");
    Advice nothing = advice(3, Optional.empty(), List.of(), List.of());
    assertThat(text(DrillPart.toDo(advised(nothing).pen()))).endsWith("None for now.");
    assertThat(text(DrillPart.toDo(advised(nothing).forPlayer().pen()))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "club-across-hips, between 40 degrees and 62 degrees",
    "step-to-target, between 4.5 cm towards the target and 12 cm towards the target",
    "wall-behind, at most 5 cm",
    "narrow-feet, between 0 cm and 7 cm"
  })
  void forThePlayerAGoalHasNoSign(String drill, String words) {
    // Given: swings without these values, so that the goals are the whole ones: -62 to -40 deg, 45
    // to 120 mm, -20 to 50 mm of thrust, 0 to 70 mm of circle.
    Rule rule = TEACHING.findings().get(0);
    Rule with =
        new Rule(
            rule.name(),
            rule.when(),
            List.of(),
            List.of(),
            rule.confidence(),
            rule.source(),
            List.of(drill));
    RuleFinding found =
        new RuleFinding(with, Certainty.YES, List.of(), List.of(), OptionalInt.empty());
    Advice advice = advice(3, Optional.of(found), List.of(), List.of());
    DrawnLesson bare =
        new DrawnLesson(Handedness.RIGHT)
            .swing(List.of(DrawnLesson.value(Measure.TEMPO_RATIO, "", 3, 0.1)));
    assertThat(text(DrillPart.toDo(bare.advised(advice).forPlayer().pen())))
        .contains(": " + words + ".");
  }

  @Test
  void drillsThatWereDoneAreScored() {
    // Given: three swings before, two repetitions in the goal, three after.
    DrawnLesson lesson = lesson().drilled(BeforeAndAfterTest.score(BeforeAndAfterTest.swings()));
    String text = text(DrillPart.done(lesson.pen()));
    assertThat(text)
        .startsWith("Drills done in this lesson\n")
        .contains(
            ": of the repetitions 2 were inside the goal, 0 outside; of 0 it cannot be told. One after the other, with 95 %")
        .contains("range: −51.0 deg (−53.0 to −49.0), −51.0 deg (−53.0 to −49.0).")
        .contains("Full swings before the drill −68.0 deg (")
        .contains("after it −33.0 deg (")
        .doesNotContain("could not be measured", "near an edge");
    assertThat(text(DrillPart.care(lesson.pen()))).startsWith("Take care\nWarm up");
    assertThat(text(DrillPart.done(lesson().pen()))).isEmpty();
    assertThat(text(DrillPart.care(lesson().pen()))).isEmpty();
    assertThat(text(DrillPart.done(lesson.forPlayer().pen())))
        .doesNotContain("One after the other");
  }
}
