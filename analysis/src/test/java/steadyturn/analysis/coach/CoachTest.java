package steadyturn.analysis.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import steadyturn.analysis.coach.RuleFinding.Seen;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.reason.Reason;

class CoachTest {

  private static final int LESSONS = 200;
  private static final Coach COACH = new Coach(TeachingReader.shipped());

  static Stream<Arguments> kinds() {
    return Stream.of(
        Arguments.of("slider with little turn", "slide-for-turn", KnownPlayer.slider()),
        Arguments.of("good turner", "", KnownPlayer.goodTurner()),
        Arguments.of("early release", "early-release", KnownPlayer.earlyRelease()),
        Arguments.of("late and steady", "", KnownPlayer.lateAndSteady()),
        Arguments.of("fast tempo", "quick-back", KnownPlayer.fastTempo()),
        Arguments.of("mixed", "slide-for-turn", KnownPlayer.mixed()));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("kinds")
  void theRightPriorityIsChosenInNineteenLessonsOfTwenty(
      String kind, String cause, KnownPlayer player) {
    // Given: 200 lessons of ten swings, each of another player of this kind. Expect: the cause as
    // priority, none for the good ones, in at least 95 %.
    int right = count(player, 10, cause);
    System.err.println(kind + ": right in " + right + " of " + LESSONS);
    assertThat(right).isGreaterThanOrEqualTo(LESSONS * 95 / 100);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("kinds")
  void threeSwingsNeverGiveAWrongFinding(String kind, String cause, KnownPlayer player) {
    // Given: 200 lessons of three swings. Expect: the cause or no priority in at least 95 %.
    int right = count(player, 3, cause);
    int none = cause.isEmpty() ? 0 : count(player, 3, "");
    System.err.println(kind + ": right in " + right + ", none in " + none + " of " + LESSONS);
    assertThat(right + none).isGreaterThanOrEqualTo(LESSONS * 95 / 100);
  }

  @Test
  void threeSwingsOfASliderAreMostlyNotSureYetAndSayHowManyMore() {
    // Given: 200 lessons of three swings of a slider. Expect: where there is no priority, it is
    // open and asks for more swings, in at least 9 of 10.
    Random random = random(72);
    int none = 0;
    int asked = 0;
    for (int i = 0; i < LESSONS; i++) {
      Advice advice = advise(KnownPlayer.slider().lesson(random, 3));
      if (advice.priority().isEmpty()) {
        none++;
        asked += advice.open().stream().anyMatch(f -> f.moreSwings().isPresent()) ? 1 : 0;
      }
    }
    System.err.println("not sure yet: " + none + ", asking for more: " + asked);
    assertThat(asked).isGreaterThanOrEqualTo(none * 9 / 10);
  }

  @Test
  void theChainOfASliderIsCheckedLinkByLink() {
    // Given: a slider far beyond every limit, without measuring error to speak of.
    Advice advice = advise(KnownPlayer.slider().lesson(random(73), 20));
    var links = advice.priority().orElseThrow().chain();
    assertThat(links.stream().map(l -> l.consequence().name()))
        .containsExactly(
            "centre-off",
            "pelvis-behind",
            "low-point-behind",
            "path-from-outside",
            "bent-lead-arm");
    assertThat(links.stream().map(RuleFinding.Link::kind))
        .containsExactly(Seen.SEEN, Seen.SEEN, Seen.TENDENCY, Seen.LOOK, Seen.LOOK);
  }

  @Test
  void whatThePriorityExplainsIsNotToldAgain() {
    Advice advice = advise(KnownPlayer.mixed().lesson(random(74), 15));
    assertThat(names(advice.further())).containsExactly("early-release", "quick-back");
    assertThat(names(advice.open())).doesNotContain("stays-back", "slides-away", "little-turn");
  }

  @Test
  void anEarlyReleaseDoesNotWaitForACastThatAsksForTheSameDrills() {
    // Given: ten swings that let go 145 +- 3 ms before impact (limit 110) and keep 68 +- 11 %
    // (limit
    // 75), so that the cast is open for want of a few swings. Expect: the early release is told, as
    // both have the same drills; the cast stays open.
    Advice advice = advise(releases(3, 11));
    assertThat(advice.priority().orElseThrow().rule().name()).isEqualTo("early-release");
    assertThat(names(advice.open())).containsExactly("cast");
    assertThat(advice.open().get(0).moreSwings().orElseThrow()).isLessThanOrEqualTo(12);
  }

  @Test
  void ofTwoThatWaitTheOneThatCoversTheOtherIsToldAlone() {
    // Given: a slide that is open for want of a few swings, with a sure cast and a sure early
    // release behind it. Expect: no priority; the cast alone among the further points.
    List<SwingResult> swings = new ArrayList<>();
    for (SwingResult swing : releases(3, 2)) {
      int away = swing.number() % 2 == 0 ? 40 : -40;
      swings.add(
          with(
              swing,
              value(Measure.PELVIS_TURN_SHARE, "top", 50 + away / 2.0, 2),
              value(Measure.PELVIS_SLIDE, "top", -60 + away, 4)));
    }
    Advice advice = advise(swings);
    assertThat(names(advice.open())).containsExactly("slide-for-turn");
    assertThat(advice.priority()).isEmpty();
    assertThat(names(advice.further())).containsExactly("cast");
  }

  /** Ten swings about a release of 145 ms and 68 % kept, alternately above and below. */
  private static List<SwingResult> releases(double awayMs, double awayPct) {
    List<SwingResult> out = new ArrayList<>();
    for (int i = 1; i <= 10; i++) {
      int side = i % 4 < 2 ? 1 : -1;
      SwingResult empty =
          new SwingResult(i, "7-iron", SwingKind.HIT, List.of(), List.of(), List.of(), List.of());
      out.add(
          with(
              empty,
              value(Measure.WRIST_RELEASE, "", 145 + side * awayMs, 1),
              value(Measure.WRIST_KEPT, "lead-arm-level-down", 68 + side * awayPct, 1)));
    }
    return out;
  }

  private static SwingResult with(SwingResult swing, MeasureValue... more) {
    List<MeasureValue> values = new ArrayList<>(swing.measures());
    values.addAll(List.of(more));
    return new SwingResult(
        swing.number(),
        swing.club(),
        swing.kind(),
        swing.flags(),
        swing.events(),
        values,
        swing.curves());
  }

  private static MeasureValue value(Measure measure, String at, double value, double sd) {
    return MeasureValue.of(measure, at, value, sd, Grade.MEASURED, Reason.NONE);
  }

  @Test
  void whatIsGoodIsToldToo() {
    Advice advice = advise(KnownPlayer.lateAndSteady().lesson(random(75), 15));
    assertThat(names(advice.good()))
        .contains("full-turn", "keeps-angle", "calm-tempo", "same-each-time");
  }

  @Test
  void setUpIsAskedFirstBecauseTheUnitsCannotSeeIt() {
    assertThat(advise(KnownPlayer.slider().lesson(random(76), 5)).asks())
        .startsWith("set-up-centre");
  }

  @Test
  void aLimitOfTheTeachersOwnDecidesForThatPlayerAndClubOnly() {
    // Given: a good turner, and a teacher who wants 55 deg from mika with the 7-iron.
    String own =
        """
        [[own-limit]]
        player = "mika"
        club = "7-iron"
        limit = "turn-little"
        value = -55
        """;
    Coach coach = new Coach(TeachingReader.shipped().with(TeachingReader.parse("own", own)));
    List<SwingResult> swings = KnownPlayer.goodTurner().lesson(random(77), 10);
    assertThat(coach.advise("mika", "7-iron", swings).priority().orElseThrow().rule().name())
        .isEqualTo("little-turn");
    assertThat(coach.advise("mika", "driver", swings).priority()).isEmpty();
    assertThat(coach.advise("someone", "7-iron", swings).priority()).isEmpty();
  }

  @Test
  void withoutAUnitNothingIsFoundAndNothingIsOpen() {
    // Given: swings that carry only the tempo. Expect: no finding about the pelvis.
    var swings =
        KnownPlayer.slider().lesson(random(78), 10).stream()
            .map(
                s ->
                    new SwingResult(
                        s.number(),
                        s.club(),
                        s.kind(),
                        List.of(),
                        List.of(),
                        s.measures().stream()
                            .filter(m -> m.measure() == Measure.TEMPO_BACK)
                            .toList(),
                        List.of()))
            .toList();
    Advice advice = advise(swings);
    assertThat(advice.priority()).isEmpty();
    assertThat(advice.open()).isEmpty();
    assertThat(advise(List.of()).swings()).isZero();
  }

  private static int count(KnownPlayer player, int swings, String cause) {
    Random random = random(71);
    Supplier<Advice> next = () -> advise(player.lesson(random, swings));
    return (int)
        Stream.generate(next)
            .limit(LESSONS)
            .filter(a -> a.priority().map(f -> f.rule().name()).orElse("").equals(cause))
            .count();
  }

  private static Advice advise(List<SwingResult> swings) {
    return COACH.advise("mika", "7-iron", swings);
  }

  private static List<String> names(List<RuleFinding> findings) {
    return findings.stream().map(f -> f.rule().name()).toList();
  }

  private static Random random(long seed) {
    System.err.println("seed " + seed);
    return new Random(seed);
  }
}
