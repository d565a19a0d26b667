package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.page.paper.Ink;
import steadyturn.ingest.sample.Handedness;

/**
 * Paper: 420 x 176 px. The hand at (210 -+ 20, 150), the arm 150 px to the target's side, the club
 * 110 px. Time: 297.6 px a second, the ball at 396.
 */
class ArmPictureTest {

  private static final double PX_PER_S = (420 - 24 - 24) / 1.25;

  private static DrawnLesson lesson(Handedness handed, double kept, double backS, double letGoMs) {
    return new DrawnLesson(handed)
        .swings(
            3,
            List.of(
                DrawnLesson.value(Measure.WRIST_KEPT, "lead-arm-level-down", kept, 2),
                DrawnLesson.value(Measure.TEMPO_BACK, "", backS, 0.02),
                DrawnLesson.value(Measure.TEMPO_DOWN, "", 0.3, 0.01),
                DrawnLesson.value(Measure.WRIST_RELEASE, "", letGoMs, 8)));
  }

  private static Picture bend(Handedness handed, double kept, boolean goal) {
    Html html = ArmPicture.bend(lesson(handed, kept, 0.8, 120).pen(), goal).orElseThrow();
    return Picture.of(html);
  }

  private static Picture time(double backS, double letGoMs, boolean goal) {
    Pen pen = lesson(Handedness.RIGHT, 80, backS, letGoMs).pen();
    return Picture.of(ArmPicture.time(pen, goal).orElseThrow());
  }

  @ParameterizedTest
  @CsvSource({"RIGHT, 1", "LEFT, -1"})
  void theClubStandsAsHighAsTheBendThatIsLeft(Handedness handed, int side) {
    // Given: half of the bend left. Expect: the club at 45 deg over the arm's line, away from the
    // target; the arm level from the hand towards the target.
    Picture picture = bend(handed, 50, false);
    double hand = 210 - side * 20;
    double part = 110 * Math.sqrt(0.5);
    assertThat(Picture.line(picture.the("line", "stroke", Ink.QUIET)))
        .containsExactly(new double[] {hand + side * 150, 150, hand, 150}, within(Picture.PX));
    assertThat(Picture.line(picture.the("line", "stroke", Ink.DOWN)))
        .containsExactly(
            new double[] {hand, 150, hand - side * part, 150 - part}, within(Picture.PX));
    assertThat(picture.words()).contains("50 % of the bend left");
  }

  @Test
  void theGoalOfTheBendIsTheTeachersLimitUnlessItIsReached() {
    // Given: limit 85 %. Expect: at 50 % the goal at 76.5 deg, hollow; at 90 % as it is.
    Picture goal = bend(Handedness.RIGHT, 50, true);
    double angle = Math.toRadians(76.5);
    double[] to = {190 - 110 * Math.cos(angle), 150 - 110 * Math.sin(angle)};
    assertThat(Picture.line(goal.the("line", "stroke", Ink.DOWN)))
        .containsExactly(new double[] {190, 150, to[0], to[1]}, within(Picture.PX));
    assertThat(goal.all("line", "stroke", Ink.PAPER)).hasSize(1);
    assertThat(bend(Handedness.RIGHT, 50, false).all("line", "stroke", Ink.PAPER)).isEmpty();
    assertThat(bend(Handedness.RIGHT, 90, true).words()).contains("90 % of the bend left");
  }

  @Test
  void timeRunsToTheBallAndTheWristsLetGoBeforeIt() {
    // Given: 0.8 s back, 0.3 s down, wrists 120 ms before the ball.
    Picture picture = time(0.8, 120, false);
    double top = 396 - 0.3 * PX_PER_S;
    assertThat(Picture.line(picture.the("line", "stroke", Ink.BACK)))
        .containsExactly(new double[] {top - 0.8 * PX_PER_S, 90, top, 90}, within(Picture.PX));
    assertThat(Picture.line(picture.the("line", "stroke", Ink.DOWN)))
        .containsExactly(new double[] {top, 90, 396, 90}, within(Picture.PX));
    double letGo = 396 - 0.12 * PX_PER_S;
    assertThat(Picture.line(picture.the("line", "stroke", Ink.DARK)))
        .containsExactly(new double[] {letGo, 76, letGo, 122}, within(Picture.PX));
  }

  @ParameterizedTest
  @CsvSource({"0.5, 120, 0.7, 100", "0.8, 80, 0.8, 80"})
  void theGoalInTimeIsTheTeachersLimits(double backS, double ms, double toBackS, double toMs) {
    // Given: hurried under 0.60 s, to go to 0.70; wrists in time under 100 ms. What is good stays.
    Picture goal = time(backS, ms, true);
    double top = 396 - 0.3 * PX_PER_S;
    assertThat(Picture.line(goal.the("line", "stroke", Ink.BACK))[0])
        .isCloseTo(top - toBackS * PX_PER_S, within(Picture.PX));
    assertThat(Picture.line(goal.the("line", "stroke", Ink.DARK))[0])
        .isCloseTo(396 - toMs / 1000 * PX_PER_S, within(Picture.PX));
    assertThat(goal.all("line", "stroke", Ink.PAPER)).hasSize(2);
  }

  @Test
  void whatWasNotMeasuredIsNotDrawn() {
    Pen bare = new DrawnLesson(Handedness.RIGHT).pen();
    assertThat(ArmPicture.bend(bare, false)).isEmpty();
    assertThat(ArmPicture.time(bare, false)).isEmpty();
  }
}
