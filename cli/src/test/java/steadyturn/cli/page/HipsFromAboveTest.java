package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Element;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.ingest.sample.Handedness;

/**
 * Paper: 480 x 350 px, mid-hip at address at (240, 190), the ball above. Signs of
 * docs/frames-and-signs.md: slide towards the target, thrust towards the ball, turn positive when
 * the lead hip goes back from the ball. Seen from above a right-handed player who faces up has the
 * target on the left, so x of the paper is 240 - h s along and y is 190 - s across, s px a mm.
 */
class HipsFromAboveTest {

  /** The widest thing in most of these lessons: 206 px for the 170 mm that the feet need. */
  private static final double PX_PER_MM = 206.0 / 170;

  /** Half the distance of the hip centres where the pelvis was not measured, mm. */
  private static final double HALF = 86.5;

  private static List<MeasureValue> values() {
    return List.of(
        DrawnLesson.value(Measure.PELVIS_TURN, "top", -30, 1),
        DrawnLesson.value(Measure.PELVIS_SLIDE, "top", -20, 5),
        DrawnLesson.value(Measure.PELVIS_THRUST, "top", 10, 5),
        DrawnLesson.value(Measure.PELVIS_TURN, "impact", 60, 1),
        DrawnLesson.value(Measure.PELVIS_SLIDE, "impact", 70, 5),
        DrawnLesson.value(Measure.PELVIS_THRUST, "impact", -12, 5),
        DrawnLesson.value(Measure.PELVIS_CENTRE_ALONG, "top", -25, 8),
        DrawnLesson.value(Measure.PELVIS_CENTRE_ACROSS, "top", -60, 8));
  }

  private static DrawnLesson lesson(Handedness handed) {
    return new DrawnLesson(handed).swings(3, values());
  }

  private static Picture drawn(DrawnLesson lesson) {
    return Picture.of(HipsFromAbove.draw(lesson.pen()).orElseThrow());
  }

  private static double x(Handedness handed, double alongMm) {
    return 240 - (handed == Handedness.RIGHT ? 1 : -1) * alongMm * PX_PER_MM;
  }

  private static double y(double acrossMm) {
    return 190 - acrossMm * PX_PER_MM;
  }

  private static void expectLine(Element line, double... ends) {
    assertThat(Picture.line(line)).containsExactly(ends, within(Picture.PX));
  }

