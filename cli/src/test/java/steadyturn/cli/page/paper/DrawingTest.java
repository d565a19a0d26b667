package steadyturn.cli.page.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Attribute names are those of SVG 1.1 (W3C 2011), chapters 9 (shapes) and 10 (text). */
class DrawingTest {

  private static final String HEAD =
      "<svg viewBox=\"0 0 480 350\" role=\"img\" aria-labelledby=\"a-title a-text\""
          + " xmlns=\"http://www.w3.org/2000/svg\"><title id=\"a-title\">T &lt; U</title>"
          + "<desc id=\"a-text\">D</desc>";

  private static Drawing drawing() {
    return new Drawing("a", 480, 350, "T < U", "D");
  }

  private static List<double[]> corners() {
    return List.of(new double[] {1, 2}, new double[] {3, 4.25}, new double[] {-5, 6});
  }

  static Stream<Arguments> shapes() {
    return Stream.of(
        shape(
            d -> d.line(1, 2, 3, 4, "#000000", 2),
            "<line x1=\"1.0\" y1=\"2.0\" x2=\"3.0\" y2=\"4.0\" stroke=\"#000000\""
                + " stroke-width=\"2.0\" stroke-linecap=\"round\"/>"),
        shape(
            d -> d.dashed(1, 2, 3, 4, "#000000", 2, "9 5"),
            "<line x1=\"1.0\" y1=\"2.0\" x2=\"3.0\" y2=\"4.0\" stroke=\"#000000\""
                + " stroke-width=\"2.0\" stroke-dasharray=\"9 5\"/>"),
        shape(
            d -> d.path(corners(), "#000000", 2, "", 0.5),
            "<path d=\"M1.0 2.0L3.0 4.3L-5.0 6.0\" fill=\"none\" stroke=\"#000000\""
                + " stroke-width=\"2.0\" stroke-linejoin=\"round\" stroke-dasharray=\"none\""
                + " opacity=\"0.5\"/>"),
        shape(
            d -> d.path(corners().subList(0, 2), "#000000", 2, "2 4", 1),
            "<path d=\"M1.0 2.0L3.0 4.3\" fill=\"none\" stroke=\"#000000\" stroke-width=\"2.0\""
                + " stroke-linejoin=\"round\" stroke-dasharray=\"2 4\" opacity=\"1.0\"/>"),
        shape(
            d ->
                d.path(
                    List.of(
                        new double[] {1, 2},
                        new double[] {2, 2},
                        new double[] {3, Double.NaN},
                        new double[] {4, 2},
                        new double[] {5, 2}),
                    "#000000",
                    2,
                    "",
                    1),
            "<path d=\"M1.0 2.0L2.0 2.0M4.0 2.0L5.0 2.0\" fill=\"none\" stroke=\"#000000\""
                + " stroke-width=\"2.0\" stroke-linejoin=\"round\" stroke-dasharray=\"none\""
                + " opacity=\"1.0\"/>"),
        shape(d -> d.path(corners().subList(0, 1), "#000000", 2, "", 1), ""),
        shape(
            d -> d.dot(1, 2, 7, "#000000"),
            "<circle cx=\"1.0\" cy=\"2.0\" r=\"7.0\" fill=\"#000000\" stroke=\"#ffffff\""
                + " stroke-width=\"1\"/>"),
        shape(
            d -> d.ellipse(1, 2, 3, 4, "none", "#000000", 0.5),
            "<ellipse cx=\"1.0\" cy=\"2.0\" rx=\"3.0\" ry=\"4.0\" fill=\"none\""
                + " stroke=\"#000000\" opacity=\"0.5\"/>"),
        shape(
            d -> d.box(1, 2, 3, 4, "#ffffff", "none", 0.5),
            "<rect x=\"1.0\" y=\"2.0\" width=\"3.0\" height=\"4.0\" rx=\"3\" fill=\"#ffffff\""
                + " stroke=\"none\" opacity=\"0.5\"/>"),
        shape(
            d -> d.filled(corners(), "#000000"),
            "<polygon points=\"1.0,2.0 3.0,4.3 -5.0,6.0\" fill=\"#000000\"/>"),
        shape(
            d -> d.words(1, 2, "middle", "a & b", "note"),
            "<text x=\"1.0\" y=\"2.0\" text-anchor=\"middle\" class=\"note\">a &amp; b</text>"),
        shape(
            d -> d.upwards(1, 2, "up", "axis"),
            "<text x=\"1.0\" y=\"2.0\" text-anchor=\"middle\" class=\"axis\""
                + " transform=\"rotate(-90 1.0 2.0)\">up</text>"));
  }

