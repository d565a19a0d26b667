package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import steadyturn.analysis.coach.teaching.GoodBand;
import steadyturn.analysis.compare.GroupSummary;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.paper.Ink;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.cli.words.Words;

/** A measure from lesson to lesson, by hand: -30 and -40 deg, good from -62 to -40. */
class LessonLineTest {

  private static final MeasureAt TURN = new MeasureAt(Measure.PELVIS_TURN, "top");

  private static GroupSummary mean(int count, double mean) {
    return new GroupSummary("lesson", count, 0, mean, 2, 1, 0.5, Map.of("lesson", 1.0));
  }

  private static Picture drawn(GroupSummary... means) {
    Amounts amounts = new Amounts(LengthUnits.METRIC, Audience.TEACHER, Words.english());
    LessonLine line = new LessonLine(TURN, List.of(means), Optional.of(new GoodBand(-62, -40)));
    return Picture.of(line.draw("turn", "alt", amounts, Words.english()));
  }

  @Test
  void aRangeReachesHalfItsWidthToEitherSideOfItsMean() {
    // Given: two lessons of five swings. Expect: the picture's scale from the two dots, 10 deg
    // apart; each range its half-width above and below its dot; the good band where -40 and -62
    // lie, the later lesson to the right.
    GroupSummary first = mean(5, -30);
    Picture picture = drawn(first, mean(5, -40));
    List<Element> dots = picture.all("circle");
    double pxPerDeg = (Picture.dot(dots.get(1))[1] - Picture.dot(dots.get(0))[1]) / 10;
    assertThat(pxPerDeg).isPositive();
    double[] range = Picture.line(picture.all("line", "stroke", Ink.QUIET).get(0));
    double[] at = Picture.dot(dots.get(0));
    double half = first.halfWidthOfMean() * pxPerDeg;
    assertThat(range)
        .containsExactly(new double[] {at[0], at[1] + half, at[0], at[1] - half}, within(0.3));
    double[] band = Picture.box(picture.the("rect"));
    assertThat(band[1]).isCloseTo(Picture.dot(dots.get(1))[1], within(0.2));
    assertThat(band[3]).isCloseTo(22 * pxPerDeg, within(0.5));
    assertThat(Picture.dot(dots.get(1))[0]).isGreaterThan(at[0]);
  }

  @Test
  void twoSwingsHaveNoRangeAndNoneNoDot() {
    Picture picture = drawn(mean(2, -30), mean(0, Double.NaN), mean(5, -40));
    assertThat(picture.all("circle")).hasSize(2);
    double[] range = Picture.line(picture.all("line", "stroke", Ink.QUIET).get(0));
    assertThat(range[1]).isEqualTo(range[3]);
  }
}
