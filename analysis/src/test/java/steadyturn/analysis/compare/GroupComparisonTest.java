package steadyturn.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.reason.Reason;

class GroupComparisonTest {

  private static final MeasureAt TURN_AT_TOP = new MeasureAt(Measure.PELVIS_TURN, "top");
  private static final List<MeasureAt> LOOKS = List.of(TURN_AT_TOP);

  @Test
  void countMeanAndSpreadAreThoseOfTheSchoolbook() {
    // Given: 1, 2, 3, 6. Expect: mean 3, spread sqrt(14/3). Within 1e-12: a few roundings.
    var row = compare(turns("a", "monday", 1, 0.1, 1, 2, 3, 6), turns("b", "monday", 2, 0.1, 1, 2));
    assertThat(row.first().count()).isEqualTo(4);
    assertThat(row.first().mean()).isCloseTo(3, within(1e-12));
    assertThat(row.first().spread()).isCloseTo(Math.sqrt(14.0 / 3), within(1e-12));
  }

  @Test
  void underThreeSwingsNothingIsSaid() {
    var row = compare(turns("a", "monday", 1, 0.1, 1, 2, 3, 6), turns("b", "monday", 2, 0.1, 1, 2));
    assertThat(row.verdict()).isEqualTo(ComparisonVerdict.TOO_FEW_SWINGS);
    assertThat(row.difference()).isEmpty();
  }

  @Test
  void theDifferenceIsSecondMinusFirst() {
    var row =
        compare(
            turns("a", "monday", 1, 0.1, -40, -41, -42),
            turns("b", "monday", 1, 0.1, -50, -51, -52));
    assertThat(row.difference().orElseThrow().value()).isCloseTo(-10, within(1e-12));
    assertThat(row.verdict()).isEqualTo(ComparisonVerdict.REAL);
  }

  @Test
  void withinOneLessonTheSharedErrorCancelsAndBetweenLessonsItDoesNot() {
    // Given: the same numbers, each with an interval of 5 deg (1 SD), 80 % of its variance shared.
    // Expect: between lessons the shared variance counts twice, 2 x 0.8 x 25; within one lesson a
    // hundredth of 0.8 x 25 stays. Within 1e-9: roundings.
    var a = turns("a", "monday", 1, 5, -40, -41, -42, -43);
    var same = summaries(a, turns("b", "monday", 1, 5, -44, -45, -46, -47));
    var apart = summaries(a, turns("b", "friday", 1, 5, -44, -45, -46, -47));
    assertThat(MeanDifference.sharedVariance(same.get(0), same.get(1), 0.1))
        .isCloseTo(0.01 * 0.8 * 25, within(1e-9));
    assertThat(MeanDifference.sharedVariance(apart.get(0), apart.get(1), 0.1))
        .isCloseTo(2 * 0.8 * 25, within(1e-9));
  }

  @Test
  void agreementBetterThanTheToolCanSeeIsNotBelieved() {
    // Given: three equal values a side, 0.5 deg apart, each with 2 deg of error of which a
    // part is its own. Expect: not "real", although the spread is zero.
    var row =
        compare(
            turns("a", "monday", 1, 2, -40, -40, -40),
            turns("b", "monday", 4, 2, -40.5, -40.5, -40.5));
    assertThat(row.first().spread()).isZero();
    assertThat(row.verdict()).isEqualTo(ComparisonVerdict.NOT_SHOWN);
  }

  @Test
  void aTinyButCertainDifferenceIsCalledRealAndSmall() {
    var row =
        compare(
            turns("a", "monday", 1, 0.1, -40.0, -40.1, -40.2, -40.1),
            turns("b", "monday", 5, 0.1, -41.0, -41.1, -41.2, -41.1));
    assertThat(row.verdict()).isEqualTo(ComparisonVerdict.REAL_BUT_SMALL);
    assertThat(row.margin()).isEqualTo(2);
  }

  @Test
  void withheldAndOpenEndedValuesAreCountedApart() {
    var values = new ArrayList<>(turns("a", "monday", 1, 0.1, -40, -41, -42).swings());
    values.add(
        swing(
            "monday",
            9,
            MeasureValue.withheld(
                Measure.PELVIS_TURN, "top", Reason.of(MeasureReason.NEEDS_PELVIS))));
    values.add(
        swing(
            "monday",
            10,
            new MeasureValue(
                Measure.PELVIS_TURN,
                "top",
                5,
                1,
                Double.POSITIVE_INFINITY,
                Grade.ESTIMATED,
                Reason.NONE)));
    var summary = GroupSummary.of(new SwingGroup("a", values), TURN_AT_TOP, ErrorSplit.defaults());
    assertThat(summary.count()).isEqualTo(3);
    assertThat(summary.withheld()).isEqualTo(2);
  }

