package steadyturn.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class TypicalErrorTest {

  /** First reading large minus first reading mini meter of 17 people; from memory. */
  private static final double[] PEAK_FLOW = {
    -18, -35, -4, 6, -24, -43, 49, 62, -8, -12, -15, 30, 7, 1, -81, 73, -24
  };

  @ParameterizedTest(name = "{0}: {2} = {3} {4}")
  @CsvFileSource(resources = "checks.csv", numLinesToSkip = 1)
  void publishedFormsGiveTheirWorkedNumbers(
      String id, String given, String measure, double expect, String unit, double tolerance) {
    // Given, expected and tolerance, with the reason and the source: see the table.
    assertThat(worked(given, measure)).isCloseTo(expect, within(tolerance));
  }

  private static double worked(String given, String measure) {
    double sem = TypicalError.fromCorrelation(6, 0.90);
    double mean = Arrays.stream(PEAK_FLOW).average().orElseThrow();
    double spread = TypicalError.spread(PEAK_FLOW);
    return switch (measure) {
      case "sem" -> sem;
      case "mdc" -> TypicalError.detectableChange(sem);
      case "mean" -> mean;
      case "spread" -> spread;
      case "limit-low" -> mean - 2 * spread;
      case "limit-high" -> mean + 2 * spread;
      case "typical" ->
          given.startsWith("SDdiff")
              ? TypicalError.ofSpreadOfDifferences(4.2, 20).value()
              : TypicalError.ofDifferences(PEAK_FLOW).value();
      default -> throw new IllegalArgumentException(measure);
    };
  }

  @Test
  void aChangeCommonToAllPairsDropsOutOfTheTypicalError() {
    // Given: second trial = first + 10 + (1, -1, 1, -1). Expect: SD of differences sqrt(4/3), over
    // sqrt 2. Within 1e-12: a handful of roundings.
    var error = TypicalError.ofDifferences(new double[] {11, 9, 11, 9});
    assertThat(error.value()).isCloseTo(Math.sqrt(4.0 / 3) / Math.sqrt(2), within(1e-12));
  }

  @Test
  void groupsArePooledAboutTheirOwnMeans() {
    // Given: spreads 2 (5 swings) and 4 (3 swings), means far apart. Expect: sqrt((4*4+2*16)/6).
    // Within 1e-12: a handful of roundings.
    var pooled =
        TypicalError.pooled(List.of(group(5, -45, 2), group(3, -60, 4), group(1, 0, Double.NaN)));
    assertThat(pooled.orElseThrow().value()).isCloseTo(Math.sqrt(8), within(1e-12));
    assertThat(pooled.orElseThrow().freedom()).isEqualTo(6);
  }

  @Test
  void theIntervalOfATypicalErrorIsTheChiSquareOne() {
    // Given: spread 1 with 9 degrees of freedom. Expect: 0.688 to 1.826, from the printed quantiles
    // 19.023 and 2.700 of chi-square. Within 0.0005: quantiles printed to three places.
    var error = TypicalError.ofSpreadOfDifferences(Math.sqrt(2), 9);
    assertThat(error.low()).isCloseTo(Math.sqrt(9 / 19.023), within(0.0005));
    assertThat(error.high()).isCloseTo(Math.sqrt(9 / 2.700), within(0.0005));
  }

  @Test
  void oneDifferenceIsNotEnough() {
    assertThatThrownBy(() -> TypicalError.ofDifferences(new double[] {1}))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("got 1");
  }

  private static GroupSummary group(int count, double mean, double spread) {
    return new GroupSummary("g", count, 0, mean, spread, 0, 0, Map.of("lesson", 1.0));
  }
}
