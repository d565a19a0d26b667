package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.coach.Advice;
import steadyturn.analysis.coach.Certainty;
import steadyturn.analysis.coach.Evidence;
import steadyturn.analysis.coach.RuleFinding;
import steadyturn.analysis.coach.teaching.Rule;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.cli.page.reader.Letter;
import steadyturn.cli.words.Words;
import steadyturn.ingest.sample.Handedness;

/** A whole page from a sheet written by hand. */
class PageTest {

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

  private static DrawnLesson advised(Advice advice) {
    return lesson().advised(advice);
  }

  private static String page(DrawnLesson lesson, Audience audience) {
    return Page.html(lesson.sheet(), audience, LengthUnits.METRIC, Words.english(), Letter.NONE);
  }

  /** What a reader sees; an order of words looked for in the type as well takes half a minute. */
  private static String body(DrawnLesson lesson, Audience audience) {
    String html = page(lesson, audience);
    return html.substring(html.indexOf("<body"));
  }

  @Test
  void thePageBeginsWithWhoWhenAndHowMany() {
    String html = page(lesson(), Audience.TEACHER);
    assertThat(html)
        .startsWith("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"/>")
        .contains("<title>mika: turn and slide, 02</title>")
        .contains("<body class=\"teacher\"><main><header><h1>mika: turn and slide</h1>")
        .contains("<p>Lesson 02, 1 April 2026 · right-handed · 3 full swings, 7-iron</p></header>")
        .endsWith("</main></body></html>\n");
    assertThat(page(new DrawnLesson(Handedness.LEFT), Audience.PLAYER))
        .contains("<body class=\"player\">", " · left-handed · 0 full swings, 7-iron</p>");
  }

  @Test
  void aPictureThatCannotBeDrawnSaysWhatItNeeds() {
    // Given: no wrist unit and no curves. Expect: two sentences beside the one picture there is.
    String html = page(lesson(), Audience.TEACHER);
    assertThat(html.split("<svg ", -1)).hasSize(2);
    assertThat(html)
        .contains("This picture needs the forearm and hand units, which these swings do not have.")
        .contains("This picture needs the pelvis unit, which these swings do not have.");
  }

  @Test
  void aPageThatIsSignedSaysWhoAndWhat() {
    Letter letter = new Letter("Mika Aalto", "Jo", "See you on Friday.");
    assertThat(
            Page.html(
                lesson().sheet(), Audience.PLAYER, LengthUnits.METRIC, Words.english(), letter))
        .contains("<h1>Mika Aalto</h1><p>Lesson 02, 1 April 2026 · with Jo · right-handed")
        .contains("<p class=\"says\">See you on Friday.</p></header>");
  }

  @Test
  void aGoodPlayerReadsWhatIsGoodAndWhatToKeep() {
    RuleFinding good =
        new RuleFinding(
            TEACHING.good().get(0), Certainty.YES, List.of(), List.of(), OptionalInt.empty());
    Advice advice = new Advice(3, List.of(), Optional.empty(), List.of(), List.of(good), List.of());
    assertThat(body(advised(advice), Audience.PLAYER))
        .containsSubsequence(
            "This is good. Keep it", "Your hips make a full turn", "What this cannot tell")
        .doesNotContain("Your drill", "Where we want to go", "one thing to work on");
  }

  @Test
  void whereTheMeanHasNowhereToGoNoGoalIsDrawn() {
    // Given: hips that turn 45 deg in place but differently each time, and such that turn 30 deg.
    // Expect: a goal beside the second alone.
    assertThat(hips(-45, "uneven-turn")).contains("hinge-now").doesNotContain("hinge-goal");
    assertThat(hips(-30, "little-turn")).contains("hinge-now", "hinge-goal");
  }

  private static String hips(double turnDeg, String found) {
    Rule rule =
        TEACHING.findings().stream().filter(r -> r.name().equals(found)).findFirst().orElseThrow();
    DrawnLesson lesson =
        new DrawnLesson(Handedness.RIGHT)
            .swings(
                3,
                List.of(
                    DrawnLesson.value(Measure.PELVIS_TURN, "top", turnDeg, 1),
                    DrawnLesson.value(Measure.PELVIS_SLIDE, "top", -10, 3)));
    RuleFinding finding =
        new RuleFinding(rule, Certainty.YES, List.of(), List.of(), OptionalInt.empty());
    return page(
        lesson.advised(advice(3, Optional.of(finding), List.of(), List.of())), Audience.TEACHER);
  }

  @Test
  void thePictureIsOfWhatTheFindingIsAbout() {
    // Given: hips, wrists and tempo measured. Expect: bend for a cast, time for an early release,
    // the hips for a turn.
    assertThat(pictured("cast")).contains("bend-now").doesNotContain("hinge-now", "time-now");
    assertThat(pictured("early-release")).contains("time-now").doesNotContain("hinge-", "bend-");
    assertThat(pictured("little-turn")).contains("hinge-now").doesNotContain("time-", "bend-");
  }

  private static String pictured(String found) {
    Rule rule =
        TEACHING.findings().stream().filter(r -> r.name().equals(found)).findFirst().orElseThrow();
    List<Evidence> evidence =
        rule.when().stream()
            .map(
                need ->
                    new Evidence(
                        need,
                        TEACHING.limit(need.limit()),
                        50,
                        49,
                        51,
                        Certainty.YES,
                        OptionalInt.empty()))
            .toList();
    DrawnLesson lesson =
        new DrawnLesson(Handedness.RIGHT)
            .swings(
                3,
                List.of(
                    DrawnLesson.value(Measure.PELVIS_TURN, "top", -30, 1),
                    DrawnLesson.value(Measure.PELVIS_SLIDE, "top", -10, 3),
                    DrawnLesson.value(Measure.WRIST_KEPT, "lead-arm-level-down", 50, 3),
                    DrawnLesson.value(Measure.TEMPO_BACK, "", 0.8, 0.02),
                    DrawnLesson.value(Measure.TEMPO_DOWN, "", 0.3, 0.01)));
    RuleFinding finding =
        new RuleFinding(rule, Certainty.YES, evidence, List.of(), OptionalInt.empty());
    return page(
        lesson.advised(advice(3, Optional.of(finding), List.of(), List.of())), Audience.TEACHER);
  }

  @Test
  void thePartsComeInTheirOrder() {
    Advice advice = advice(3, Optional.of(finding(OptionalInt.empty())), List.of(), List.of());
    assertThat(body(advised(advice), Audience.TEACHER))
        .containsSubsequence(
            "The one thing",
            "First, look at the set-up",
            "The drill",
            "Already good",
            "The pictures",
            "The numbers",
            "What this cannot tell");
    assertThat(body(advised(advice), Audience.PLAYER))
        .containsSubsequence("Your one thing", "Your drill", "What this cannot tell")
        .doesNotContain("First, look at the set-up", "The numbers");
  }
}