  @Test
  void turnToSlideIsNotComparedButItsTwoGoodFormsAre() {
    assertThatThrownBy(() -> new MeasureAt(Measure.PELVIS_TURN_TO_SLIDE, "top"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("slide-per-turn");
    assertThat(MeasureAt.defaults())
        .contains(
            new MeasureAt(Measure.PELVIS_SLIDE_PER_TURN, "top"),
            new MeasureAt(Measure.PELVIS_TURN_SHARE, "impact"));
  }

  @Test
  void moreRowsAskForStrongerEvidence() {
    // Given: a difference with a chance of about 2 %. Expect: real when it is the only question,
    // not
    // shown among ten.
    var a = turns("a", "monday", 1, 0.1, -40, -41, -42, -43, -44);
    var b = turns("b", "monday", 1, 0.1, -44, -45, -46, -43, -45);
    var alone = GroupComparison.compare(List.of(a, b), LOOKS).rows().get(0);
    var ten = Stream.generate(() -> TURN_AT_TOP).limit(10).toList();
    var among = GroupComparison.compare(List.of(a, b), ten).rows().get(0);
    assertThat(alone.verdict()).isEqualTo(ComparisonVerdict.REAL);
    assertThat(among.verdict()).isEqualTo(ComparisonVerdict.NOT_SHOWN);
    assertThat(among.adjustedChance())
        .isCloseTo(10 * alone.difference().orElseThrow().chance(), within(1e-12));
  }

  @Test
  void aDifferenceIsRealJustWhenItPassesTheDetectableOne() {
    var a = turns("a", "monday", 1, 0.1, -40, -41, -42, -43, -44);
    var b = turns("b", "monday", 1, 0.1, -44, -45, -46, -43, -45);
    var difference = compare(a, b).difference().orElseThrow();
    assertThat(Math.abs(difference.value())).isGreaterThan(difference.detectable());
    var c = turns("c", "monday", 1, 0.1, -42, -43, -44, -41, -43);
    var less = compare(a, c);
    assertThat(less.verdict()).isEqualTo(ComparisonVerdict.NOT_SHOWN);
    assertThat(Math.abs(less.difference().orElseThrow().value()))
        .isLessThan(less.difference().orElseThrow().detectable());
  }

  @Test
  void clubsHitInBlocksAndLessonsApartAreSaid() {
    var a = turns("a", "monday", 1, 0.1, -40, -41, -42);
    assertThat(notices(a, turns("b", "monday", 4, 0.1, -40, -41, -42)).get(0))
        .isEqualTo(Reason.of(CompareReason.IN_BLOCKS, "a", "b"));
    assertThat(notices(a, turns("b", "friday", 4, 0.1, -40, -41, -42)).get(0))
        .isEqualTo(Reason.of(CompareReason.OTHER_LESSONS, "a", "b"));
    assertThat(notices(a, turns("b", "monday", 2, 0.1, -40, -41, -42))).isEmpty();
  }

  @Test
  void oneGroupAloneIsRefused() {
    var a = turns("a", "monday", 1, 0.1, -40, -41, -42);
    assertThatThrownBy(() -> GroupComparison.compare(List.of(a), LOOKS))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("two groups");
  }

  private static ComparisonRow compare(SwingGroup a, SwingGroup b) {
    return GroupComparison.compare(List.of(a, b), LOOKS).rows().get(0);
  }

  private static List<Reason> notices(SwingGroup a, SwingGroup b) {
    return GroupComparison.compare(List.of(a, b), LOOKS).notices();
  }

  private static List<GroupSummary> summaries(SwingGroup a, SwingGroup b) {
    return Stream.of(a, b)
        .map(g -> GroupSummary.of(g, TURN_AT_TOP, new ErrorSplit(Map.of(TURN_AT_TOP, 0.8), 0.1)))
        .toList();
  }

  private static SwingGroup turns(
      String name, String lesson, int firstNumber, double errorDeg, double... turnsDeg) {
    List<LessonSwing> swings = new ArrayList<>();
    for (int i = 0; i < turnsDeg.length; i++) {
      var value =
          MeasureValue.of(
              Measure.PELVIS_TURN, "top", turnsDeg[i], errorDeg, Grade.MEASURED, Reason.NONE);
      swings.add(swing(lesson, firstNumber + i, value));
    }
    return new SwingGroup(name, swings);
  }

  private static LessonSwing swing(String lesson, int number, MeasureValue value) {
    return new LessonSwing(
        lesson,
        new SwingResult(
            number, "7-iron", SwingKind.HIT, List.of(), List.of(), List.of(value), List.of()));
  }
}
