package steadyturn.fusion.attitude;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** The bias of blocks of half a second, each with a mean of its own, at 100 Hz. */
class RestBiasTest {

  private static final Vector3 SKEW = new Vector3(2, -3, 6).times(1 / 7.0);

  /** Block k has this mean, deg/s, along a skew axis, and sways about it by so much RMS. */
  private static UnitStream blocks(double rateHz, double swayDegPerS, double... meansDegPerS) {
    return MadeUnit.of(
        UnitFacts.plain(BodyPoint.PELVIS, rateHz),
        0.5 * meansDegPerS.length,
        t -> {
          int block = Math.min(meansDegPerS.length - 1, (int) ((t + 1e-9) / 0.5));
          double sway = swayDegPerS * Math.sqrt(2) * Math.sin(2 * Math.PI * 10 * t);
          return SKEW.times(Math.toRadians(meansDegPerS[block] + sway));
        },
        t -> Vector3.Z);
  }

  private static double found(UnitStream stream) {
    Vector3 bias = RestBias.of(stream);
    assertThat(bias.minus(SKEW.times(bias.dot(SKEW))).norm()).isLessThan(1e-9);
    return Math.toDegrees(bias.dot(SKEW));
  }

  @ParameterizedTest
  @CsvSource({"4,1,2,2", "-3,5,1,1"})
  void theMedianOfOddlyManyBlocksIsTheMiddleOne(double a, double b, double c, double expected) {
    assertThat(found(blocks(100, 1, a, b, c))).isCloseTo(expected, within(1e-9));
  }

  @Test
  void theMedianOfEvenlyManyBlocksIsTheMeanOfTheMiddleTwo() {
    assertThat(found(blocks(100, 1, 5, 1, 2, 3))).isCloseTo(2.5, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"1.95,3,3", "2.05,3,0", "1,7.9,7.9", "1,8.1,0"})
  void aBlockIsQuietUnderTwoAndItsMeanUnderEightDegreesASecond(
      double sway, double mean, double expected) {
    assertThat(found(blocks(100, sway, mean, mean))).isCloseTo(expected, within(1e-9));
  }

  @Test
  void aLoudBlockAndOneWithALossAreLeftOut() {
    // Given: 3, 20, 4, 6 and 7 deg/s, one value lost in the block of 6. Expect: the middle of 3, 4,
    // 7.
    UnitStream stream = blocks(100, 1, 3, 20, 4, 6, 7);
    stream.gyroColumnRadPerS(1)[170] = Double.NaN;
    assertThat(found(stream)).isCloseTo(4, within(1e-9));
  }

  @Test
  void underSixteenSamplesABlockSaysNothing() {
    assertThat(found(blocks(34, 0, 3, 3, 3))).isCloseTo(3, within(1e-9));
    assertThat(found(blocks(30, 0, 3, 3, 3))).isZero();
  }

  @Test
  void everyUnitHasItsOwn() {
    Recording recording =
        new Recording(
            "made",
            Player.unmeasured("p", Handedness.RIGHT),
            List.of(blocks(100, 1, 3, 3)),
            List.of());
    RestBiases biases = RestBiases.of(recording);
    assertThat(Math.toDegrees(biases.radPerS(BodyPoint.PELVIS).norm())).isCloseTo(3, within(1e-9));
    assertThat(biases.radPerS(BodyPoint.THORAX)).isEqualTo(Vector3.ZERO);
  }
}
