package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.coach.Advice;
import steadyturn.analysis.coach.Certainty;
import steadyturn.analysis.coach.LessonStep;
import steadyturn.analysis.coach.PlayerProgress;
import steadyturn.analysis.coach.RuleFinding;
import steadyturn.analysis.coach.teaching.GoodBand;
import steadyturn.analysis.coach.teaching.Rule;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.ComparisonVerdict;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeanDifference;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.reading.MadeBy;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.cli.words.Words;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;

/** Three lessons written by hand: turn at the top of about -30, -38 and -46 deg, slide of 20 mm. */
class ProgressPageTest {

  private static final MadeBy MADE_BY = MadeBy.of(AnalysisSettings.defaults(), Stream.empty());

  private static final Player MIKA =
      new Player(
          "mika",
          Handedness.RIGHT,
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty());

  private static final Teaching TEACHING = TeachingReader.shipped();
  private static final MeasureAt TURN = new MeasureAt(Measure.PELVIS_TURN, "top");

  private static LessonStep step(
      String lesson, String date, double turnDeg, int swings, Rule... rules) {
    List<SwingResult> made = new ArrayList<>();
    for (int k = 1; k <= swings; k++) {
      made.add(
          DrawnLesson.swing(
              k,
              List.of(
                  DrawnLesson.value(Measure.PELVIS_TURN, "top", turnDeg + 0.1 * k, 0.5),
                  DrawnLesson.value(Measure.PELVIS_SLIDE, "impact", 50.8, 2))));
    }
    Optional<RuleFinding> first =
        rules.length == 0
            ? Optional.empty()
            : Optional.of(
                new RuleFinding(
                    rules[0], Certainty.YES, List.of(), List.of(), OptionalInt.empty()));
    return new LessonStep(
        lesson, date, made, new Advice(swings, List.of(), first, List.of(), List.of(), List.of()));
  }

  private static PlayerProgress progress() {
    return PlayerProgress.of(
        List.of(
            step("01", "2026-04-01", -30, 6, TEACHING.findings().get(0)),
            step("02", "", -38.02, 2),
            step("03", "2026-04-15", -46, 6)));
  }

  private static String html(PlayerProgress progress, LengthUnits units) {
    return ProgressPage.html(MIKA, "", progress, TEACHING, units, Words.english(), MADE_BY);
  }

  private static List<String> rows(String html, String heading) {
    String part = html.substring(html.indexOf("<h2>" + heading + "</h2>"));
    String table = part.substring(part.indexOf("<thead>"), part.indexOf("</tbody>"));
    List<String> rows = new ArrayList<>();
    for (String row : table.split("</tr>", -1)) {
      String text = row.replaceAll("</t[dh]><t[dh][^>]*>", "|").replaceAll("<[^>]*>", "");
      if (!text.isBlank()) {
        rows.add(text);
      }
    }
    return rows;
  }

  @Test
  void everyLessonHasItsMeanWithItsRange() {
    // Given: six swings of -30 + 0.1 k deg. Expect: mean -29.65 with its half-width; of two swings
    // "about"; the measures that a lesson has and no other.
    PlayerProgress progress = progress();
    GroupSummary first = PlayerProgress.mean(progress.steps().get(0), TURN);
    double half = first.halfWidthOfMean();
    List<String> rows = rows(html(progress, LengthUnits.METRIC), "Each lesson");
    assertThat(rows).hasSize(3);
    assertThat(rows.get(0))
        .isEqualTo("Measure|Position|Lesson 01, 1 April 2026|Lesson 02|Lesson 03, 15 April 2026");
    assertThat(rows.get(1))
        .startsWith(
            "turn|at the top|"
                + Amounts.decimal(first.mean(), 1, Words.english())
                + " deg ("
                + Amounts.decimal(first.mean() - half, 1, Words.english())
                + " to "
                + Amounts.decimal(first.mean() + half, 1, Words.english())
                + ")|about −37.9 deg|−45.7 deg (");
    assertThat(rows.get(2)).startsWith("slide|at impact|51 mm (").contains("|about 51 mm|51 mm (");
    assertThat(rows(html(progress, LengthUnits.IMPERIAL), "Each lesson").get(2))
        .startsWith("slide|at impact|2.0 in (");
  }

