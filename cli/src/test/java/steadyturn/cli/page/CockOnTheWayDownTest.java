package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Element;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.cli.page.paper.Ink;
import steadyturn.ingest.sample.Handedness;

/**
 * The chart is 408 px wide from 58 on and 240 px high from 14 on; time before impact runs to 0 at
 * the right. In these swings the top lies 250 ms before impact.
 */
class CockOnTheWayDownTest {

  private static final List<MeasureValue> RELEASE =
      List.of(DrawnLesson.value(Measure.WRIST_RELEASE, "", 90, 6));

  /** Cock falls straight from {@code top} deg at the top to 10 deg at impact. */
  private static DrawnLesson lesson(double... tops) {
    DrawnLesson lesson = new DrawnLesson(Handedness.RIGHT);
    for (int k = 1; k <= tops.length; k++) {
      lesson.swing(
          RELEASE, DrawnLesson.curve(k, Measure.WRIST_COCK, 1.75, tops[k - 1], 2, 10, 2.1, 0));
    }
    return lesson;
  }

  private static Picture drawn(DrawnLesson lesson) {
    return Picture.of(CockOnTheWayDown.draw(lesson.pen()).orElseThrow());
  }

  private static double x(double beforeMs) {
    return 58 + (250 - beforeMs) / 250 * 408;
  }

  private static double y(double deg, double low, double high) {
    return 14 + (high - deg) / (high - low) * 240;
  }

  @Test
  void oneLineASwingFromTheTopToImpactAndTheirMean() {
    // Given: 60 and 80 deg at the top. Expect: 51 points 5 ms apart; the axis from 0 to 88 deg (8
    // above the highest, as 10 - 5 is above 0); the mean starts at 70 deg.
    Picture picture = drawn(lesson(60, 80));
    List<Element> thin = picture.all("path", "stroke", Ink.QUIET);
    assertThat(thin).hasSize(2);
    for (int k = 0; k < 2; k++) {
      double[] corners = Picture.corners(thin.get(k));
      assertThat(corners).hasSize(2 * 51);
      double top = k == 0 ? 60 : 80;
      for (int i = 0; i <= 50; i++) {
        double deg = top + (10 - top) * i / 50;
        assertThat(corners[2 * i]).isCloseTo(x(250 - 5 * i), within(Picture.PX));
        assertThat(corners[2 * i + 1]).isCloseTo(y(deg, 0, 88), within(Picture.PX));
      }
    }
    double[] mean = Picture.corners(picture.the("path", "stroke", Ink.DOWN));
    assertThat(mean).hasSize(2 * 51);
    assertThat(new double[] {mean[0], mean[1], mean[100], mean[101]})
        .containsExactly(new double[] {58, y(70, 0, 88), 466, y(10, 0, 88)}, within(Picture.PX));
  }

  @Test
  void theMeanIsTakenWhereAllSwingsAre() {
    // Given: a second swing known in its last 100 ms only (60 deg then). Expect: a mean of 21
    // points, from (60 + 30) / 2 deg at 100 ms on: the first has 10 + 50 x 100/250 = 30 deg there.
    DrawnLesson lesson = lesson(60);
    lesson.swing(RELEASE, DrawnLesson.curve(2, Measure.WRIST_COCK, 1.9, 60, 2, 10));
    double[] mean = Picture.corners(drawn(lesson).the("path", "stroke", Ink.DOWN));
    assertThat(mean.length / 2).isBetween(20, 21);
    double firstMs = 250 - (mean[0] - 58) / 408 * 250;
    assertThat(firstMs).isCloseTo(100, within(5.1));
    double expected = (10 + 0.2 * firstMs + 10 + 0.5 * firstMs) / 2;
    assertThat(mean[1]).isCloseTo(y(expected, 0, 68), within(0.2));
  }

  @ParameterizedTest(name = "{0} deg at the top, {1} at impact")
  @CsvSource({
    "60, 10, 0, 68",
    "20, 10, 0, 30",
    "60, -10, -15, 68",
    "22, 5, 0, 30",
    "23, 4, -1, 31"
  })
  void theAxisReachesAsFarAsTheCock(double top, double impact, double low, double high) {
    DrawnLesson lesson = new DrawnLesson(Handedness.RIGHT);
    lesson.swing(RELEASE, DrawnLesson.curve(1, Measure.WRIST_COCK, 1.75, top, 2, impact, 2.1, 0));
    double[] line = Picture.corners(drawn(lesson).the("path", "stroke", Ink.QUIET));
    assertThat(line[1]).isCloseTo(y(top, low, high), within(Picture.PX));
    assertThat(line[101]).isCloseTo(y(impact, low, high), within(Picture.PX));
  }

