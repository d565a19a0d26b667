package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Element;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.ingest.sample.Handedness;

/**
 * The scale of the picture from above, and what is left out of it. Its signs: HipsFromAboveTest.
 */
class HipsOnPaperTest {

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

  /** The widest thing in most of these lessons: 206 px for the 170 mm that the feet need. */
  private static final double PX_PER_MM = 206.0 / 170;

  private static DrawnLesson lesson(Handedness handed) {
    return new DrawnLesson(handed).swings(3, values());
  }

  private static Picture drawn(DrawnLesson lesson) {
    return Picture.of(HipsFromAbove.draw(lesson.pen()).orElseThrow());
  }

  private static void expectLine(Element line, double... ends) {
    assertThat(Picture.line(line)).containsExactly(ends, within(Picture.PX));
  }

  @ParameterizedTest
  @CsvSource({"METRIC, 100, 10 cm", "IMPERIAL, 101.6, 4 in"})
  void theScaleIsAsLongAsItSays(LengthUnits units, double mm, String words) {
    // An inch is 25.4 mm exactly, so 4 in are 101.6 mm.
    DrawnLesson lesson = lesson(Handedness.RIGHT);
    Picture picture = drawn(units == LengthUnits.IMPERIAL ? lesson.inches() : lesson);
    List<Element> lines = picture.all("line", "stroke", Ink.DARK);
    double to = 24 + mm * PX_PER_MM;
    expectLine(lines.get(1), 24, 330, to, 330);
    expectLine(lines.get(2), 24, 325, 24, 335);
    expectLine(lines.get(3), to, 325, to, 335);
    assertThat(Picture.place(picture.words(words)))
        .containsExactly(new double[] {to + 8, 335}, within(Picture.PX));
  }

  private static List<MeasureValue> reaching(double slideMm, double acrossMm) {
    return List.of(
        DrawnLesson.value(Measure.PELVIS_TURN, "top", -30, 1),
        DrawnLesson.value(Measure.PELVIS_SLIDE, "top", slideMm, 5),
        DrawnLesson.value(Measure.PELVIS_CENTRE_ACROSS, "top", acrossMm, 0));
  }

  @ParameterizedTest(name = "slide {0} mm, pelvis {1} mm, ring {2} mm behind, {3} swings")
  @CsvSource({
    // 206 px for what reaches sideways: feet, or slide and half the hips (0.33 PW + 7.3 mm)
    "-20,    0,    0, 3, 1.211765",
    "-83.5,  0,    0, 3, 1.211765",
    "-100,   0,    0, 3, 1.104558",
    "100,    0,    0, 3, 1.104558",
    "-100, 300,    0, 3, 0.998546",
    // 126 px for what reaches behind: the ring, cut off at 260 mm; one swing has 10 mm of range
    "-20,    0, -140, 3, 0.9",
    "-20,    0,  140, 3, 0.9",
    "-20,    0, -140, 2, 0.84",
    "-20,    0, -500, 3, 0.484615"
  })
  void everythingFitsOnThePaper(
      double slideMm, double widthMm, double acrossMm, int swings, double pxPerMm) {
    DrawnLesson lesson =
        new DrawnLesson(Handedness.RIGHT).swings(swings, reaching(slideMm, acrossMm));
    if (widthMm > 0) {
      lesson.pelvisWidth(widthMm);
    }
    List<Element> lines = drawn(lesson).all("line", "stroke", Ink.DARK);
    assertThat(Picture.line(lines.get(1))[2]).isCloseTo(24 + 100 * pxPerMm, within(Picture.PX));
  }

  @Test
  void aMeasuredPelvisIsAsWideAsItsHipCentres() {
    // Harrington et al. 2007: half the distance is 0.33 PW + 7.3 mm; PW 240 gives 86.5, 280 99.7.
    Picture picture = drawn(lesson(Handedness.RIGHT).pelvisWidth(280));
    expectLine(
        picture.the("line", "stroke", Ink.QUIET),
        240 + 99.7 * PX_PER_MM,
        190,
        240 - 99.7 * PX_PER_MM,
        190);
  }

  @ParameterizedTest
  @CsvSource({"RIGHT, 230, 0, start", "LEFT, 230, 0, end", "RIGHT, -230, 180, end"})
  void wordsNearAnEdgeRunInwards(Handedness handed, double slideMm, double turnDeg, String anchor) {
    // Given: the lead hip at impact 316.5 mm out, 34 px from an edge. Expect: its word runs
    // inwards.
    List<MeasureValue> far =
        List.of(
            DrawnLesson.value(Measure.PELVIS_TURN, "top", -30, 1),
            DrawnLesson.value(Measure.PELVIS_SLIDE, "top", 0, 5),
            DrawnLesson.value(Measure.PELVIS_TURN, "impact", turnDeg, 1),
            DrawnLesson.value(Measure.PELVIS_SLIDE, "impact", slideMm, 5));
    Picture picture = drawn(new DrawnLesson(handed).swings(3, far));
    assertThat(picture.words("impact").getAttribute("text-anchor")).isEqualTo(anchor);
  }

  @Test
  void withoutTurnOrSlideThereIsNoPicture() {
    for (Measure only : List.of(Measure.PELVIS_TURN, Measure.PELVIS_SLIDE)) {
      DrawnLesson lesson =
          new DrawnLesson(Handedness.RIGHT)
              .swings(3, List.of(DrawnLesson.value(only, "top", 1, 1)));
      assertThat(HipsFromAbove.draw(lesson.pen())).isEmpty();
    }
    assertThat(HipsFromAbove.draw(new DrawnLesson(Handedness.RIGHT).pen())).isEmpty();
  }

  @Test
  void hipsNotMeasuredAtImpactAreNotDrawn() {
    Picture picture = drawn(new DrawnLesson(Handedness.RIGHT).swings(3, reaching(-20, 0)));
    assertThat(picture.all("line", "stroke", Ink.DOWN)).isEmpty();
    assertThat(picture.words()).doesNotContain("impact");
  }
}
