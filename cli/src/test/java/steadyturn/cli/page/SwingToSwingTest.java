package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.cli.page.paper.Drawing;
import steadyturn.cli.page.paper.Ink;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Handedness;

/**
 * Strips of 128 px, one below the other: turn at the top, slide at the top, tempo. Each chart is
 * 408 px wide from 58 on and 94 px high, 22 px below the strip's top; swing k stands at k of 0.4 to
 * n + 0.6; there is 8 % of room above and below the widest ranges.
 */
class SwingToSwingTest {

  /** Turn -40, -44, -48 +- 2 deg: -50 to -38, with 8 % of 12 deg: -50.96 to -37.04. */
  private static DrawnLesson lesson() {
    DrawnLesson lesson = new DrawnLesson(Handedness.LEFT);
    for (int k = 0; k < 3; k++) {
      lesson.swing(
          List.of(
              DrawnLesson.value(Measure.PELVIS_TURN, "top", -40 - 4 * k, 2),
              DrawnLesson.value(Measure.PELVIS_SLIDE, "top", 10 * k, 5)));
    }
    return lesson;
  }

  private static Picture drawn(DrawnLesson lesson) {
    return Picture.of(SwingToSwing.draw(lesson.pen()).orElseThrow());
  }

  private static double x(int number) {
    return 58 + (number - 0.4) / (3.6 - 0.4) * 408;
  }

  private static double turnY(double deg) {
    return 22 + (-37.04 - deg) / 13.92 * 94;
  }

  private static double slideY(double mm) {
    return 128 + 22 + (27.4 - mm) / 34.8 * 94; // -5 to 25 mm, with 8 % of 30 mm
  }

  @Test
  void everySwingIsADotOnItsRange() {
    Picture picture = drawn(lesson());
    List<Element> dots = picture.all("circle", "fill", Ink.BACK);
    List<Element> ranges = picture.all("line", "stroke", Ink.QUIET);
    assertThat(dots).hasSize(6);
    assertThat(ranges).hasSize(6);
    for (int k = 0; k < 3; k++) {
      double deg = -40 - 4 * k;
      double mm = 10 * k;
      expectDot(dots.get(k), x(k + 1), turnY(deg));
      expectLine(ranges.get(k), x(k + 1), turnY(deg - 2), x(k + 1), turnY(deg + 2));
      expectDot(dots.get(3 + k), x(k + 1), slideY(mm));
      expectLine(ranges.get(3 + k), x(k + 1), slideY(mm - 5), x(k + 1), slideY(mm + 5));
    }
  }

  private static void expectDot(Element dot, double x, double y) {
    assertThat(Picture.dot(dot)).containsExactly(new double[] {x, y}, within(Picture.PX));
    assertThat(dot.getAttribute("r")).isEqualTo("5.0");
  }

  private static void expectLine(Element line, double... ends) {
    assertThat(Picture.line(line)).containsExactly(ends, within(Picture.PX));
  }

  @Test
  void onlyTheLastStripHasTheNumbersOfTheSwings() {
    Picture picture = drawn(lesson());
    assertThat(picture.svg().getAttribute("viewBox")).isEqualTo("0 0 480 290");
    double bottom = 128 + 22 + 94;
    for (int k = 1; k <= 3; k++) {
      Element number = picture.the("text", "y", Drawing.px(bottom + 16), "x", Drawing.px(x(k)));
      assertThat(number.getTextContent()).isEqualTo(Integer.toString(k));
    }
    assertThat(picture.all("text", "y", Drawing.px(22 + 94 + 16.0))).isEmpty();
    assertThat(Picture.place(picture.words("swing")))
        .containsExactly(new double[] {262, bottom + 34}, within(Picture.PX));
  }

  @Test
  void eachStripHasItsNameWithTheUnit() {
    Picture picture = drawn(lesson());
    List<Element> names = picture.all("text", "text-anchor", "start", "class", "axis");
    assertThat(names).hasSize(2);
    assertThat(names.get(0).getTextContent()).endsWith(", deg");
    assertThat(Picture.place(names.get(0))).containsExactly(58, 14);
    assertThat(names.get(1).getTextContent()).endsWith(", mm");
    assertThat(Picture.place(names.get(1))).containsExactly(58, 142);
    assertThat(drawn(lesson().forPlayer()).words())
        .contains("Turn at the end of the backswing, degrees");
  }

