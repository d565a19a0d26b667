package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
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

  private static final double S = 420.0 / 440;
  private static final double HALF = 86.5;

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
      assertThat(Picture.of(HingePicture.example(pen, example)).all("line")).hasSize(4);
    }
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
