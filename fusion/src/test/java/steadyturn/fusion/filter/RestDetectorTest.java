package steadyturn.fusion.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** When a unit at 100 Hz counts as resting: 2 deg/s, 0.5 m/s^2, held for 0.7 s. */
class RestDetectorTest {

  private static final double D = Math.toRadians(1);
  private static final double STEP_S = 0.01;
  private final double[] bias = {0.01, -0.02, 0.03};
  private final RestDetector rest = new RestDetector(RestDetectorSettings.laidDown());

  private void still(int samples, double offX, double offY, double offZ, double biasSigma) {
    for (int i = 0; i < samples; i++) {
      rest.take(bias[0] + offX, bias[1] + offY, bias[2] + offZ, 1, 2, 9, STEP_S, bias, biasSigma);
    }
  }

  @Test
  void restBeginsAfterSevenTenthsOfASecond() {
    still(69, 0, 0, 0, 0);
    assertThat(rest.atRest()).isFalse();
    assertThat(rest.stillS()).isCloseTo(0.69, within(1e-9));
    still(2, 0, 0, 0, 0);
    assertThat(rest.atRest()).isTrue();
    still(200, 0, 0, 0, 0);
    assertThat(rest.stillS()).isCloseTo(0.75, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({
    "1.9,0,0,0,true",
    "2.1,0,0,0,false",
    "-2.1,0,0,0,false",
    "0,2.1,0,0,false",
    "0,-1.9,0,0,true",
    "0,0,2.1,0,false",
    "0,0,1.9,0,true",
    "2.9,0,0,0.5,true",
    "3.1,0,0,0.5,false"
  })
  void aMeanBeyondWhatTheBiasCanBeIsMovement(
      double x, double y, double z, double biasSigma, boolean resting) {
    // Expect: the mean rate within 2 deg/s and two sigma of the bias, on each axis.
    still(100, x * D, y * D, z * D, biasSigma * D);
    assertThat(rest.atRest()).isEqualTo(resting);
  }

  @ParameterizedTest
  @CsvSource({"1,0,true", "12,0,false", "0,0.2,true", "0,3,false"})
  void shakingFarFromTheMeanIsMovement(double rateDeg, double force, boolean resting) {
    // Given: a sway of 1 Hz of that size about z, or along x. Expect: less than 2 deg/s and 0.5
    // m/s^2 off the running mean is rest.
    for (int i = 0; i < 300; i++) {
      double sway = Math.sin(2 * Math.PI * 0.01 * i);
      rest.take(
          bias[0], bias[1], bias[2] + rateDeg * D * sway, 1 + force * sway, 2, 9, STEP_S, bias, 0);
    }
    assertThat(rest.atRest()).isEqualTo(resting);
  }

  @ParameterizedTest
  @CsvSource({"11,0,0", "0,-11,0", "0,0,11"})
  void theFirstSampleOfABriskMovementIsNoRestButATapOnlyInterrupts(double x, double y, double z) {
    // Given: one sample more than five thresholds (10 deg/s) off. Expect: not at rest then, at rest
    // again with the next.
    still(200, 0, 0, 0, 0);
    still(1, 0.9 * x * D, 0.9 * y * D, 0.9 * z * D, 0);
    assertThat(rest.atRest()).isTrue();
    still(200, 0, 0, 0, 0);
    still(1, x * D, y * D, z * D, 0);
    assertThat(rest.atRest()).isFalse();
    still(1, 0, 0, 0, 0);
    assertThat(rest.atRest()).isTrue();
  }

  @Test
  void movementEndsARestAtTwentyTimesItsOwnLength() {
    // Given: 2 s of rest, then a turn of 60 deg/s. Expect: within 0.1 s the rest is forgotten.
    still(200, 0, 0, 0, 0);
    still(10, 60 * D, 0, 0, 0);
    assertThat(rest.stillS()).isZero();
    assertThat(rest.atRest()).isFalse();
  }

  @Test
  void aTenthOfASecondMayBeLostButNothingClipped() {
    still(200, 0, 0, 0, 0);
    for (int i = 0; i < 9; i++) {
      rest.takeBad(STEP_S, false);
    }
    assertThat(rest.atRest()).isTrue();
    still(1, 0, 0, 0, 0);
    for (int i = 0; i < 9; i++) {
      rest.takeBad(STEP_S, false);
    }
    assertThat(rest.atRest()).isTrue();
    rest.takeBad(2 * STEP_S, false);
    assertThat(rest.atRest()).isFalse();
    assertThat(rest.stillS()).isZero();
    still(200, 0, 0, 0, 0);
    rest.takeBad(STEP_S, true);
    assertThat(rest.atRest()).isFalse();
  }

  @Test
  void beforeTheFirstSampleThereIsNoRest() {
    assertThat(rest.atRest()).isFalse();
    RestDetectorSettings atOnce = new RestDetectorSettings(0.5, 1, 1, 1, 0, 1, 1);
    assertThat(new RestDetector(atOnce).atRest()).isFalse();
  }
}
