package steadyturn.analysis.measure;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecimalsTest {

  @Test
  void aValueHasThreeDecimalsAndATimeFive() {
    assertThat(Decimals.OF_VALUE).isEqualTo(3);
    assertThat(Decimals.OF_TIME_S).isEqualTo(5);
  }

  @ParameterizedTest
  @CsvSource({
    "1.0004, 3, 1",
    "1.0005, 3, 1.001",
    "-1.0005, 3, -1.001",
    "-1.00049, 3, -1",
    "2.5, 0, 3",
    "-0.0004, 3, 0",
    "0, 3, 0",
    "-0.0, 3, 0",
    "120, 3, 120",
    "1e7, 3, 10000000",
    "1.5e-7, 3, 0",
    "2.539004, 5, 2.539",
    "2.539006, 5, 2.53901",
    "NaN, 3, n/a",
    "Infinity, 3, n/a",
    "-Infinity, 3, n/a"
  })
  void aCellIsPlainRoundedHalfUpAndNeverMinusZero(double number, int decimals, String cell) {
    assertThat(Decimals.cell(number, decimals)).isEqualTo(cell);
  }
}