  @Test
  void theReleaseIsALineInTheBandOfItsRange() {
    // Given: three releases 90 ms before impact. Expect: a line there, the half-width of the mean
    // to either side, over the whole height.
    DrawnLesson lesson = lesson(60, 60, 60);
    Picture picture = drawn(lesson);
    double half =
        lesson
            .pen()
            .mean(Measure.WRIST_RELEASE, "")
            .map(GroupSummary::halfWidthOfMean)
            .orElseThrow();
    assertThat(half).isBetween(0.5, 60.0);
    assertThat(Picture.box(picture.the("rect")))
        .containsExactly(
            new double[] {x(90 + half), 14, 2 * half / 250 * 408, 240}, within(Picture.PX));
    assertThat(Picture.line(picture.the("line", "stroke", Ink.DARK)))
        .containsExactly(new double[] {x(90), 14, x(90), 254}, within(Picture.PX));
    assertThat(Picture.place(picture.words("release")))
        .containsExactly(new double[] {x(90) - 8, 244}, within(Picture.PX));
    assertThat(picture.the("desc").getTextContent())
        .startsWith("Wrist cock over the downswing; the release comes 90 ms (")
        .endsWith(") before impact.");
  }

  @Test
  void twoReleasesAreNoBand() {
    assertThat(drawn(lesson(60, 60)).all("rect")).isEmpty();
    assertThat(drawn(lesson(60, 60)).words()).doesNotContain("release");
  }

  @ParameterizedTest(name = "downswing of {0} ms")
  @CsvSource({"180, 200", "200, 200", "201, 250", "310, 350", "349, 350"})
  void theAxisCoversTheLongestDownswingIn50Ms(double downMs, double fromMs) {
    // Given: a swing whose top lies so long before impact. Expect: where 0 and 100 ms stand.
    double topS = 12 - downMs / 1000;
    SwingResult swing =
        new SwingResult(
            1,
            "",
            SwingKind.HIT,
            List.of(),
            List.of(
                DrawnLesson.event(SwingEvent.TOP, topS), DrawnLesson.event(SwingEvent.IMPACT, 12)),
            List.of(),
            List.of(DrawnLesson.curve(1, Measure.WRIST_COCK, 1, 50, 2, 10)));
    DrawnLesson lesson = new DrawnLesson(Handedness.RIGHT).with(swing);
    Picture picture = drawn(lesson);
    assertThat(Picture.place(picture.all("text", "y", "268.0").get(0), 0))
        .isCloseTo(466, within(Picture.PX));
    double[] line = Picture.corners(picture.the("path", "stroke", Ink.QUIET));
    assertThat(line).hasSize((int) (2 * (fromMs / 5 + 1)));
    assertThat(line[0]).isCloseTo(58, within(Picture.PX));
    assertThat(line[line.length - 2]).isCloseTo(466, within(Picture.PX));
  }

  @Test
  void aLostStretchBreaksTheLineAndNothingElse() {
    // Given: cock is lost at 1.9 s, 100 ms before impact. Expect: no line between its neighbours at
    // 150 and 50 ms; the scale as ever.
    DrawnLesson lesson =
        new DrawnLesson(Handedness.RIGHT)
            .swing(
                RELEASE,
                DrawnLesson.curve(
                    1, Measure.WRIST_COCK, 1.75, 60, 1.85, 60, 1.9, Double.NaN, 1.95, 20, 2, 10));
    Picture picture = drawn(lesson);
    Element thin = picture.the("path", "stroke", Ink.QUIET);
    assertThat(thin.getAttribute("d").chars().filter(c -> c == 'M')).hasSize(2);
    assertThat(Picture.corners(thin)[1]).isCloseTo(y(60, 0, 68), within(Picture.PX));
    assertThat(CockOnTheWayDown.draw(lesson.pen()).orElseThrow().toString()).doesNotContain("NaN");
  }

  @Test
  void theAxesAreNamed() {
    assertThat(drawn(lesson(60)).words())
        .contains("time before impact, ms", "cock since address, deg");
  }

  @Test
  void withoutCockOrImpactThereIsNoPicture() {
    assertThat(CockOnTheWayDown.draw(new DrawnLesson(Handedness.RIGHT).swings(3, RELEASE).pen()))
        .isEmpty();
    SwingResult withoutImpact =
        new SwingResult(
            1,
            "",
            SwingKind.HIT,
            List.of(),
            List.of(DrawnLesson.event(SwingEvent.TOP, 11.75)),
            List.of(),
            List.of(DrawnLesson.curve(1, Measure.WRIST_COCK, 1, 50, 2, 10)));
    assertThat(CockOnTheWayDown.draw(new DrawnLesson(Handedness.RIGHT).with(withoutImpact).pen()))
        .isEmpty();
  }
}
