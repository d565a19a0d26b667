package steadyturn.ingest.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sample.BodyPoint;

/** Stretches of 0.7 s, each beginning in the middle of the one before; 100 Hz. */
class RestCheckTest {

  private static RestFacts of(SteadyUnit unit) {
    return RestCheck.of(unit.stream(), unit.rateHz);
  }

  @Test
  void aRestShowsWhatWasPutIn() {
    // Given: rates 1, -2 and 2 deg/s, each 0.05 off in turn; specific force (0, 6, 8) m/s^2, each
    // 0.01 off. Expect: a bias of 3 deg/s; spreads root 3 times root 70/69 of the steps; 10 m/s^2.
    SteadyUnit unit =
        SteadyUnit.usual()
            .gyroDegPerS(0, 1, 0.05)
            .gyroDegPerS(1, -2, 0.05)
            .gyroDegPerS(2, 2, 0.05)
            .accel(1, 6, 0.01)
            .accel(2, 8, 0.01);
    RestFacts rest = of(unit);
    double root = Math.sqrt(3 * 70 / 69.0);
    assertThat(rest.found()).isTrue();
    assertThat(Math.toDegrees(rest.gyroBiasRadPerS().get(0))).isCloseTo(1, within(1e-9));
    assertThat(Math.toDegrees(rest.gyroBiasRadPerS().get(1))).isCloseTo(-2, within(1e-9));
    assertThat(Math.toDegrees(rest.gyroBiasNormRadPerS())).isCloseTo(3, within(1e-9));
    assertThat(Math.toDegrees(rest.gyroNoiseRadPerS())).isCloseTo(0.05 * root, within(1e-9));
    assertThat(rest.accelNoiseMps2()).isCloseTo(0.01 * root, within(1e-9));
    assertThat(rest.accelNormMps2()).isCloseTo(10, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"70, 0.7", "104, 0.7", "105, 1.05", "140, 1.4", "2000, 19.95"})
  void theLengthIsThatOfTheStretchesLaidOverOneAnother(int samples, double totalS) {
    // n samples hold 1 + floor((n - 70) / 35) stretches; the first is 0.7 s, each other adds 0.35.
    assertThat(of(new SteadyUnit(BodyPoint.PELVIS, 100, samples)).totalS())
        .isCloseTo(totalS, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"69, 100", "9, 13"})
  void tooShortOrTooSlowIsNoRest(int samples, double rateHz) {
    RestFacts rest = of(new SteadyUnit(BodyPoint.PELVIS, rateHz, samples));
    assertThat(rest.found()).isFalse();
    assertThat(rest.gyroBiasNormRadPerS()).isNaN();
    assertThat(rest.gyroBiasRadPerS()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"1.71, true", "1.75, false"})
  void aRestTurnsByLessThanThreeDegreesASecond(double degPerS, boolean found) {
    // Three axes of 1.71 or 1.75 deg/s in turn spread by 2.98 and 3.05 deg/s.
    SteadyUnit unit = SteadyUnit.usual();
    for (int axis = 0; axis < 3; axis++) {
      unit.gyroDegPerS(axis, 0, degPerS);
    }
    assertThat(of(unit).found()).isEqualTo(found);
  }

  @ParameterizedTest
  @CsvSource({"0.34, true", "0.35, false"})
  void aRestIsPushedByLessThanSixTenths(double mps2, boolean found) {
    // Three axes spread by 0.593 and 0.611 m/s^2.
    SteadyUnit unit = SteadyUnit.usual();
    for (int axis = 0; axis < 3; axis++) {
      unit.accel(axis, 5, mps2);
    }
    assertThat(of(unit).found()).isEqualTo(found);
  }

  @ParameterizedTest
  @CsvSource({"12, 15.9, true", "12, 16.1, false", "-12, -16.1, false"})
  void aSteadyTurnIsNoBias(double x, double y, boolean found) {
    SteadyUnit unit = SteadyUnit.usual().gyroDegPerS(0, x, 0.05).gyroDegPerS(1, y, 0.05);
    assertThat(of(unit).found()).isEqualTo(found);
  }

  @ParameterizedTest
  @CsvSource({"0.13, 0.7", "0.16, 0"})
  void aStretchWithAGapInItIsNoRest(double gapS, double totalS) {
    // Given: 70 samples, 0.69 s, and a gap in the middle. Expect: a rest while it lasts less than
    // 1.2 x 0.7 s.
    SteadyUnit unit = new SteadyUnit(BodyPoint.PELVIS, 100, 70).later(35, gapS);
    assertThat(of(unit).totalS()).isCloseTo(totalS, within(1e-9));
  }

  @Test
  void aStretchWithALostValueIsNoRest() {
    SteadyUnit unit = new SteadyUnit(BodyPoint.PELVIS, 100, 70);
    unit.accel[1][40] = Double.NaN;
    assertThat(of(unit).found()).isFalse();
  }

  @Test
  void noiseAndBiasComeFromTheQuietestTenthAndGravityFromTheMiddle() {
    // Given: 20 s, of which the first 1.05 s (two stretches of 56) are quieter and biased by 1
    // deg/s, the rest louder without bias; and gravity 9.7 in the first 6 s, 9.9 after.
    SteadyUnit unit = SteadyUnit.usual();
    Arrays.setAll(unit.gyro[0], i -> Math.toRadians(i < 245 ? 1 + 0.02 * side(i) : 0.5 * side(i)));
    Arrays.setAll(unit.accel[2], i -> (i < 600 ? 9.7 : 9.9) + 0.01 * side(i));
    RestFacts rest = of(unit);
    assertThat(Math.toDegrees(rest.gyroBiasRadPerS().get(0))).isCloseTo(1, within(1e-9));
    assertThat(Math.toDegrees(rest.gyroNoiseRadPerS()))
        .isCloseTo(Math.sqrt((2 * 0.05 * 0.05 + 0.02 * 0.02) * 70 / 69), within(1e-9));
    assertThat(rest.accelNormMps2()).isCloseTo(9.9, within(1e-9));
  }

  @Test
  void theBiasIsTheMeanOfTheQuietestTenth() {
    // Given: of 56 stretches two quietest biased by 1 deg/s, three little louder ones by 2, the
    // rest
    // loud without bias. Expect: five are a tenth, 1.6 deg/s.
    SteadyUnit unit = SteadyUnit.usual();
    Arrays.setAll(
        unit.gyro[0],
        i ->
            Math.toRadians(
                i < 105 ? 1 + 0.02 * side(i) : i < 245 ? 2 + 0.03 * side(i) : 0.7 * side(i)));
    assertThat(Math.toDegrees(of(unit).gyroBiasRadPerS().get(0))).isCloseTo(1.6, within(1e-9));
  }

  private static int side(int i) {
    return i % 2 == 0 ? 1 : -1;
  }
}
