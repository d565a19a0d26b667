package steadyturn.fusion.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** The numbers of a room against their sources, in the constants.csv beside the test. */
public abstract class ConstantsTable {

  /** The number as the code has it, in the unit of the table. */
  protected abstract double value(String id);

  @ParameterizedTest(name = "{0} is {1} {2}")
  @CsvFileSource(resources = "constants.csv")
  protected void theConstantIsThatOfItsSource(
      String id, double value, String unit, double tolerance, String source) {
    assertThat(source).as(id + " has a source").isNotBlank();
    assertThat(unit).isNotBlank();
    assertThat(value(id)).as(id).isCloseTo(value, within(tolerance));
  }
}
