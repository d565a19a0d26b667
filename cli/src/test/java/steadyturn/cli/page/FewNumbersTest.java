package steadyturn.cli.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import steadyturn.analysis.coach.Certainty;
import steadyturn.analysis.coach.Evidence;
import steadyturn.analysis.coach.RuleFinding;
import steadyturn.analysis.coach.teaching.Need;
import steadyturn.analysis.coach.teaching.Rule;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.coach.teaching.TeachingReader;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.page.paper.Ink;
import steadyturn.ingest.sample.Handedness;

/** The few numbers that matter, by hand: an axis of 292 px, a fifth of the ends as room. */
class FewNumbersTest {

  private static final Teaching TEACHING = TeachingReader.shipped();

  private static RuleFinding finding(String name, double value, double low, double high) {
    Rule rule =
        Stream.concat(TEACHING.findings().stream(), TEACHING.good().stream())
            .filter(r -> r.name().equals(name))
            .findFirst()
            .orElseThrow();
    return new RuleFinding(
        rule,
        Certainty.YES,
        rule.when().stream().map(need -> evidence(need, value, low, high)).toList(),
        List.of(),
        OptionalInt.empty());
  }

  private static Evidence evidence(Need need, double value, double low, double high) {
    return new Evidence(
        need, TEACHING.limit(need.limit()), value, low, high, Certainty.YES, OptionalInt.empty());
  }

  private static Picture strip(Html html) {
    String all = html.toString();
    return Picture.of(
        new Html().raw(all.substring(all.indexOf("<svg"), all.indexOf("</svg>") + 6)));
  }

  private static Pen pen(Handedness handed) {
    return new DrawnLesson(handed).pen();
  }

  @Test
  void aFindingLiesOutsideWhatIsHatched() {
    // Given: turn -30 (-34 to -26) deg, limit -36, so the axis runs from -38 to -24: 292 px over 14
    // deg. Expect: dot and range in their places, hatched from the left end to the limit.
    Html html = FewNumbers.against(pen(Handedness.RIGHT), finding("little-turn", -30, -34, -26));
    Picture strip = strip(html);
    double px = 292 / 14.0;
    assertThat(Picture.dot(strip.the("circle"))[0]).isCloseTo(4 + 8 * px, within(Picture.PX));
    Element range = strip.the("line", "stroke", Ink.DARK);
    assertThat(Picture.line(range))
        .containsExactly(new double[] {4 + 4 * px, 14, 4 + 12 * px, 14}, within(Picture.PX));
    assertThat(Picture.box(strip.the("rect")))
        .containsExactly(new double[] {4, 4, 2 * px, 20}, within(2 * Picture.PX));
    assertThat(Picture.place(strip.words("−36"), 0)).isCloseTo(4 + 2 * px, within(Picture.PX));
    assertThat(html.toString())
        .contains("<strong>−30.0 deg</strong>", "(−34.0 to −26.0); limit −36 deg");
  }

  @Test
  void whatIsGoodLiesBetweenItsLimits() {
    // Given: turn -48 (-50 to -46), good from -62 to -40: the axis runs from -66.4 to -35.6.
    Picture strip =
        strip(
            FewNumbers.within(pen(Handedness.RIGHT), List.of(finding("full-turn", -48, -50, -46))));
    double px = 292 / 30.8;
    assertThat(Picture.box(strip.the("rect")))
        .containsExactly(new double[] {4 + 4.4 * px, 4, 22 * px, 20}, within(2 * Picture.PX));
    assertThat(Picture.dot(strip.the("circle"))[0]).isCloseTo(4 + 18.4 * px, within(Picture.PX));
  }

  @Test
  void theTargetLiesOnTheSideOfThePictureFromAbove() {
    // Given: slide -70 (-80 to -60) mm, limit -50: axis from -86 to -44. Expect: the target on the
    // left of a right-handed player's strip, so that -70 lies right of the limit; mirrored for the
    // left-handed.
    RuleFinding away = finding("slides-away", -70, -80, -60);
    double px = 292 / 42.0;
    Picture right = strip(FewNumbers.against(pen(Handedness.RIGHT), away));
    Picture left = strip(FewNumbers.against(pen(Handedness.LEFT), away));
    assertThat(Picture.dot(right.the("circle"))[0]).isCloseTo(4 + 26 * px, within(Picture.PX));
    assertThat(Picture.dot(left.the("circle"))[0]).isCloseTo(4 + 16 * px, within(Picture.PX));
    assertThat(Picture.place(right.words("← target"), 0)).isEqualTo(4);
    assertThat(Picture.place(left.words("target →"), 0)).isEqualTo(296);
  }

  @Test
  void aRangeWithoutAnEndIsNotDrawn() {
    double endless = Double.NEGATIVE_INFINITY;
    Html html = FewNumbers.against(pen(Handedness.RIGHT), finding("little-turn", -30, endless, 0));
    assertThat(html.toString()).contains("Turn at the top").doesNotContain("<svg");
    assertThat(FewNumbers.within(pen(Handedness.RIGHT), List.of()).toString()).isEmpty();
  }
}
