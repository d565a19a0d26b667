package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Element;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.cli.page.paper.Ink;
import steadyturn.ingest.sample.Handedness;

/**
 * Paper: 420 x 262 px, mid-hip at address at (210, 99.56), the ball above, 420 / 440 px a mm. Signs
 * of docs/frames-and-signs.md; seen from above a right-handed player who faces up has the target on
 * the left.
 */
class HingePictureTest {

  private static final double HALF = 86.5;

  /** At impact the front hip of the lesson below lies 150 mm and its half width forward. */
  private static final double REACH_MM = 150 + HALF * Math.cos(Math.toRadians(30));

  /** Of 440 mm of paper 14 at its sides are free: 206 mm hold what reaches farthest. */
  private static final double S = 420.0 / 440 * 206 / REACH_MM;

  private static DrawnLesson lesson(Handedness handed, double turn, double slide, double thrust) {
    List<MeasureValue> values =
        List.of(
            DrawnLesson.value(Measure.PELVIS_TURN, "top", turn, 1),
            DrawnLesson.value(Measure.PELVIS_SLIDE, "top", slide, 5),
            DrawnLesson.value(Measure.PELVIS_THRUST, "top", thrust, 5),
            DrawnLesson.value(Measure.PELVIS_TURN, "impact", 30, 1),
            DrawnLesson.value(Measure.PELVIS_SLIDE, "impact", 150, 5),
            DrawnLesson.value(Measure.PELVIS_THRUST, "impact", 0, 5));
    return new DrawnLesson(handed).swings(3, values);
  }

  private static double x(Handedness handed, double alongMm) {
    return 210 - (handed == Handedness.RIGHT ? 1 : -1) * alongMm * S;
  }

  private static double y(double acrossMm) {
    return 0.38 * 262 - acrossMm * S;
  }