  @Test
  void aRatioHasNoUnit() {
    List<MeasureValue> tempo = List.of(DrawnLesson.value(Measure.TEMPO_RATIO, "", 3, 0.1));
    Picture picture = drawn(new DrawnLesson(Handedness.RIGHT).swings(3, tempo).forPlayer());
    assertThat(picture.words()).contains("Rhythm: way back for each way down");
    assertThat(picture.svg().getAttribute("viewBox")).isEqualTo("0 0 480 162");
  }

  @Test
  void theBandIsTheRangeOfTheMeanWithinTheStrip() {
    // Given: the mean turn -44 deg. Expect: a band its half-width to both sides over all swings,
    // cut off where the strip ends.
    DrawnLesson lesson = lesson();
    Picture picture = drawn(lesson);
    double half =
        lesson
            .pen()
            .mean(Measure.PELVIS_TURN, "top")
            .map(GroupSummary::halfWidthOfMean)
            .orElseThrow();
    List<Element> bands = picture.all("rect", "stroke", Ink.BACK);
    assertThat(bands).hasSize(2);
    double top = Math.max(22, turnY(-44 + half));
    double bottom = Math.min(116, turnY(-44 - half));
    assertThat(Picture.box(bands.get(0)))
        .containsExactly(new double[] {58, top, 408, bottom - top}, within(2 * Picture.PX));
  }

  @Test
  void aNarrowBandLiesAroundItsMean() {
    // Given: one swing far off and a mean known well all the same would be no mean; so: ranges wide
    // against the spread. Expect: the band's two edges half-widths above and below the mean.
    List<MeasureValue> wide = new ArrayList<>();
    for (double deg : new double[] {-44, -45, -46, -45, -44, -46}) {
      wide.add(DrawnLesson.value(Measure.PELVIS_TURN, "top", deg, 4));
    }
    DrawnLesson lesson = new DrawnLesson(Handedness.RIGHT);
    wide.forEach(v -> lesson.swing(List.of(v)));
    GroupSummary mean = lesson.pen().mean(Measure.PELVIS_TURN, "top").orElseThrow();
    double half = mean.halfWidthOfMean();
    assertThat(half).isLessThan(5);
    double span = 1.16 * 10;
    double centre = 22 + 94 / 2.0;
    assertThat(Picture.box(drawn(lesson).the("rect")))
        .containsExactly(
            new double[] {58, centre - half / span * 94, 408, 2 * half / span * 94},
            within(2 * Picture.PX));
  }

  @Test
  void twoSwingsHaveNoBandAndAWithheldOneNoDot() {
    List<MeasureValue> two = new ArrayList<>();
    two.add(DrawnLesson.value(Measure.PELVIS_TURN, "top", -40, 2));
    two.add(DrawnLesson.value(Measure.PELVIS_TURN, "top", -42, 2));
    two.add(
        MeasureValue.withheld(Measure.PELVIS_TURN, "top", Reason.of(MeasureReason.NEEDS_PELVIS)));
    DrawnLesson lesson = new DrawnLesson(Handedness.RIGHT);
    two.forEach(v -> lesson.swing(List.of(v)));
    Picture picture = drawn(lesson);
    assertThat(picture.all("circle")).hasSize(2);
    assertThat(picture.all("rect")).isEmpty();
  }

  @Test
  void aValueKnownExactlyStillHasAStrip() {
    // Given: one value without a range. Expect: in the middle of the strip, not at infinity.
    MeasureValue exact =
        new MeasureValue(Measure.PELVIS_TURN, "top", -40, -40, -40, Grade.MEASURED, Reason.NONE);
    Picture picture = drawn(new DrawnLesson(Handedness.RIGHT).swing(List.of(exact)));
    assertThat(Picture.dot(picture.the("circle"))[1]).isCloseTo(69, within(Picture.PX));
  }

  @Test
  void theDescriptionNamesMeanAndSpread() {
    // Given: -40, -44, -48. Expect: mean -44 and spread 4 deg (n - 1).
    assertThat(drawn(lesson()).the("desc").getTextContent())
        .contains("from swing to swing: mean −44.0 deg (")
        .endsWith("spread about 4.0 deg.");
    assertThat(drawn(lesson().forPlayer()).the("desc").getTextContent())
        .endsWith("about 44 degrees on average, each swing about 4 degrees more or less.");
  }

  @Test
  void withoutAnyOfTheMeasuresThereIsNoPicture() {
    assertThat(SwingToSwing.draw(new DrawnLesson(Handedness.RIGHT).pen())).isEmpty();
  }
}
