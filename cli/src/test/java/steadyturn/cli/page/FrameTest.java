package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Element;
import steadyturn.cli.page.paper.Drawing;
import steadyturn.cli.page.paper.Frame;
import steadyturn.cli.page.paper.Ink;
import steadyturn.cli.words.Words;

class FrameTest {

  /** 400 wide from 50 on, 200 high from 20 on; x from -100 to 300, y from -40 to 60. */
  private static final Frame FRAME = new Frame(50, 20, 400, 200, -100, 300, -40, 60);

  @ParameterizedTest
  @CsvSource({"-100, 50", "0, 150", "100, 250", "300, 450", "400, 550"})
  void xGrowsToTheRight(double value, double px) {
    assertThat(FRAME.x(value)).isCloseTo(px, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"60, 20", "-40, 220", "0, 140", "10, 120", "110, -80"})
  void yGrowsUpwardsWhilePaperGrowsDownwards(double value, double px) {
    assertThat(FRAME.y(value)).isCloseTo(px, within(1e-9));
  }

  @Test
  void anAxisMayRunTheOtherWay() {
    Frame mirrored = new Frame(50, 20, 400, 200, 300, -100, -40, 60);
    assertThat(mirrored.x(300)).isEqualTo(50);
    assertThat(mirrored.x(0)).isEqualTo(350);
  }

  @Test
  void theEdgesAreWhereTheyAre() {
    assertThat(FRAME.right()).isEqualTo(450);
    assertThat(FRAME.bottom()).isEqualTo(220);
  }

  @ParameterizedTest(name = "{0} to {1}, about {2}")
  @CsvSource(
      delimiter = '|',
      value = {
        "0|60|6|0 10 20 30 40 50 60",
        "0|10|10|0 1 2 3 4 5 6 7 8 9 10",
        "0|14.9|10|0 1 2 3 4 5 6 7 8 9 10 11 12 13 14",
        "0|15|10|0 2 4 6 8 10 12 14",
        "0|34|10|0 2 4 6 8 10 12 14 16 18 20 22 24 26 28 30 32 34",
        "0|35|10|0 5 10 15 20 25 30 35",
        "0|74|10|0 5 10 15 20 25 30 35 40 45 50 55 60 65 70",
        "0|75|10|0 10 20 30 40 50 60 70",
        "-63|35|7|-60 -50 -40 -30 -20 -10 0 10 20 30",
        "35|-63|7|-60 -50 -40 -30 -20 -10 0 10 20 30",
        "-0.25|0.35|3|-0.2 0 0.2",
        "101|199|4|120 140 160 180",
        "0|0.3|3|0 0.1 0.2 0.3"
      })
  void numbersAtAnAxisAreRoundAndInside(double low, double high, int about, String expected) {
    // Steps of 1, 2 or 5 times a power of ten; within 1e-9: sums of a step.
    List<Double> ticks = Frame.ticks(low, high, about);
    String[] numbers = expected.split(" ", -1);
    assertThat(ticks).hasSize(numbers.length);
    for (int i = 0; i < numbers.length; i++) {
      assertThat(ticks.get(i)).isCloseTo(Double.parseDouble(numbers[i]), within(1e-9));
    }
  }

  @Test
  void zeroIsZeroWithoutASign() {
    // Given: a step of 0.1 from -0.3 on, whose sum misses zero by a rounding. Expect: exactly 0.
    List<Double> ticks = Frame.ticks(-0.3, 0.3, 6);
    assertThat(ticks).hasSize(7);
    assertThat(ticks.get(3)).isEqualTo(0.0);
  }

  private static Drawing drawing() {
    return new Drawing("f", 480, 260, "", "");
  }

  @Test
  void theAxisBelowHasALineANumberAndItsName() {
    // Given: mm printed in cm. Expect: lines at -10, 0, ... 30 cm from top to bottom, the one of
    // zero thicker; numbers below, the name in the middle.
    Drawing drawing = drawing();
    FRAME.axisX(drawing, Words.english(), "slide, cm", 0.1, 4);
    Picture picture = Picture.of(drawing.done());
    List<Element> lines = picture.all("line", "stroke", Ink.FAINT);
    assertThat(lines).hasSize(5);
    for (int i = 0; i < 5; i++) {
      double x = 50 + 100 * i;
      assertThat(Picture.line(lines.get(i)))
          .containsExactly(new double[] {x, 20, x, 220}, within(Picture.PX));
      assertThat(lines.get(i).getAttribute("stroke-width")).isEqualTo(i == 1 ? "1.6" : "0.6");
      Element number = picture.words(List.of("−10", "0", "10", "20", "30").get(i));
      assertThat(Picture.place(number)).containsExactly(new double[] {x, 234}, within(Picture.PX));
      assertThat(number.getAttribute("text-anchor")).isEqualTo("middle");
    }
    assertThat(Picture.place(picture.words("slide, cm")))
        .containsExactly(new double[] {250, 251}, within(Picture.PX));
  }

  @Test
  void theAxisAtTheLeftHasALineANumberAndItsName() {
    Drawing drawing = drawing();
    FRAME.axisY(drawing, Words.english(), "turn, deg", 0.1, 5);
    Picture picture = Picture.of(drawing.done());
    // Given: -4 to 6 in steps of 2. Expect: 20 px each, upwards.
    List<Element> lines = picture.all("line");
    assertThat(lines).hasSize(6);
    for (int i = 0; i < 6; i++) {
      double y = 220 - 40 * i;
      assertThat(Picture.line(lines.get(i)))
          .containsExactly(new double[] {50, y, 450, y}, within(Picture.PX));
      assertThat(lines.get(i).getAttribute("stroke-width")).isEqualTo(i == 2 ? "1.6" : "0.6");
      assertThat(Picture.place(picture.words(List.of("−4", "−2", "0", "2", "4", "6").get(i))))
          .containsExactly(new double[] {44, y + 4}, within(Picture.PX));
    }
    Element name = picture.words("turn, deg");
    assertThat(Picture.place(name)).containsExactly(new double[] {14, 120}, within(Picture.PX));
    assertThat(name.getAttribute("transform")).isEqualTo("rotate(-90 14.0 120.0)");
  }

  @ParameterizedTest(name = "to {0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {"3|0 1 2 3", "1|0 0.5 1", "0.3|0 0.1 0.2 0.3", "0.06|0 0.02 0.04 0.06"})
  void aNumberAtAnAxisHasTheDecimalsItNeeds(double high, String expected) {
    // Given: whole numbers, tenths, hundredths. Expect: none, one, two decimals; zero is "0".
    Drawing drawing = drawing();
    new Frame(50, 20, 400, 200, 0, high, 0, 1)
        .axisX(drawing, Words.english(), "", 1, high == 1 ? 2 : 3);
    String words = String.join(" ", Picture.of(drawing.done()).words()).strip();
    assertThat(words).isEqualTo(expected);
  }
}
