package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.paper.Ink;
import steadyturn.ingest.sample.Handedness;

/** The hips over time and over one another; paper as in {@link HingePictureTest}. */
class HingeInTimeTest {

  private static final double S = 420.0 / 440;

  private static DrawnLesson lesson(double turn, double slide) {
    DrawnLesson lesson = new DrawnLesson(Handedness.RIGHT);
    for (int k = 1; k <= 3; k++) {
      lesson.swing(
          List.of(
              DrawnLesson.value(Measure.PELVIS_TURN, "top", turn, 1),
              DrawnLesson.value(Measure.PELVIS_SLIDE, "top", slide, 5),
              DrawnLesson.value(Measure.TEMPO_BACK, "", 0.9, 0.02),
              DrawnLesson.value(Measure.TEMPO_DOWN, "", 0.3, 0.01)),
          DrawnLesson.curve(k, Measure.PELVIS_TURN, 1, 0, 1.75, turn, 2, 40),
          DrawnLesson.curve(k, Measure.PELVIS_SLIDE, 1, 0, 1.75, slide, 2, 70),
          DrawnLesson.curve(k, Measure.PELVIS_THRUST, 1, 0, 1.75, 0, 2, 20));
    }
    return lesson;
  }

  private static double[] frame(String frame) {
    return Arrays.stream(frame.split(",", -1)).mapToDouble(Double::parseDouble).toArray();
  }

  @Test
  void theBarMovesFromAddressToTheTopToTheBallInItsTime() {
    // Given: back in 0.9 s, down in 0.3; -40 deg and -50 mm at the top, 40 deg, 70 and 20 mm at the
    // ball; hips 173 mm wide. Expect: ends of the bar by hand, 0, 900 and 1200 ms.
    String html = HingeInTime.moving(lesson(-40, -50).pen()).orElseThrow().toString();
    Matcher found = Pattern.compile("data-frames=\"([^\"]*)\"").matcher(html);
    assertThat(found.find()).isTrue();
    List<String> frames = List.of(found.group(1).split(";", -1));
    assertThat(frames).hasSize(101);
    double middle = 0.38 * 262;
    double a = 86.5 * Math.cos(Math.toRadians(40)) * S;
    double b = 86.5 * Math.sin(Math.toRadians(40)) * S;
    assertThat(frame(frames.get(0)))
        .containsExactly(
            new double[] {0, 210 + 86.5 * S, middle, 210 - 86.5 * S, middle}, within(Picture.PX));
    double top = 210 + 50 * S;
    assertThat(frame(frames.get(75)))
        .containsExactly(
            new double[] {900, top + a, middle + b, top - a, middle - b}, within(Picture.PX));
    double ball = 210 - 70 * S;
    double across = middle - 20 * S;
    assertThat(frame(frames.get(100)))
        .containsExactly(
            new double[] {1200, ball + a, across - b, ball - a, across + b}, within(Picture.PX));
    assertThat(html).contains("data-pace=\"1\"", "data-pace=\"0.25\"", " hidden=\"\"");
  }

  @Test
  void withoutCurvesNothingMoves() {
    Pen bare = new DrawnLesson(Handedness.RIGHT).swing(List.of()).pen();
    assertThat(HingeInTime.moving(bare)).isEmpty();
  }

  @Test
  void whatWasIsHollowAndGreyUnderWhatIs() {
    // Given: -20 deg and -70 mm then, -45 and -10 now. Expect: the bar of then at its place in
    // grey,
    // that of now dashed in its own; both pins.
    Picture picture =
        Picture.of(HingeInTime.over(lesson(-20, -70).pen(), lesson(-45, -10).pen()).orElseThrow());
    double turn = Math.toRadians(20);
    double x = 210 + 70 * S;
    double[] was = {
      x + 86.5 * Math.cos(turn) * S,
      0.38 * 262 + 86.5 * Math.sin(turn) * S,
      x - 86.5 * Math.cos(turn) * S,
      0.38 * 262 - 86.5 * Math.sin(turn) * S
    };
    assertThat(Picture.line(picture.the("line", "stroke-dasharray", "14 4", "stroke", Ink.QUIET)))
        .containsExactly(was, within(Picture.PX));
    assertThat(picture.all("line", "stroke-dasharray", "14 4", "stroke", Ink.BACK)).hasSize(1);
    assertThat(picture.all("line", "stroke", Ink.PAPER)).hasSize(1);
    assertThat(picture.all("circle", "r", "8.1")).hasSize(2);
    Pen bare = new DrawnLesson(Handedness.RIGHT).pen();
    assertThat(HingeInTime.over(bare, lesson(-45, -10).pen())).isEmpty();
    assertThat(HingeInTime.over(lesson(-45, -10).pen(), bare)).isEmpty();
  }
}