  private static double[] ends(Handedness handed, double turnDeg, double along, double across) {
    double turn = Math.toRadians(turnDeg);
    double a = HALF * Math.cos(turn);
    double b = HALF * Math.sin(turn);
    return new double[] {x(handed, along - a), y(across + b), x(handed, along + a), y(across - b)};
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void theBarsLieWhereTheHipsWereAndThePinWhereTheyTurnedAbout(Handedness handed) {
    // Given: -30 deg, -60 mm, no thrust. Expect: bars at their places, and by hand the pin at
    // (-30, -60 / (2 tan 15 deg)) = (-30, -111.96) mm, behind the hips.
    Picture picture = Picture.of(HingePicture.now(lesson(handed, -30, -60, 0).pen()).orElseThrow());
    Element top = picture.the("line", "stroke-dasharray", "14 4");
    assertThat(Picture.line(top)).containsExactly(ends(handed, -30, -60, 0), within(Picture.PX));
    Element impact = picture.the("line", "stroke", Ink.DOWN);
    assertThat(Picture.line(impact)).containsExactly(ends(handed, 30, 150, 0), within(Picture.PX));
    Element pin = picture.the("circle", "r", "8.1", "fill", Ink.DARK);
    assertThat(Picture.dot(pin))
        .containsExactly(new double[] {x(handed, -30), y(-111.96)}, within(Picture.PX));
    assertThat(picture.words()).contains("turned about, 11.5 cm off");
  }

  @Test
  void aPinThatFliesOffStandsAtItsEdgeInItsDirection() {
    // Given: -12 deg and -60 mm: the pin 287 mm off, as (-30, -285.4). Expect: 150 mm that way.
    Picture picture =
        Picture.of(HingePicture.now(lesson(Handedness.RIGHT, -12, -60, 0).pen()).orElseThrow());
    double part = 150 / Math.hypot(30, 285.43);
    assertThat(Picture.dot(picture.the("circle", "r", "8.1", "fill", Ink.DARK)))
        .containsExactly(
            new double[] {x(Handedness.RIGHT, -30 * part), y(-285.43 * part)}, within(Picture.PX));
  }

  @Test
  void thePinIsAsFarOffAsTheTableSays() {
    // Given: swings whose distances have the mean 141 mm, though their mean movement would put the
    // pin at 116. Expect: 14 cm in the picture, and what is drawn in that of the goal.
    DrawnLesson lesson = new DrawnLesson(Handedness.RIGHT);
    lesson.swings(
        3,
        List.of(
            DrawnLesson.value(Measure.PELVIS_TURN, "top", -30, 1),
            DrawnLesson.value(Measure.PELVIS_SLIDE, "top", -60, 5),
            DrawnLesson.value(Measure.PELVIS_CENTRE_DISTANCE, "top", 141, 20)));
    Picture now = Picture.of(HingePicture.now(lesson.pen()).orElseThrow());
    assertThat(now.words()).contains("turned about, 14 cm off");
    assertThat(now.the("desc").getTextContent()).contains("lies 14 cm from it");
    assertThat(Picture.of(HingePicture.goal(lesson.pen()).orElseThrow()).words())
        .contains("turned about, 1.5 cm off");
  }

  @Test
  void aMoveTowardsTheBallTakesThePinHalfTheWay() {
    // Given: a quarter turn back that brings the middle 20 mm towards the ball. By hand: the pin is
    // as far from both places, at right angles: (-10, 10) mm.
    Hips hips = new Hips(new Hips.Line(-90, 0, 20), java.util.Optional.empty(), List.of());
    assertThat(hips.pinMm().orElseThrow()).containsExactly(new double[] {-10, 10}, within(1e-9));
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void theArrowPointsToTheTargetAndTheScaleIsTenCentimetresOrFourInches(Handedness handed) {
    // Expect: the arrow on the target's side, its head outwards; 100 mm or 101.6 mm of scale.
    int side = handed == Handedness.RIGHT ? 1 : -1;
    DrawnLesson lesson = lesson(handed, -30, -60, 0);
    Picture picture = Picture.of(HingePicture.now(lesson.pen()).orElseThrow());
    List<double[]> lines = dark(picture);
    assertThat(lines.get(0))
        .containsExactly(new double[] {210 - side * 140, 20, 210 - side * 190, 20}, within(0.1));
    double tip = Picture.corners(picture.the("polygon"))[0];
    assertThat(tip).isCloseTo(210 - side * 200, within(Picture.PX));
    assertThat(lines.get(1))
        .containsExactly(new double[] {16, 248, 16 + 100 * S, 248}, within(Picture.PX));
    Picture inches = Picture.of(HingePicture.now(lesson.inches().pen()).orElseThrow());
    assertThat(dark(inches).get(1)[2]).isCloseTo(16 + 101.6 * S, within(Picture.PX));
  }

  private static List<double[]> dark(Picture picture) {
    return picture.all("line", "stroke", Ink.DARK, "stroke-width", "2.0").stream()
        .map(Picture::line)
        .toList();
  }

  @Test
  void thePinHasAnEdgeAsWideAsItsPlaceIsNotKnown() {
    // Given: -40 deg, -60 mm and 10 mm of thrust, three swings alike. Expect: in every direction
    // the edge reaches as far as turn, slide and thrust together may move the pin, each by its half
    // range (by differences, here along and across); it stands about the pin; the goal has none.
    DrawnLesson lesson = new DrawnLesson(Handedness.RIGHT);
    lesson.swings(
        3,
        List.of(
            DrawnLesson.value(Measure.PELVIS_TURN, "top", -40, 6),
            DrawnLesson.value(Measure.PELVIS_SLIDE, "top", -60, 4),
            DrawnLesson.value(Measure.PELVIS_THRUST, "top", 10, 4)));
    Pen pen = lesson.pen();
    Hips hips = Hips.measured(pen).orElseThrow();
    double[] pin = hips.pinMm().orElseThrow();
    double along = 0;
    double across = 0;
    double lean = 0;
    for (Hips.Line moved :
        List.of(
            new Hips.Line(-40 + half(pen, Measure.PELVIS_TURN), -60, 10),
            new Hips.Line(-40, -60 + half(pen, Measure.PELVIS_SLIDE), 10),
            new Hips.Line(-40, -60, 10 + half(pen, Measure.PELVIS_THRUST)))) {
      double[] then = new Hips(moved, java.util.Optional.empty(), List.of()).pinMm().orElseThrow();
      along = Math.hypot(along, then[0] - pin[0]);
      lean += (then[0] - pin[0]) * (then[1] - pin[1]);
      across = Math.hypot(across, then[1] - pin[1]);
    }
    List<double[]> edge = hips.pinEdge(pen);
    assertThat(edge.stream().mapToDouble(p -> p[0] - pin[0]).max().orElseThrow())
        .isCloseTo(along, within(0.01 * along)); // corners of 11 deg cut off half a percent
    assertThat(edge.stream().mapToDouble(p -> p[1] - pin[1]).max().orElseThrow())
        .isCloseTo(across, within(0.01 * across));
    double leans =
        edge.stream() // the last corner is the first one again
            .skip(1)
            .mapToDouble(p -> (p[0] - pin[0]) * (p[1] - pin[1]))
            .average()
            .orElseThrow();
    assertThat(leans).isCloseTo(lean / 2, within(1e-9)); // the mean of a squared cosine
    Picture now = Picture.of(HingePicture.now(pen).orElseThrow());
    assertThat(now.all("path", "stroke", Ink.DARK)).hasSize(1);
    assertThat(Picture.of(HingePicture.goal(pen).orElseThrow()).all("path", "stroke", Ink.DARK))
        .isEmpty();
  }

  private static double half(Pen pen, Measure measure) {
    return pen.mean(measure, "top").orElseThrow().halfWidthOfMean();
  }

  @Test
  void aGoalThatLooksLikeWhatIsThereIsNone() {
    // Given: places 4 mm or 1 deg apart cannot be told from one another, 6 mm or 3 deg can; towards
    // the ball the goal goes back to the teacher's 50 mm.
    Hips here = hips(-45, -10, 80, 20);
    assertThat(here.differFrom(hips(-46, -13, 82, 22))).isFalse();
    assertThat(here.differFrom(hips(-48, -10, 80, 20))).isTrue();
    assertThat(here.differFrom(hips(-45, -16, 80, 20))).isTrue();
    assertThat(here.differFrom(hips(-45, -10, 80, 26))).isTrue();
    var teaching = lesson(Handedness.RIGHT, -40, -40, 0).sheet().teaching();
    assertThat(hips(-45, -10, 80, 70).goal(teaching).impact().orElseThrow())
        .isEqualTo(new Hips.Line(40, 80, 50));
    assertThat(here.goal(teaching).differFrom(here)).isFalse();
  }

  private static Hips hips(double turn, double slide, double forward, double across) {
    return new Hips(
        new Hips.Line(turn, slide, 0),
        java.util.Optional.of(new Hips.Line(40, forward, across)),
        List.of());
  }

  @Test
  void theGoalIsTheTeachersLimitsAsAnOutlineAndWhatIsGoodStays() {
    // Given: a slider at -30 deg and -60 mm; limits -40 deg, -40 to 20 mm, 45 to 120 mm. Expect:
    // 40 deg, the middle in the middle of its band, at impact 120 of 150 mm, the turn there as it
    // is.
    DrawnLesson lesson = lesson(Handedness.RIGHT, -30, -60, 5);
    Hips goal = Hips.measured(lesson.pen()).orElseThrow().goal(lesson.sheet().teaching());
    assertThat(goal.top()).isEqualTo(new Hips.Line(-40, -10, 5));
    assertThat(goal.impact().orElseThrow()).isEqualTo(new Hips.Line(30, 120, 0));
    Hips good = new Hips(new Hips.Line(-50, -5, 0), goal.impact(), List.of());
    assertThat(good.goal(lesson.sheet().teaching())).isEqualTo(good);
    Picture picture = Picture.of(HingePicture.goal(lesson.pen()).orElseThrow());
    assertThat(picture.all("line", "stroke", Ink.PAPER)).hasSize(2);
    assertThat(picture.all("line", "stroke-dasharray", "14 4")).isEmpty();
  }

  @Test
  void aSlideThatIsFarForItsTurnIsNoGoal() {
    // Given: -40 mm at 40 deg, each just good, but a share of turn of 60.2 %; and 41 mm of slide at
    // 62 deg, beyond its band. Expect: the first stays, the second goes to the middle.
    var teaching = lesson(Handedness.RIGHT, -40, -40, 0).sheet().teaching();
    Hips.Line edge = new Hips.Line(-40, -40, 0);
    Hips kept = new Hips(edge, java.util.Optional.empty(), List.of());
    assertThat(kept.goal(teaching).top()).isEqualTo(edge);
    Hips beyond = new Hips(new Hips.Line(-62, -41, 0), java.util.Optional.empty(), List.of());
    assertThat(beyond.goal(teaching).top()).isEqualTo(new Hips.Line(-62, -10, 0));
  }

  @Test
  void theExamplesShowATurnAboutTheMiddleAndASlideWithThePinFarOff() {
    double[] turns = Hips.TURNS.pinMm().orElseThrow();
    double[] slides = Hips.SLIDES.pinMm().orElseThrow();
    assertThat(Math.hypot(turns[0], turns[1])).isLessThan(1);
    assertThat(Math.hypot(slides[0], slides[1])).isGreaterThan(150);
    assertThat(slides[1]).isNegative();
    var pen = lesson(Handedness.LEFT, -30, -60, 0).pen();
    for (boolean example : new boolean[] {true, false}) {
      assertThat(Picture.of(SideBySide.example(pen, example)).all("line")).hasSize(4);
    }
  }

  @ParameterizedTest
  @CsvSource({"-25, -44, 140", "-70, -20, 60", "-24, -100, 160", "-45, 10, 240"})
  void nothingIsCutAtTheEdgeAndTheGoalHasTheSameScale(double turn, double slide, double impact) {
    // Given: pelvises that come far forward, turn far, are little known (a wide ring). Expect: ends
    // of bars and ring on the paper of 420 x 262; the scale of ten centimetres alike in the goal.
    DrawnLesson lesson = new DrawnLesson(Handedness.RIGHT);
    lesson.swings(
        3,
        List.of(
            DrawnLesson.value(Measure.PELVIS_TURN, "top", turn, 6),
            DrawnLesson.value(Measure.PELVIS_SLIDE, "top", slide, 40),
            DrawnLesson.value(Measure.PELVIS_THRUST, "top", 0, 20),
            DrawnLesson.value(Measure.PELVIS_TURN, "impact", 27, 10),
            DrawnLesson.value(Measure.PELVIS_SLIDE, "impact", impact, 40),
            DrawnLesson.value(Measure.PELVIS_THRUST, "impact", 38, 20)));
    Picture now = Picture.of(HingePicture.now(lesson.pen()).orElseThrow());
    for (Element line : now.all("line")) {
      double[] at = Picture.line(line);
      assertThat(List.of(at[0], at[2])).allMatch(x -> x >= 0 && x <= 420);
      assertThat(List.of(at[1], at[3])).allMatch(y -> y >= 0 && y <= 262);
    }
    assertThat(scalePx(now))
        .isEqualTo(scalePx(Picture.of(HingePicture.goal(lesson.pen()).orElseThrow())));
  }

  /** The line from the left edge along the foot of the paper. */
  private static double scalePx(Picture picture) {
    return picture.all("line").stream()
        .map(Picture::line)
        .filter(at -> at[0] == 16 && at[1] == 248 && at[3] == 248)
        .mapToDouble(at -> at[2])
        .findFirst()
        .orElseThrow();
  }

  @Test
  void withoutAPelvisUnitThereIsNoHingeAndTheArmsAreDrawn() {
    DrawnLesson arms =
        new DrawnLesson(Handedness.RIGHT)
            .swings(
                3,
                List.of(
                    DrawnLesson.value(Measure.TEMPO_BACK, "", 0.8, 0.01),
                    DrawnLesson.value(Measure.TEMPO_DOWN, "", 0.25, 0.01),
                    DrawnLesson.value(Measure.WRIST_RELEASE, "", 125, 3),
                    DrawnLesson.value(Measure.WRIST_KEPT, "lead-arm-level-down", 50, 3)));
    assertThat(HingePicture.now(arms.pen())).isEmpty();
    assertThat(SideBySide.of(arms.pen()).toString())
        .contains("time-now")
        .doesNotContain("hinge-now");
    assertThat(SideBySide.of(new DrawnLesson(Handedness.RIGHT).pen()).toString()).isEmpty();
    // 1.25 s over 372 px up to the ball at 396: 0.25 s are 74.4 px, 125 ms 37.2 px
    Picture time = Picture.of(ArmPicture.time(arms.pen(), false).orElseThrow());
    assertThat(Picture.line(time.the("line", "stroke", Ink.DOWN))[0])
        .isCloseTo(396 - 74.4, within(Picture.PX));
    assertThat(Picture.line(time.the("line", "stroke", Ink.BACK))[0])
        .isCloseTo(396 - 74.4 - 238.08, within(Picture.PX));
    assertThat(Picture.line(time.the("line", "stroke", Ink.DARK))[0])
        .isCloseTo(396 - 37.2, within(Picture.PX));
    // the goal: the wrists let go at 100 ms, the way back as it is
    Picture goal = Picture.of(ArmPicture.time(arms.pen(), true).orElseThrow());
    assertThat(Picture.line(goal.the("line", "stroke", Ink.DARK))[0])
        .isCloseTo(396 - 29.76, within(Picture.PX));
    assertThat(Picture.line(goal.the("line", "stroke", Ink.BACK))[0])
        .isCloseTo(396 - 74.4 - 238.08, within(Picture.PX));
    // half of the bend: the club at 45 deg from the hand at (190, 150), away from the shoulder
    Picture bend = Picture.of(ArmPicture.bend(arms.pen(), false).orElseThrow());
    assertThat(Picture.line(bend.the("line", "stroke", Ink.DOWN)))
        .containsExactly(new double[] {190, 150, 190 - 77.78, 150 - 77.78}, within(Picture.PX));
  }

  @Test
  void everyShippedDrillHasAPictureThatIsMirroredForTheLeft() {
    DrawnLesson right = lesson(Handedness.RIGHT, -30, -60, 0);
    for (var drill : right.sheet().teaching().drills()) {
      Picture picture = Picture.of(DrillPart.picture(right.pen(), drill.name()).orElseThrow());
      assertThat(picture.all("g")).as(drill.name()).isNotEmpty();
      int shapes =
          List.of("line", "ellipse", "path", "circle").stream()
              .mapToInt(tag -> picture.all(tag).size())
              .sum();
      assertThat(shapes).as(drill.name()).isGreaterThan(3);
    }
    var left = lesson(Handedness.LEFT, -30, -60, 0).pen();
    assertThat(DrillPart.picture(left, "bag-beside-hip").orElseThrow().toString())
        .contains("scale(-1 1)");
    assertThat(DrillPart.picture(left, "towel-of-my-own")).isEmpty();
  }
}
