package steadyturn.cli.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FixedDecimalsTest {

  private static final long SEED = 20260402;

  private static String written(double number, int decimals) {
    StringBuilder to = new StringBuilder("x\t");
    FixedDecimals.append(to, number, decimals);
    assertThat(to.substring(0, 2)).isEqualTo("x\t");
    return to.substring(2);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 3, 0.000",
    "-0.0, 3, 0.000",
    "-0.0004, 3, 0.000",
    "-0.0006, 3, -0.001",
    "1.5, 0, 2",
    "-1.5, 0, -2",
    "1.05, 1, 1.1",
    "0.007, 4, 0.0070",
    "12.34, 1, 12.3",
    "99.996, 2, 100.00",
    "1, 9, 1.000000000",
    "0.123456789, 9, 0.123456789",
    "999999999, 0, 999999999",
    "-999999999, 0, -999999999",
    "1e9, 0, n/a",
    "-1e9, 0, n/a",
    "NaN, 3, n/a",
    "Infinity, 3, n/a"
  })
  void aNumberHasItsDecimalsAndASignOnlyWhenItIsNotZero(
      double number, int decimals, String expected) {
    assertThat(written(number, decimals)).isEqualTo(expected);
  }

  @Test
  void itAgreesWithTheLibraryWhereNoTieIsInvolved() {
    // Given: 3000 random numbers, seed 20260402. Expect: what BigDecimal writes of the same double,
    // rounded half up away from zero; random doubles lie on no tie.
    Random random = new Random(SEED);
    for (int i = 0; i < 3000; i++) {
      int decimals = i % 8;
      double number = random.nextGaussian() * Math.pow(10, i % 5);
      BigDecimal expected = new BigDecimal(number).setScale(decimals, RoundingMode.HALF_UP);
      String sign = expected.signum() < 0 ? "-" : "";
      assertThat(written(number, decimals))
          .as("%s", number)
          .isEqualTo(sign + expected.abs().toPlainString());
    }
  }
}
