package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.coach.Advice;
import steadyturn.analysis.coach.Certainty;
import steadyturn.analysis.coach.LessonStep;
import steadyturn.analysis.coach.PlayerProgress;
import steadyturn.analysis.coach.RuleFinding;
import steadyturn.analysis.coach.teaching.Rule;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeanDifference;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.cli.words.Words;

/** Three lessons written by hand: turn at the top of about -30, -38 and -46 deg, slide of 20 mm. */
class ProgressPageTest {

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
    return ProgressPage.html("mika", "", progress, TEACHING, units, Words.english());
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
        .isEqualTo("Measure|Position|Lesson 01, 2026-04-01|Lesson 02|Lesson 03, 2026-04-15");
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
  void oneLessonHasNoChange() {
    PlayerProgress one = PlayerProgress.of(List.of(step("01", "", -30, 6)));
    assertThat(html(one, LengthUnits.METRIC))
        .doesNotContain("Since the lesson before", "Since the first lesson")
        .contains("<p>1 lessons with full swings, club not noted</p>");
  }

  @Test
  void theDrillGivenStandsBesideItsLessonWithItsGoal() {
    assertThat(ProgressPage.drills(progress(), TEACHING, LengthUnits.METRIC))
        .containsExactly(
            "Lesson 01, 2026-04-01: Bag beside the hip, goal share of turn at the top between 60"
                + " and 100 %.",
            "Lesson 02: no drill, as nothing was beyond doubt.",
            "Lesson 03, 2026-04-15: no drill, as nothing was beyond doubt.");
    assertThat(ProgressPage.drills(progress(), TEACHING, LengthUnits.IMPERIAL).get(0))
        .endsWith("between 60 and 100 %.");
    String html = html(progress(), LengthUnits.METRIC);
    assertThat(html)
        .contains("<li>Lesson 02: no drill, as nothing was beyond doubt.</li>")
        .contains("<li>Warm up for about ten minutes and begin with half swings.</li>");
  }

  @Test
  void thePageIsWhole() {
    String html =
        ProgressPage.html(
            "mika", "driver", progress(), TEACHING, LengthUnits.METRIC, Words.english());
    assertThat(html)
        .startsWith("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"/>")
        .contains("<title>mika: from lesson to lesson</title>", "<style>")
        .contains("<header><h1>mika: from lesson to lesson</h1>")
        .contains("<p>3 lessons with full swings, driver</p></header>")
        .containsSubsequence(
            "Since the lesson before",
            "Since the first lesson",
            "Each lesson",
            "Drill given after each lesson",
            "Take care",
            "What this cannot tell")
        .endsWith("</footer></main></body></html>\n");
  }
}
