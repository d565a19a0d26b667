package steadyturn.fusion.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** Values from outside, in checks.csv: a row is a proof, and a new one needs no Java. */
class CalibrateChecksTest {

  private static final double[] NINE_POINTS = {892, 809, 823, 798, 671, 644, 883, 903, 677};

  /** The test series of the handbook: n' = 16807 n mod 2147483647 from 1234567890, as a part. */
  private static double[] thousandPoints() {
    double[] values = new double[1000];
    long n = 1234567890L;
    for (int i = 0; i < values.length; i++) {
      values[i] = n / 2147483647.0;
      n = 16807 * n % 2147483647L;
    }
    return values;
  }

  @ParameterizedTest(name = "{0}: {2} of {1} is {3}")
  @CsvFileSource(resources = "checks.csv")
  void theValueIsThatOfTheSource(
      String id, String given, String measure, double expect, String unit, double tolerance) {
    assertThat(unit).as(id).isNotBlank();
    String[] words = given.split(" ", -1);
    double got =
        switch (words[0]) {
          case "nine-points" -> AllanDeviation.overlapping(NINE_POINTS, Integer.parseInt(words[1]));
          case "thousand-points" ->
              AllanDeviation.overlapping(thousandPoints(), Integer.parseInt(words[1]));
          case "latitude-height" ->
              Gravity.atMps2(Double.parseDouble(words[1]), Double.parseDouble(words[2]));
          default -> throw new IllegalArgumentException(id + ": nothing gives " + given);
        };
    assertThat(got).as(id).isCloseTo(expect, within(tolerance * Math.abs(expect)));
  }
}
