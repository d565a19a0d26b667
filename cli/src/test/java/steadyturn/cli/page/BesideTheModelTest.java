package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import steadyturn.analysis.coach.ModelComparison;
import steadyturn.analysis.coach.ModelCurve;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.paper.Ink;
import steadyturn.ingest.sample.Handedness;

/**
 * Strips of 190 px; each chart 408 px wide from 58 on and 146 px high, 22 px below the strip's top.
 */
class BesideTheModelTest {

  private static final List<Double> PLACES = List.of(0.0, 50.0, 75.0, 100.0, 110.0);

  private static ModelCurve turn() {
    return new ModelCurve(
        "pelvis.turn",
        PLACES,
        List.of(0.0, -30.0, -50.0, 20.0, 30.0),
        List.of(0.0, -20.0, -40.0, 25.0, Double.NaN),
        List.of(0.0, 5.0, 15.0, 10.0, Double.NaN));
  }

  private static Picture drawn(ModelCurve... curves) {
    return Picture.of(
        BesideTheModel.draw(
                new DrawnLesson(Handedness.LEFT).pen(),
                new ModelComparison(List.of(), List.of(curves)))
            .orElseThrow());
  }

  private static double x(double place) {
    return 58 + place / 110 * 408;
  }

  /** Player less its spread: -55 deg at the least; 35 with it at the most; 5 deg of room each. */
  private static double y(double deg) {
    return 22 + (40 - deg) / 100 * 146;
  }

  @Test
  void playerModelAndSpreadLieWhereTheirNumbersSay() {
    Picture picture = drawn(turn());
    assertThat(picture.svg().getAttribute("viewBox")).isEqualTo("0 0 480 220");
    List<Element> paths = picture.all("path");
    assertThat(paths).hasSize(4);
    expect(paths.get(0), Ink.DOWN, "none", 0, -15, -25, 35);
    expect(paths.get(1), Ink.DOWN, "none", 0, -25, -55, 15);
    expect(paths.get(2), Ink.DARK, Ink.DASH_BACK, 0, -30, -50, 20, 30);
    expect(paths.get(3), Ink.DOWN, "none", 0, -20, -40, 25);
    assertThat(paths.get(3).getAttribute("stroke-width")).isEqualTo("3.5");
  }

  private static void expect(Element path, String colour, String dash, double... degs) {
    assertThat(path.getAttribute("stroke")).isEqualTo(colour);
    assertThat(path.getAttribute("stroke-dasharray")).isEqualTo(dash);
    double[] corners = Picture.corners(path);
    assertThat(corners).hasSize(2 * degs.length);
    for (int i = 0; i < degs.length; i++) {
      assertThat(corners[2 * i]).isCloseTo(x(PLACES.get(i)), within(Picture.PX));
      assertThat(corners[2 * i + 1]).isCloseTo(y(degs[i]), within(Picture.PX));
    }
  }

  @Test
  void topAndImpactAreMarkedAtTheirPlaces() {
    Picture picture = drawn(turn());
    List<Element> marks = picture.all("line", "stroke", Ink.QUIET);
    assertThat(Picture.line(marks.get(0)))
        .containsExactly(new double[] {x(75), 22, x(75), 168}, within(Picture.PX));
    assertThat(Picture.line(marks.get(1)))
        .containsExactly(new double[] {x(100), 22, x(100), 168}, within(Picture.PX));
    assertThat(Picture.place(picture.words("top")))
        .containsExactly(new double[] {x(75), 183}, within(Picture.PX));
    assertThat(Picture.place(picture.words("impact")))
        .containsExactly(new double[] {x(100), 183}, within(Picture.PX));
  }

  @Test
  void aCurveThatEndsAtTheTopHasNoImpact() {
    ModelCurve short1 =
        new ModelCurve(
            "pelvis.slide",
            List.of(0.0, 75.0),
            List.of(0.0, -20.0),
            List.of(0.0, -30.0),
            List.of(Double.NaN, Double.NaN));
    Picture picture = drawn(short1);
    assertThat(picture.words()).contains("top").doesNotContain("impact");
    // A single swing has no spread: its edges are empty. The axis runs from -30 - 5 to 0 + 5 mm.
    assertThat(picture.all("path", "d", "")).hasSize(2);
    double[] player = Picture.corners(picture.the("path", "stroke-width", "3.5"));
    assertThat(player)
        .containsExactly(
            new double[] {58, 22 + 5 / 40.0 * 146, 466, 22 + 35 / 40.0 * 146}, within(Picture.PX));
  }

  @Test
  void turnAndSlideStandOneBelowTheOtherAndNothingElse() {
    ModelCurve slide =
        new ModelCurve("pelvis.slide", PLACES, turn().model(), turn().player(), turn().spread());
    ModelCurve cock =
        new ModelCurve("wrist.cock", PLACES, turn().model(), turn().player(), turn().spread());
    Picture picture = drawn(turn(), cock, slide);
    assertThat(picture.svg().getAttribute("viewBox")).isEqualTo("0 0 480 410");
    List<Element> names = picture.all("text", "text-anchor", "start");
    assertThat(names).hasSize(2);
    assertThat(names.get(0).getTextContent()).endsWith(", deg");
    assertThat(Picture.place(names.get(0))).containsExactly(58, 14);
    assertThat(names.get(1).getTextContent()).endsWith(", mm");
    assertThat(Picture.place(names.get(1))).containsExactly(58, 204);
    assertThat(Picture.line(picture.all("line", "stroke", Ink.QUIET).get(2)))
        .containsExactly(new double[] {x(75), 212, x(75), 358}, within(Picture.PX));
  }

  @Test
  void withoutTurnOrSlideThereIsNoPicture() {
    ModelCurve cock =
        new ModelCurve("wrist.cock", PLACES, turn().model(), turn().player(), turn().spread());
    assertThat(
            BesideTheModel.draw(
                new DrawnLesson(Handedness.LEFT).pen(),
                new ModelComparison(List.of(), List.of(cock))))
        .isEmpty();
    assertThat(Measure.PELVIS_TURN.id()).isEqualTo(turn().id());
  }
}
