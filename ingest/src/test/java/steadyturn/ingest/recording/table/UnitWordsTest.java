package steadyturn.ingest.recording.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Factors by definition: the prefixes of the SI (BIPM 2019, table 7), standard gravity 9.80665
 * m/s^2 (3rd CGPM, 1901), a degree pi/180 rad, a minute 60 s. Within 1e-15 of the factor: one
 * rounding.
 */
class UnitWordsTest {

  private static void expect(OptionalDouble found, double factor) {
    assertThat(found.orElseThrow()).isCloseTo(factor, within(1e-15 * factor));
  }

  @ParameterizedTest
  @CsvSource({
    "s, 1",
    "S, 1",
    "sec, 1",
    "seconds, 1",
    "ms, 1e-3",
    "milliseconds, 1e-3",
    "us, 1e-6",
    "µs, 1e-6",
    "μs, 1e-6",
    "microseconds, 1e-6",
    "ns, 1e-9",
    "nanosecond, 1e-9",
    "min, 60",
    "minutes, 60"
  })
  void aTimeIsTakenIntoSeconds(String word, double factor) {
    expect(UnitWords.timeToS(word), factor);
  }

  @ParameterizedTest
  @CsvSource({
    "m/s^2, 1",
    "m/s2, 1",
    "m/s², 1",
    "m s^-2, 1",
    "m·s⁻², 1",
    "m/s**2, 1",
    "g, 9.80665",
    "G, 9.80665",
    "mg, 0.00980665",
    "cm/s^2, 0.01"
  })
  void anAccelerationIsTakenIntoMetresPerSecondSquared(String word, double factor) {
    expect(UnitWords.accelToMps2(word), factor);
  }

  @ParameterizedTest
  @CsvSource({
    "rad/s, 1",
    "rad s^-1, 1",
    "rad·s⁻¹, 1",
    "mrad/s, 0.001",
    "deg/s, 0.017453292519943295",
    "°/s, 0.017453292519943295",
    "º/s, 0.017453292519943295",
    "dps, 0.017453292519943295",
    "degrees/s, 0.017453292519943295",
    "mdps, 1.7453292519943295e-5",
    "mdeg/s, 1.7453292519943295e-5"
  })
  void aRateIsTakenIntoRadiansPerSecond(String word, double factor) {
    expect(UnitWords.rateToRadPerS(word), factor);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "ft", "m", "rad", "deg", "hz", "kg"})
  void whatIsNoUnitHasNoFactor(String word) {
    assertThat(UnitWords.timeToS(word)).isEmpty();
    assertThat(UnitWords.accelToMps2(word)).isEmpty();
    assertThat(UnitWords.rateToRadPerS(word)).isEmpty();
  }
}
