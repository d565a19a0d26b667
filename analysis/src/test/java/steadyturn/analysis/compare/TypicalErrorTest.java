package steadyturn.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class TypicalErrorTest {

  @ParameterizedTest(name = "{0}: {2} = {3} {4}")
  @CsvFileSource(resources = "checks.csv", numLinesToSkip = 1)
  void publishedFormsGiveTheirWorkedNumbers(
      String id, String given, String measure, double expect, String unit, double tolerance) {
    // Given, expected and tolerance, with the reason and the source: see the table.
    assertThat(worked(given, measure)).isCloseTo(expect, within(tolerance));
  }

  private static double worked(String given, String measure) {
    return switch (measure) {
      case "mdc" -> new TypicalError(6 * Math.sqrt(1 - 0.90), 1).detectableChange();
      default -> throw new IllegalArgumentException(given + ": " + measure);
    };
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
    double[] ends = TypicalError.interval(1, 9);
    assertThat(ends[0]).isCloseTo(Math.sqrt(9 / 19.023), within(0.0005));
    assertThat(ends[1]).isCloseTo(Math.sqrt(9 / 2.700), within(0.0005));
  }

  private static GroupSummary group(int count, double mean, double spread) {
    return new GroupSummary("g", count, 0, mean, spread, 0, 0, Map.of("lesson", 1.0));
  }
}
