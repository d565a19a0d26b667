package steadyturn.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Groups whose only spread is the error that a lesson shares, so that everything is normal: tables
 * of the normal distribution give the ends (1.959964, 2.575829, tails of 0.05 and 0.01 in both).
 */
class MeanDifferenceTest {

  private static GroupSummary group(
      double mean, double sharedError, Map<String, Double> lessonParts) {
    return new GroupSummary("g", 5, 0, mean, 0, 0, sharedError, lessonParts);
  }

  @Test
  void betweenTwoLessonsBothErrorsCount() {
    // Given: 10 and 22, errors of 3 and 4 in lessons of their own. Expect: 12 with an SD of 5.
    MeanDifference d =
        MeanDifference.of(
            group(10, 3, Map.of("a", 1.0)), group(22, 4, Map.of("b", 1.0)), 0.1, 15, 0.01);
    assertThat(d.value()).isEqualTo(12);
    assertThat(d.low()).isCloseTo(12 - 1.959964 * 5, within(1e-4));
    assertThat(d.high()).isCloseTo(12 + 1.959964 * 5, within(1e-4));
    assertThat(d.chance()).isCloseTo(2 * 0.008197536, within(1e-6)); // beyond 2.4 SD
    assertThat(d.beyondMargin()).isCloseTo(0.274253118, within(1e-6)); // 0.6 SD
    assertThat(d.detectable()).isCloseTo(2.575829 * 5, within(1e-4));
  }

  @Test
  void aDifferenceTheOtherWayIsJudgedAlike() {
    MeanDifference d =
        MeanDifference.of(
            group(22, 3, Map.of("a", 1.0)), group(10, 4, Map.of("b", 1.0)), 0.1, 15, 0.01);
    assertThat(d.value()).isEqualTo(-12);
    assertThat(d.chance()).isCloseTo(2 * 0.008197536, within(1e-6));
    assertThat(d.beyondMargin()).isCloseTo(0.274253118, within(1e-6));
    assertThat(d.high()).isCloseTo(-12 + 1.959964 * 5, within(1e-4));
  }

  @Test
  void noDifferenceHasAChanceOfOne() {
    MeanDifference d =
        MeanDifference.of(
            group(10, 3, Map.of("a", 1.0)), group(10, 4, Map.of("b", 1.0)), 0.1, 5, 0.05);
    assertThat(d.chance()).isCloseTo(1, within(1e-8));
    assertThat(d.beyondMargin()).isCloseTo(0.158655254, within(1e-6)); // 1 SD
  }

  @ParameterizedTest(name = "{0} of the first, {1} of the second in lesson a, leftover {2}")
  @CsvSource({
    // parts: (pa - pb)^2 + (leftover min)^2, summed over the lessons; times (9 + 16)/2
    "1,   1,   0,   0",
    "1,   1,   0.1, 0.125",
    "1,   0,   0.1, 25",
    "0.5, 0.5, 0.1, 0.0625",
    "0.5, 1,   0,   6.25",
    "0.5, 1,   0.2, 6.375",
    "1,   0.5, 0.2, 6.375"
  })
  void withinALessonOnlyTheLeftoverStays(double pa, double pb, double leftover, double variance) {
    assertThat(
            MeanDifference.sharedVariance(
                group(0, 3, Map.of("a", pa, "b", 1 - pa)),
                group(0, 4, Map.of("a", pb, "b", 1 - pb)),
                leftover))
        .isCloseTo(variance, within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({
    "0.5, 1.5, REAL_BUT_SMALL, real-but-small",
    "-1.5, -0.5, REAL_BUT_SMALL, real-but-small",
    "0.5, 2.5, REAL, real",
    "-2.5, -0.5, REAL, real",
    "-0.5, 1.5, SAME, same",
    "0, 1.5, SAME, same",
    "-2.5, 1.5, NOT_SHOWN, not-shown",
    "-0.5, 2, NOT_SHOWN, not-shown"
  })
  void aVerdictSaysWhatTheRangeShows(
      double low, double high, ComparisonVerdict verdict, String word) {
    // Given: a range and a margin of 2. Expect: real where zero lies outside, same inside 2.
    MeanDifference d = new MeanDifference((low + high) / 2, low, high, 0, 0, 0);
    assertThat(ComparisonVerdict.of(d, 2)).isEqualTo(verdict);
    assertThat(verdict.word()).isEqualTo(word);
  }

  @Test
  void aMeanOfNSwingsVariesANthAsMuchAndNeverLessThanItsOwnError() {
    GroupSummary loud = new GroupSummary("g", 4, 0, 0, 6, 2, 0, Map.of("", 1.0));
    assertThat(loud.varianceOfMean()).isEqualTo(9);
    GroupSummary quiet = new GroupSummary("g", 4, 0, 0, 1, 2, 0, Map.of("", 1.0));
    assertThat(quiet.varianceOfMean()).isEqualTo(1);
    assertThat(quiet.withCount(16).varianceOfMean()).isEqualTo(0.25);
  }

  @Test
  void theHalfWidthOfAMeanIsStudentsAndHoldsWhatItsSwingsShare() {
    // Given: a spread of 6 over 4 swings, so 3 of the mean with 3 degrees of freedom. Expect:
    // 3.182446 x 3 (t table). Given: only a shared error of 5 in one lesson, or half in each of
    // two:
    // 1.959964 x 5, and that over root 2. Within 0.3 %: the quadrature.
    GroupSummary loud = new GroupSummary("g", 4, 0, 0, 6, 2, 0, Map.of("", 1.0));
    assertThat(loud.halfWidthOfMean() / (3 * 3.182446)).isCloseTo(1, within(0.003));
    assertThat(group(0, 5, Map.of("a", 1.0)).halfWidthOfMean()).isCloseTo(9.79982, within(1e-4));
    assertThat(group(0, 5, Map.of("a", 0.5, "b", 0.5)).halfWidthOfMean())
        .isCloseTo(9.79982 / Math.sqrt(2), within(1e-4));
  }
}
