package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Element;
import steadyturn.analysis.coach.teaching.Limit;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.cli.page.paper.Ink;
import steadyturn.ingest.sample.Handedness;

/**
 * The chart is 408 px wide from 58 on and 290 px high from 14 on. Slide grows towards the target,
 * which lies on the left of a right-handed player; turn grows upwards.
 */
class TurnAgainstSlideTest {

  private static List<MeasureValue> values(double topMm, double topDeg) {
    return List.of(
        DrawnLesson.value(Measure.PELVIS_TURN, "top", topDeg, 1),
        DrawnLesson.value(Measure.PELVIS_SLIDE, "top", topMm, 5),
        DrawnLesson.value(Measure.PELVIS_TURN, "impact", 20, 1),
        DrawnLesson.value(Measure.PELVIS_SLIDE, "impact", 40, 5));
  }

  /** Straight from address to the top (-30 mm, -40 deg) and on to impact (40 mm, 20 deg). */
  private static DrawnLesson lesson(Handedness handed) {
    return curved(handed, -30, -40, 40, 20);
  }

  private static DrawnLesson curved(
      Handedness handed, double topMm, double topDeg, double impactMm, double impactDeg) {
    DrawnLesson lesson = new DrawnLesson(handed);
    for (int k = 1; k <= 3; k++) {
      lesson.swing(
          values(topMm, topDeg),
          DrawnLesson.curve(k, Measure.PELVIS_SLIDE, 1, 0, 1.75, topMm, 2, impactMm),
          DrawnLesson.curve(k, Measure.PELVIS_TURN, 1, 0, 1.75, topDeg, 2, impactDeg));
    }
    return lesson;
  }

  private static Picture drawn(DrawnLesson lesson) {
    return Picture.of(TurnAgainstSlide.draw(lesson.pen()).orElseThrow());
  }

  /** With nothing beyond them the axes reach 60 mm to either side and from -60 to 30 deg. */
  private static double x(Handedness handed, double slideMm) {
    return 58 + 204 - (handed == Handedness.RIGHT ? 1 : -1) * slideMm * 204 / 60;
  }

  private static double y(double turnDeg) {
    return 14 + (30 - turnDeg) * 290 / 90;
  }