  @Test
  void aChangeHasItsRangeWhatItCouldShowAndItsVerdict() {
    PlayerProgress progress = progress();
    String html = html(progress, LengthUnits.METRIC);
    ComparisonRow row = progress.sinceFirst().orElseThrow().rows().get(0);
    MeanDifference d = row.difference().orElseThrow();
    assertThat(rows(html, "Since the first lesson").get(0))
        .isEqualTo("Measure|Position|change|smallest it could show|in words");
    assertThat(rows(html, "Since the first lesson").get(1))
        .isEqualTo(
            "turn|at the top|−16.0 deg ("
                + Amounts.decimal(d.low(), 1, Words.english())
                + " to "
                + Amounts.decimal(d.high(), 1, Words.english())
                + ")|"
                + Amounts.decimal(d.detectable(), 1, Words.english())
                + "|a real change");
    assertThat(d.low()).isLessThan(-16);
    assertThat(d.high()).isBetween(-16.0, 0.0);
    assertThat(rows(html, "Since the lesson before").get(1))
        .isEqualTo("turn|at the top|–|–|too few swings to tell");
  }

  @Test
  void aChangeIsTold() {
    // Given: turn at the top -29.65 -> -45.65 deg, so 16 more; good from 40 to 62, so all the way;
    // slide at impact as before. Expect: both in a sentence, without a sign for a direction.
    String html = html(progress(), LengthUnits.METRIC);
    assertThat(html)
        .containsPattern(
            "Turn at the top: 29[.][67] → 45[.][67] deg away from the target; 16.0 deg more [(]")
        .contains("; a real change, the goal is reached.")
        .containsPattern("Slide at impact: 51 → 51 mm towards the target; 0 mm (more|less) \\(")
        .contains("id=\"line-pelvis-turn-top-title\"");
    assertThat(html(PlayerProgress.of(List.of(step("01", "", -30, 6))), LengthUnits.METRIC))
        .contains("One lesson so far");
  }

  @ParameterizedTest
  @CsvSource({
    "-100, -70, half the way to the goal",
    "-100, -95, hardly nearer the goal",
    "-100, -80, a third of the way to the goal",
    "-100, -50, most of the way to the goal",
    "-100, -30, the goal is reached",
    "-100, 40, past the goal",
    "-100, -120, away from the goal",
    "-20, -10, good before and still",
    "-20, -70, no longer within the goal"
  })
  void aChangeIsWorthItsPartOfTheWay(double first, double last, String worth) {
    // Given: slide at the top, good from -40 to 20 mm (teaching.toml). Expect: the part of the way
    // from the first lesson to the nearer edge.
    MeasureAt slide = new MeasureAt(Measure.PELVIS_SLIDE, "top");
    GroupSummary a = new GroupSummary("a", 5, 0, first, 3, 1, 1, Map.of("a", 1.0));
    GroupSummary b = new GroupSummary("b", 5, 0, last, 3, 1, 1, Map.of("b", 1.0));
    MeanDifference d =
        new MeanDifference(last - first, last - first - 5, last - first + 5, 0, 0, 0);
    ComparisonRow row =
        new ComparisonRow(
            slide,
            a,
            b,
            Optional.of(d),
            0,
            10,
            Optional.empty(),
            ComparisonVerdict.REAL,
            0.05,
            Optional.empty());
    Amounts amounts = new Amounts(LengthUnits.METRIC, Audience.TEACHER, Words.english());
    String told = new ChangeWords(Words.english(), amounts).of(row, GoodBand.of(TEACHING, slide));
    assertThat(told).endsWith("; a real change, " + worth + ".").doesNotContain("\u2212");
  }