  private static Arguments shape(Consumer<Drawing> draws, String expected) {
    return Arguments.of(draws, expected);
  }

  @ParameterizedTest(name = "[{index}] {1}")
  @MethodSource("shapes")
  void everyShapeIsWrittenAsItIsAskedFor(Consumer<Drawing> draws, String expected) {
    Drawing drawing = drawing();
    draws.accept(drawing);
    assertThat(drawing.done()).hasToString(HEAD + expected + "</svg>");
  }

  @Test
  void shapesCanBeChained() {
    // Given: one of each, drawn in one go. Expect: all of them, in that order.
    Html drawn =
        drawing()
            .line(0, 0, 1, 1, "a", 1)
            .dashed(0, 0, 1, 1, "a", 1, "1")
            .path(corners(), "a", 1, "", 1)
            .path(List.of(), "a", 1, "", 1)
            .dot(0, 0, 1, "a")
            .ellipse(0, 0, 1, 1, "a", "a", 1)
            .box(0, 0, 1, 1, "a", "a", 1)
            .filled(corners(), "a")
            .words(0, 0, "end", "w", "note")
            .upwards(0, 0, "u", "note")
            .done();
    assertThat(drawn.toString().replaceAll("<(/?[a-z]+)[^>]*>[^<]*", "$1 "))
        .isEqualTo(
            "svg title /title desc /desc line line path circle ellipse rect polygon"
                + " text /text text /text /svg ");
  }

  @Test
  void aPlaceHasATenthOfAPixelAndADotWhateverTheCountry() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertThat(Drawing.px(12.34)).isEqualTo("12.3");
      assertThat(Drawing.px(-0.06)).isEqualTo("-0.1");
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void aHatchRisesToTheRightWithinItsBox() {
    // Given: a box of 40 x 20 at (100, 50). Expect: every stroke from its lower left to its upper
    // right, as far to the right as up, inside the box; the first one 7 px up its left edge.
    String svg = new Drawing("d", 200, 100, "t", "a").wanted(100, 50, 40, 20).done().toString();
    var strokes =
        java.util.regex.Pattern.compile("points=\"([.\\d]+),([.\\d]+) ([.\\d]+),([.\\d]+)\"")
            .matcher(svg)
            .results()
            .map(
                m ->
                    java.util.stream.IntStream.rangeClosed(1, 4)
                        .mapToDouble(k -> Double.parseDouble(m.group(k)))
                        .toArray())
            .toList();
    assertThat(strokes).hasSize(6);
    assertThat(strokes.get(0)).containsExactly(100, 57, 107, 50);
    for (double[] s : strokes) {
      assertThat(s[2] - s[0]).isPositive().isEqualTo(s[1] - s[3]);
      assertThat(s[0]).isBetween(100.0, 140.0);
      assertThat(s[3]).isBetween(50.0, 70.0);
    }
  }

  @Test
  void aLeftHandedDrillIsTheRightHandedOneInAMirror() {
    Drawing left = new Drawing("d", 160, 110, "t", "a").mirrored(true, "<path/>");
    Drawing right = new Drawing("d", 160, 110, "t", "a").mirrored(false, "<path/>");
    assertThat(left.done().toString())
        .contains("<g transform=\"translate(160 0) scale(-1 1)\"><path/></g>");
    assertThat(right.done().toString()).contains("<g><path/></g>").doesNotContain("scale");
  }
}
