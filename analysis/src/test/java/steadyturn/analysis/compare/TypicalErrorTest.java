package steadyturn.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
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

  @Test
  void theDetectableChangeIsTheRepeatabilityOfBlandAndAltman() {
    // Given: peak flow of 17 people blown twice into one meter, l/min (Bland and Altman 1986,
    // Statistical methods for assessing agreement between two methods of clinical measurement,
    // Lancet i:307-310, table 1; from memory, its printed SD of the differences of the two methods,
    // 38.8, comes out of the same rows). Expect: their SD of the differences 21.6 and coefficient
    // of repeatability 2 x 21.6 = 43.2, with 1.96 in place of 2. Within 0.1: printed to a tenth.
    int[] once = {
      494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427
    };
    int[] again = {
      490, 397, 512, 401, 470, 611, 415, 431, 638, 429, 420, 633, 275, 492, 165, 372, 421
    };
    List<GroupSummary> people =
        IntStream.range(0, once.length)
            .mapToObj(
                i -> {
                  double spread = Math.abs(once[i] - again[i]) / Math.sqrt(2);
                  return new GroupSummary("g", 2, 0, 0, spread, 0, 0, Map.of("", 1.0));
                })
            .toList();
    TypicalError error = TypicalError.pooled(people).orElseThrow();
    assertThat(error.value() * Math.sqrt(2)).isCloseTo(21.6, within(0.1));
    assertThat(error.detectableChange()).isCloseTo(43.2 * 1.96 / 2, within(0.1));
  }
}