  @Test
  void oneLessonHasNoChange() {
    PlayerProgress one = PlayerProgress.of(List.of(step("01", "", -30, 6)));
    assertThat(html(one, LengthUnits.METRIC))
        .doesNotContain("Since the lesson before", "Since the first lesson")
        .contains("<p>One lesson with full swings, club not noted</p>");
  }

  @Test
  void theDrillGivenStandsBesideItsLessonWithItsGoal() {
    assertThat(ProgressPage.drills(progress(), TEACHING, LengthUnits.METRIC))
        .containsExactly(
            "Lesson 01, 1 April 2026: Bag beside the hip, goal share of turn at the top between 60"
                + " and 100 %.",
            "Lesson 02: no drill, as nothing was beyond doubt.",
            "Lesson 03, 15 April 2026: no drill, as nothing was beyond doubt.");
    assertThat(ProgressPage.drills(progress(), TEACHING, LengthUnits.IMPERIAL).get(0))
        .endsWith("between 60 and 100 %.");
    String html = html(progress(), LengthUnits.METRIC);
    assertThat(html)
        .contains("<li>Lesson 02: no drill, as nothing was beyond doubt.</li>")
        .contains("<li>Warm up for about ten minutes and begin with half swings.</li>");
  }

  @Test
  void aGoalInMillimetresIsTheSameInInches() {
    // Given: hips 5 mm forward at impact, and the finding that they stay back; its drill is judged
    // by the slide at impact. Expect: the goal in mm, and the same in inches to a tenth.
    List<SwingResult> made = new ArrayList<>();
    for (int k = 1; k <= 6; k++) {
      made.add(
          DrawnLesson.swing(
              k, List.of(DrawnLesson.value(Measure.PELVIS_SLIDE, "impact", 5 + 0.1 * k, 2))));
    }
    Rule staysBack =
        TEACHING.findings().stream().filter(r -> r.name().equals("stays-back")).findAny().get();
    RuleFinding found =
        new RuleFinding(staysBack, Certainty.YES, List.of(), List.of(), OptionalInt.empty());
    Advice advice = new Advice(6, List.of(), Optional.of(found), List.of(), List.of(), List.of());
    PlayerProgress one =
        PlayerProgress.of(List.of(new LessonStep("01", "2026-04-01", made, advice)));
    String metric = ProgressPage.drills(one, TEACHING, LengthUnits.METRIC).get(0);
    String inches = ProgressPage.drills(one, TEACHING, LengthUnits.IMPERIAL).get(0);
    Pattern goal = Pattern.compile("slide at impact between ([\\d.]+) and ([\\d.]+) (mm|in)\\.$");
    Matcher mm = goal.matcher(metric);
    Matcher in = goal.matcher(inches);
    assertThat(mm.find()).as(metric).isTrue();
    assertThat(in.find()).as(inches).isTrue();
    for (int end = 1; end <= 2; end++) {
      assertThat(Double.parseDouble(in.group(end)))
          .isCloseTo(Double.parseDouble(mm.group(end)) / 25.4, within(0.0501));
    }
    assertThat(mm.group(3) + in.group(3)).isEqualTo("mmin");
  }

  @Test
  void thePageIsWhole() {
    String html =
        ProgressPage.html(
            MIKA, "driver", progress(), TEACHING, LengthUnits.METRIC, Words.english(), MADE_BY);
    assertThat(html)
        .startsWith("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"/>")
        .contains("<title>mika: from lesson to lesson</title>", "<style>")
        .contains("<header><h1>mika: from lesson to lesson</h1>")
        .contains("<p>3 lessons with full swings, driver</p></header>")
        .endsWith("</footer></main></body></html>\n");
    assertThat(html.substring(html.indexOf("<body")))
        .containsSubsequence(
            "What changed from the first lesson to the last",
            "From lesson to lesson",
            "Drill given after each lesson",
            "Since the lesson before",
            "Since the first lesson",
            "Each lesson",
            "Take care",
            "What this cannot tell");
  }
}
