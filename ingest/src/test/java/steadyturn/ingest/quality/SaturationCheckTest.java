package steadyturn.ingest.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Ranges of 100 m/s^2 and 30 rad/s, 100 Hz; 2 g are 19.6133 m/s^2. */
class SaturationCheckTest {

  private static SteadyUnit unit() {
    return SteadyUnit.usual().ranges(100, 30);
  }

  private static Saturation of(SteadyUnit unit) {
    return SaturationCheck.of(unit.stream(), 100);
  }

  @ParameterizedTest
  @CsvSource({"99.91, 1", "-99.91, 1", "99.89, 0", "-99.89, 0", "120, 1"})
  void theEndOfTheRangeBeginsAThousandthBeforeIt(double mps2, int samples) {
    for (int axis = 0; axis < 3; axis++) {
      SteadyUnit unit = unit();
      unit.accel[axis][50] = mps2;
      assertThat(of(unit).accelSamples()).isEqualTo(samples);
      assertThat(of(unit).samples()).isEqualTo(samples);
      assertThat(of(unit).gyroSamples()).isZero();
      SteadyUnit turned = unit();
      turned.gyro[axis][50] = 0.3 * mps2;
      assertThat(of(turned).gyroSamples()).isEqualTo(samples);
      assertThat(of(turned).accelSamples()).isZero();
    }
  }

  @Test
  void samplesAndTheLongestStretchAreCounted() {
    // Given: acceleration at its end for 3 and 5 samples, rate for 2 of the latter and 4 others.
    SteadyUnit unit = unit();
    for (int i = 0; i < 3; i++) {
      unit.accel[0][100 + i] = 100;
    }
    for (int i = 0; i < 5; i++) {
      unit.accel[i % 3][200 + i] = -100;
    }
    for (int i = 3; i < 9; i++) {
      unit.gyro[2][200 + i] = 30;
    }
    Saturation found = of(unit);
    assertThat(found.accelSamples()).isEqualTo(8);
    assertThat(found.gyroSamples()).isEqualTo(6);
    assertThat(found.samples()).isEqualTo(12);
    assertThat(found.longestAccelS()).isCloseTo(0.05, within(1e-12));
    assertThat(found.longestGyroS()).isCloseTo(0.06, within(1e-12));
    assertThat(found.accelFullScaleMps2()).isEqualTo(100);
    assertThat(found.gyroFullScaleRadPerS()).isEqualTo(30);
  }

  @ParameterizedTest(name = "{0} m/s^2 for {1} samples: {2}")
  @CsvSource({
    "40, 3, 40",
    "40, 2, Infinity",
    "-40, 3, 40",
    "40, 50, 40",
    "40, 51, Infinity",
    "19.3, 3, 19.3",
    "19.1, 3, Infinity"
  })
  void anUnstatedRangeIsAFlatTop(double mps2, int samples, double found) {
    // Three samples or more, half a second (50) at the most; from 0.98 x 2 g = 19.22 m/s^2 on.
    SteadyUnit unit = SteadyUnit.usual();
    for (int i = 0; i < samples; i++) {
      unit.accel[1][300 + i] = mps2;
    }
    assertThat(of(unit).accelFullScaleMps2()).isEqualTo(found);
    assertThat(of(unit).gyroFullScaleRadPerS()).isInfinite();
    assertThat(of(unit).accelSamples()).isEqualTo(Double.isInfinite(found) ? 0 : samples);
  }

  @ParameterizedTest
  @CsvSource({"121, 121", "-121, 121", "119, Infinity"})
  void aFlatTopOfRatesCountsFrom120DegreesASecond(double degPerS, double found) {
    SteadyUnit unit = SteadyUnit.usual();
    for (int i = 0; i < 3; i++) {
      unit.gyro[0][300 + i] = Math.toRadians(degPerS);
    }
    assertThat(Math.toDegrees(of(unit).gyroFullScaleRadPerS())).isCloseTo(found, within(1e-9));
  }

  @Test
  void theSmallestFlatTopIsTheRangeAndOnlyTheLargestValueIsATop() {
    SteadyUnit unit = SteadyUnit.usual();
    for (int i = 0; i < 3; i++) {
      unit.accel[0][300 + i] = 50;
      unit.accel[1][300 + i] = -40;
      unit.accel[2][300 + i] = 30;
    }
    unit.accel[2][400] = 60; // axis z shows more, so 30 is no end of its range
    assertThat(of(unit).accelFullScaleMps2()).isEqualTo(40);
  }

  @ParameterizedTest
  @CsvSource({"39.9994, 40", "39.998, Infinity"})
  void halfAStepOfSixteenBitsIsTheSame(double other, double found) {
    // 2e-5 of 40 are 0.0008 m/s^2.
    SteadyUnit unit = SteadyUnit.usual();
    unit.accel[0][300] = 40;
    unit.accel[0][301] = other;
    unit.accel[0][302] = 40;
    assertThat(of(unit).accelFullScaleMps2()).isEqualTo(found);
  }

  @Test
  void withoutARateAStretchHasNoLength() {
    SteadyUnit unit = unit();
    unit.accel[0][5] = 100;
    assertThat(SaturationCheck.of(unit.stream(), 0).longestAccelS()).isZero();
  }
}