  private static void expectDot(Picture picture, String colour, String radius, double x, double y) {
    assertThat(Picture.dot(picture.the("circle", "fill", colour, "r", radius)))
        .containsExactly(new double[] {x, y}, within(Picture.PX));
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void atAddressTheHipLineLiesAlongTheTargetLine(Handedness handed) {
    Picture picture = drawn(lesson(handed));
    expectLine(
        picture.the("line", "stroke", Ink.QUIET), x(handed, -HALF), 190, x(handed, HALF), 190);
    expectDot(picture, Ink.QUIET, "7.0", x(handed, HALF), 190);
    expectDot(picture, Ink.QUIET, "4.0", 240, 190);
    assertThat(Picture.place(picture.words("address")))
        .containsExactly(new double[] {240, 212}, within(Picture.PX));
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void atTheTopTheLeadHipHasComeTowardsTheBall(Handedness handed) {
    // Given: turn -30 deg, slide -20 mm, thrust +10 mm. Expect: lead hip at -20 + 86.5 cos 30 =
    // 54.911 mm along and 10 + 86.5 sin 30 = 53.25 mm across; trail hip at -94.911, -33.25.
    Picture picture = drawn(lesson(handed));
    Element line = picture.the("line", "stroke-dasharray", Ink.DASH_BACK);
    assertThat(line.getAttribute("stroke")).isEqualTo(Ink.BACK);
    expectLine(line, x(handed, -94.911), y(-33.25), x(handed, 54.911), y(53.25));
    expectDot(picture, Ink.BACK, "7.0", x(handed, 54.911), y(53.25));
    expectDot(picture, Ink.BACK, "4.0", x(handed, -20), y(10));
    Element word = picture.words("top");
    assertThat(Picture.place(word))
        .containsExactly(new double[] {x(handed, 54.911), y(53.25) - 14}, within(Picture.PX));
    assertThat(word.getAttribute("text-anchor"))
        .isEqualTo(handed == Handedness.RIGHT ? "start" : "end");
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void atImpactTheLeadHipHasGoneBackFromTheBall(Handedness handed) {
    // Given: turn +60 deg, slide +70, thrust -12 mm. Expect: lead hip at 70 + 43.25 along,
    // -12 - 74.911 across; trail hip at 26.75, 62.911.
    Picture picture = drawn(lesson(handed));
    Element line = picture.the("line", "stroke", Ink.DOWN);
    expectLine(line, x(handed, 26.75), y(62.911), x(handed, 113.25), y(-86.911));
    assertThat(line.getAttribute("stroke-width")).isEqualTo("6.0");
    expectDot(picture, Ink.DOWN, "7.0", x(handed, 113.25), y(-86.911));
    expectDot(picture, Ink.DOWN, "4.0", x(handed, 70), y(-12));
    Element word = picture.words("impact");
    assertThat(Picture.place(word))
        .containsExactly(new double[] {x(handed, 113.25), y(-86.911) + 24}, within(Picture.PX));
    assertThat(word.getAttribute("text-anchor")).isEqualTo("middle");
  }

  @ParameterizedTest
  @CsvSource({"RIGHT, 90, 35, 25, 39", "LEFT, 390, 445, 455, 441"})
  void theArrowPointsAtTheTarget(
      Handedness handed, double from, double to, double tip, double barb) {
    Picture picture = drawn(lesson(handed));
    expectLine(picture.all("line", "stroke", Ink.DARK).get(0), from, 36, to, 36);
    assertThat(Picture.corners(picture.the("polygon")))
        .containsExactly(new double[] {tip, 36, barb, 30, barb, 42}, within(Picture.PX));
    assertThat(Picture.place(picture.words("target")))
        .containsExactly(new double[] {(from + to) / 2, 26}, within(Picture.PX));
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void ballAndFeetLieInFrontAndBothSidesAlike(Handedness handed) {
    // Given: feet drawn 165 mm to either side, 40 mm in front of the hips, 64 by 172 mm.
    Picture picture = drawn(lesson(handed));
    List<Element> feet = picture.all("ellipse", "fill", "#f3f0e8");
    assertThat(feet).hasSize(2);
    for (int i = 0; i < 2; i++) {
      assertThat(Picture.numbers(feet.get(i), "cx", "cy", "rx", "ry"))
          .containsExactly(
              new double[] {x(handed, i == 0 ? -165 : 165), y(40), 32 * PX_PER_MM, 86 * PX_PER_MM},
              within(Picture.PX));
    }
    assertThat(Picture.numbers(picture.the("ellipse", "fill", "#ffffff"), "cx", "cy", "rx", "ry"))
        .containsExactly(240, 22, 6, 6);
    assertThat(Picture.place(picture.words("ball"))).containsExactly(254, 27);
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void thePointTurnedAboutIsACrossInTheRingOfItsRange(Handedness handed) {
    // Given: 25 mm behind along the target line and 60 mm behind the hips. Expect: there, with the
    // 95 % half-width of the mean as half axes, in the drawing's scale.
    DrawnLesson lesson = lesson(handed);
    Picture picture = drawn(lesson);
    double cx = x(handed, -25);
    double cy = y(-60);
    Element ring = picture.the("ellipse", "stroke", Ink.POINT);
    assertThat(Picture.numbers(ring, "cx", "cy", "rx", "ry"))
        .containsExactly(
            new double[] {
              cx,
              cy,
              PX_PER_MM * half(lesson, Measure.PELVIS_CENTRE_ALONG),
              PX_PER_MM * half(lesson, Measure.PELVIS_CENTRE_ACROSS)
            },
            within(Picture.PX));
    List<Element> cross = picture.all("line", "stroke", Ink.POINT);
    expectLine(cross.get(0), cx - 6, cy - 6, cx + 6, cy + 6);
    expectLine(cross.get(1), cx - 6, cy + 6, cx + 6, cy - 6);
    assertThat(Picture.place(picture.words("turned about")))
        .containsExactly(new double[] {cx + 12, cy + 16}, within(Picture.PX));
  }

  private static double half(DrawnLesson lesson, Measure measure) {
    return lesson.pen().mean(measure, "top").map(GroupSummary::halfWidthOfMean).orElseThrow();
  }

  @Test
  void underThreeSwingsOrForThePlayerNoPointIsShown() {
    Picture two = drawn(new DrawnLesson(Handedness.RIGHT).swings(2, values()));
    assertThat(two.all("ellipse", "stroke", Ink.POINT)).isEmpty();
    for (Measure missing : List.of(Measure.PELVIS_CENTRE_ALONG, Measure.PELVIS_CENTRE_ACROSS)) {
      List<MeasureValue> rest = values().stream().filter(v -> v.measure() != missing).toList();
      DrawnLesson lesson = new DrawnLesson(Handedness.RIGHT).swings(2, values()).swing(rest);
      assertThat(drawn(lesson).all("ellipse", "stroke", Ink.POINT)).isEmpty();
    }
    Picture forPlayer = drawn(lesson(Handedness.RIGHT).forPlayer());
    assertThat(forPlayer.all("ellipse", "stroke", Ink.POINT)).isEmpty();
    assertThat(forPlayer.words()).contains("start", "end of backswing", "at the ball");
  }

  @Test
  void withOnlyOneOfItsTwoNumbersNoPointIsShown() {
    for (Measure missing : List.of(Measure.PELVIS_CENTRE_ALONG, Measure.PELVIS_CENTRE_ACROSS)) {
      List<MeasureValue> rest = values().stream().filter(v -> v.measure() != missing).toList();
      Picture picture = drawn(new DrawnLesson(Handedness.RIGHT).swings(3, rest));
      assertThat(picture.all("ellipse", "stroke", Ink.POINT)).isEmpty();
    }
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void thePathRunsFromAddressOverTheTopToImpact(Handedness handed) {
    // Given: mid-hip goes straight to (-20, 10) mm at the top, then straight to (70, -12).
    DrawnLesson lesson = new DrawnLesson(handed);
    for (int k = 1; k <= 3; k++) {
      lesson.swing(
          values(),
          DrawnLesson.curve(k, Measure.PELVIS_SLIDE, 1, 0, 1.75, -20, 2, 70),
          DrawnLesson.curve(k, Measure.PELVIS_THRUST, 1, 0, 1.75, 10, 2, -12));
    }
    List<Element> paths = drawn(lesson).all("path");
    assertThat(paths).hasSize(2);
    double[] back = Picture.corners(paths.get(0));
    assertThat(paths.get(0).getAttribute("stroke")).isEqualTo(Ink.BACK);
    assertThat(back).hasSize(2 * 76); // places 0, 1, ... 75
    expectEnds(back, x(handed, 0), y(0), x(handed, -20), y(10));
    double[] down = Picture.corners(paths.get(1));
    assertThat(paths.get(1).getAttribute("stroke")).isEqualTo(Ink.DOWN);
    assertThat(down).hasSize(2 * 26);
    expectEnds(down, x(handed, -20), y(10), x(handed, 70), y(-12));
  }

  private static void expectEnds(double[] corners, double... ends) {
    int n = corners.length;
    assertThat(new double[] {corners[0], corners[1], corners[n - 2], corners[n - 1]})
        .containsExactly(ends, within(Picture.PX));
  }

  @Test
  void theDescriptionSaysWhatThePictureShows() {
    Picture picture = drawn(lesson(Handedness.RIGHT));
    assertThat(picture.the("title").getTextContent()).isEqualTo("The hips from above");
    assertThat(picture.the("desc").getTextContent())
        .matches(
            "Seen from above: from address to the top the middle of the hips moves −20 mm \\(.*"
                + " and they turn −30.0 deg \\(.*; at impact it has moved 70 mm \\(.* and they"
                + " have turned 60.0 deg \\(.*");
    assertThat(drawn(lesson(Handedness.RIGHT).forPlayer()).the("desc").getTextContent())
        .isEqualTo(
            "Seen from above: from the start to the end of the backswing the middle of your hips"
                + " moves about 2 cm away from the target and they turn back about 30 degrees. At"
                + " the ball it has moved about 7 cm towards the target and they have turned"
                + " through about 60 degrees.");
  }
}
