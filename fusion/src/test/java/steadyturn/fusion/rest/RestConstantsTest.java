package steadyturn.fusion.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** The numbers of this room against their sources, in constants.csv. */
class RestConstantsTest {

  @ParameterizedTest(name = "{0} is {1} {2}")
  @CsvFileSource(resources = "constants.csv")
  void theConstantIsThatOfItsSource(
      String id, double value, String unit, double tolerance, String source) {
    assertThat(source).as(id + " has a source").isNotBlank();
    assertThat(unit).isNotBlank();
    String[] words = id.split("-", 2);
    RestSettings rest = words[0].equals("address") ? RestSettings.address() : RestSettings.finish();
    double found =
        switch (words[1]) {
          case "window" -> rest.windowS();
          case "rate" -> Math.toDegrees(rest.rateRmsRadPerS());
          case "accel" -> rest.accelSdMps2();
          case "minimum" -> rest.minimumS();
          case "longest" -> rest.longestS();
          default -> throw new IllegalArgumentException("no constant " + id);
        };
    assertThat(found).as(id).isCloseTo(value, within(tolerance));
  }
}