  private static void expectDot(Picture picture, String colour, double x, double y) {
    assertThat(Picture.dot(picture.the("circle", "fill", colour)))
        .containsExactly(new double[] {x, y}, within(Picture.PX));
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void addressTopAndImpactLieWhereTheirNumbersSay(Handedness handed) {
    Picture picture = drawn(lesson(handed));
    expectDot(picture, Ink.QUIET, x(handed, 0), y(0));
    expectDot(picture, Ink.BACK, x(handed, -30), y(-40));
    expectDot(picture, Ink.DOWN, x(handed, 40), y(20));
    assertThat(Picture.place(picture.words("top")))
        .containsExactly(new double[] {x(handed, -30), y(-40) + 25}, within(Picture.PX));
    assertThat(picture.words("top").getAttribute("text-anchor")).isEqualTo("middle");
    boolean right = handed == Handedness.RIGHT;
    Element impact = picture.words("impact");
    assertThat(Picture.place(impact))
        .containsExactly(
            new double[] {x(handed, 40) + (right ? 12 : -12), y(20) - 6}, within(Picture.PX));
    assertThat(impact.getAttribute("text-anchor")).isEqualTo(right ? "start" : "end");
    assertThat(Picture.place(picture.words("address")))
        .containsExactly(new double[] {x(handed, 0) + 12, y(0) - 6}, within(Picture.PX));
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void everySwingIsAThinLineAndTheirMeanAThickOneBackAndDown(Handedness handed) {
    Picture picture = drawn(lesson(handed));
    List<Element> paths = picture.all("path");
    assertThat(paths).hasSize(5);
    for (Element thin : paths.subList(0, 3)) {
      assertThat(thin.getAttribute("stroke")).isEqualTo(Ink.QUIET);
      assertThat(Picture.corners(thin))
          .containsExactly(
              new double[] {x(handed, 0), y(0), x(handed, -30), y(-40), x(handed, 40), y(20)},
              within(Picture.PX));
    }
    double[] back = Picture.corners(picture.the("path", "stroke", Ink.BACK));
    assertThat(back).hasSize(2 * 76);
    assertThat(new double[] {back[0], back[1], back[150], back[151]})
        .containsExactly(
            new double[] {x(handed, 0), y(0), x(handed, -30), y(-40)}, within(Picture.PX));
    double[] down = Picture.corners(picture.the("path", "stroke", Ink.DOWN));
    assertThat(down).hasSize(2 * 26);
    assertThat(new double[] {down[0], down[1], down[50], down[51]})
        .containsExactly(
            new double[] {x(handed, -30), y(-40), x(handed, 40), y(20)}, within(Picture.PX));
  }

  @ParameterizedTest(name = "{0} mm, {1} deg at the top; {2} mm, {3} deg at impact")
  @CsvSource({
    // slide reaches 15 mm beyond the farthest, turn 5 deg; never less than 60 mm, -60 and 30 deg
    "-30, -40,  40, 20,  60, -60, 30",
    "-45, -55,  45, 25,  60, -60, 30",
    "-65, -40,  40, 20,  80, -60, 30",
    "-30, -40, 105, 20, 120, -60, 30",
    "-30, -75,  40, 20,  60, -80, 30",
    "-30, -40,  40, 45,  60, -60, 50"
  })
  void theAxesReachAsFarAsTheSwings(
      double topMm,
      double topDeg,
      double impactMm,
      double impactDeg,
      double reachMm,
      double lowDeg,
      double highDeg) {
    Picture picture = drawn(curved(Handedness.RIGHT, topMm, topDeg, impactMm, impactDeg));
    double[] thin = Picture.corners(picture.all("path").get(0));
    double spanDeg = highDeg - lowDeg;
    assertThat(thin)
        .containsExactly(
            new double[] {
              262,
              14 + highDeg * 290 / spanDeg,
              262 - topMm * 204 / reachMm,
              14 + (highDeg - topDeg) * 290 / spanDeg,
              262 - impactMm * 204 / reachMm,
              14 + (highDeg - impactDeg) * 290 / spanDeg
            },
            within(Picture.PX));
  }

  @ParameterizedTest
  @CsvSource({"RIGHT, left", "LEFT, right"})
  void theAxisSaysOnWhichSideTheTargetLies(Handedness handed, String side) {
    Picture picture = drawn(lesson(handed));
    assertThat(picture.words())
        .contains("slide, mm (" + side + ": towards the target)")
        .contains("turn, deg (up: towards the target)");
    // 40 mm of slide, which is no number of the other axis, stands on the target's side.
    assertThat(Picture.place(picture.words("40"), 0)).isCloseTo(x(handed, 40), within(Picture.PX));
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void theAimIsTheFieldOfTheTeachersLimits(Handedness handed) {
    // Given: the shipped limits: slide -40 to 20 mm, turn -40 to -62 deg, which is below the axis'
    // end at -60. Expect: a field between them, cut off at the bottom of the chart; its name beside
    // it, 6 px from the end away from the target, where neither the downswing nor "top" is.
    Picture picture = drawn(lesson(handed));
    double left = Math.min(x(handed, -40), x(handed, 20));
    assertThat(Picture.box(picture.the("rect")))
        .containsExactly(
            new double[] {left, y(-40), 60 * 204.0 / 60, y(-60) - y(-40)}, within(Picture.PX));
    assertThat(Picture.place(picture.words("aim for the top")))
        .containsExactly(
            new double[] {x(handed, -40) + (handed == Handedness.RIGHT ? 6 : -6), y(-60) - 6},
            within(Picture.PX));
  }

  @Test
  void anAimInsideTheChartEndsWhereItsLimitIs() {
    Picture picture = drawn(lesson(Handedness.RIGHT).taught(with("turn-too-far", -50)));
    assertThat(Picture.box(picture.the("rect")))
        .containsExactly(
            new double[] {x(Handedness.RIGHT, 20), y(-40), 204, y(-50) - y(-40)},
            within(Picture.PX));
  }

  private static Teaching with(String name, double value) {
    return limited(limits -> limits.put(name, new Limit(name, value, "deg", "a test")));
  }

  private static Teaching limited(Consumer<Map<String, Limit>> change) {
    Teaching shipped = TeachingReader.shipped();
    Map<String, Limit> limits = new HashMap<>(shipped.limits());
    change.accept(limits);
    return new Teaching(limits, List.of(), List.of(), List.of(), List.of(), List.of(), List.of());
  }

  @ParameterizedTest
  @CsvSource({"turn-full", "turn-too-far", "slide-small", "slide-to-target"})
  void withoutOneOfItsLimitsThereIsNoAim(String missing) {
    Picture picture =
        drawn(lesson(Handedness.RIGHT).taught(limited(limits -> limits.remove(missing))));
    assertThat(picture.all("rect")).isEmpty();
  }

  @Test
  void forThePlayerItSpeaksPlainlyAndInCentimetres() {
    Picture picture = drawn(lesson(Handedness.RIGHT).forPlayer());
    assertThat(picture.words())
        .contains(
            "sideways, cm (left: towards the target)",
            "turn, degrees (up: towards the target)",
            "your goal",
            "start",
            "end of backswing",
            "at the ball");
    // Given: 60 mm to either side. Expect: 2 cm at 20 mm.
    assertThat(Picture.place(picture.words("2"), 0))
        .isCloseTo(x(Handedness.RIGHT, 20), within(Picture.PX));
    assertThat(picture.the("desc").getTextContent())
        .isEqualTo(
            "Turning against moving sideways: turned back about 40 degrees at the end of the"
                + " backswing, turned through about 20 degrees at the ball.");
    assertThat(drawn(lesson(Handedness.LEFT).forPlayer()).words())
        .contains("sideways, cm (right: towards the target)");
  }

  @Test
  void aWordNeverLeavesThePaper() {
    // Given: the top 110 of 125 mm away, 28 px from the right edge. Expect: its word 70 px inside.
    Picture picture = drawn(curved(Handedness.RIGHT, -110, -40, 40, 20));
    assertThat(Picture.place(picture.words("top"), 0)).isCloseTo(466 - 70, within(Picture.PX));
    Picture left = drawn(curved(Handedness.LEFT, -110, -40, 40, 20));
    assertThat(Picture.place(left.words("top"), 0)).isCloseTo(58 + 70, within(Picture.PX));
  }

  @Test
  void aLostStretchBreaksTheLineAndNothingElse() {
    // Given: one sample of turn, at 1.2 s, is lost. Expect: the thin line in two parts, the rest as
    // ever.
    DrawnLesson lesson =
        new DrawnLesson(Handedness.RIGHT)
            .swing(
                values(-30, -40),
                DrawnLesson.curve(1, Measure.PELVIS_SLIDE, 1, 0, 1.1, 0, 1.2, 0, 1.75, -30, 2, 40),
                DrawnLesson.curve(
                    1, Measure.PELVIS_TURN, 1, 0, 1.1, 0, 1.2, Double.NaN, 1.75, -40, 2, 20));
    Picture picture = drawn(lesson);
    Element thin = picture.the("path", "stroke", Ink.QUIET);
    assertThat(thin.getAttribute("d").chars().filter(c -> c == 'M')).hasSize(2);
    expectDot(picture, Ink.BACK, x(Handedness.RIGHT, -30), y(-40));
    assertThat(TurnAgainstSlide.draw(lesson.pen()).orElseThrow().toString()).doesNotContain("NaN");
  }

  @Test
  void withoutCurvesThereIsNoPicture() {
    assertThat(TurnAgainstSlide.draw(new DrawnLesson(Handedness.RIGHT).pen())).isEmpty();
    assertThat(
            TurnAgainstSlide.draw(
                new DrawnLesson(Handedness.RIGHT).swings(3, values(-30, -40)).pen()))
        .isEmpty();
    for (Measure only : List.of(Measure.PELVIS_SLIDE, Measure.PELVIS_TURN)) {
      DrawnLesson lesson =
          new DrawnLesson(Handedness.RIGHT)
              .swing(values(-30, -40), DrawnLesson.curve(1, only, 1, 0, 1.75, 1, 2, 2));
      assertThat(TurnAgainstSlide.draw(lesson.pen())).isEmpty();
    }
  }

  @Test
  void aKeyPositionWithoutBothNumbersHasNoDot() {
    for (Measure only : List.of(Measure.PELVIS_SLIDE, Measure.PELVIS_TURN)) {
      DrawnLesson lesson =
          new DrawnLesson(Handedness.RIGHT)
              .swing(
                  List.of(DrawnLesson.value(only, "top", -30, 1)),
                  DrawnLesson.curve(1, Measure.PELVIS_SLIDE, 1, 0, 1.75, -30, 2, 40),
                  DrawnLesson.curve(1, Measure.PELVIS_TURN, 1, 0, 1.75, -40, 2, 20));
      assertThat(drawn(lesson).all("circle")).hasSize(1);
    }
  }
}
