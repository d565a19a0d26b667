package steadyturn.fusion.attitude;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** The numbers of this room against their sources, in constants.csv. */
class AttitudeConstantsTest {

  @ParameterizedTest(name = "{0} is {1} {2}")
  @CsvFileSource(resources = "constants.csv")
  void theConstantIsThatOfItsSource(
      String id, double value, String unit, double tolerance, String source) {
    assertThat(source).as(id + " has a source").isNotBlank();
    assertThat(unit).isNotBlank();
    assertThat(value(id)).as(id).isCloseTo(value, within(tolerance));
  }

  private static double value(String id) {
    LevelTrack.Spreads raw = LevelTrack.Spreads.RAW;
    LevelTrack.Spreads calibrated = LevelTrack.Spreads.CALIBRATED;
    return switch (id) {
      case "raw-tilt-sd" -> Math.toDegrees(raw.tiltRad());
      case "raw-bias-sd" -> Math.toDegrees(raw.biasRadPerS());
      case "raw-scale-sd" -> raw.scale();
      case "calibrated-tilt-sd" -> Math.toDegrees(calibrated.tiltRad());
      case "calibrated-bias-sd" -> Math.toDegrees(calibrated.biasRadPerS());
      case "calibrated-scale-sd" -> calibrated.scale();
      case "longest-repair" -> PeakRepair.LONGEST_S;
      case "highest-repair" -> PeakRepair.HIGHEST;
      default -> throw new IllegalArgumentException("no constant " + id);
    };
  }
}
