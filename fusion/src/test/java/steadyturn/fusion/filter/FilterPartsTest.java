package steadyturn.fusion.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.fusion.filter.kalman.KalmanSettings;
import steadyturn.fusion.filter.lowpass.LowPassSettings;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.ConstantsTable;
import steadyturn.ingest.sample.StandardGravity;

/** Small parts of the filters in closed form, and their settings against their sources. */
class FilterPartsTest extends ConstantsTable {

  private static final double G = 9.80665;

  @Test
  void theFloorIsAlignmentAndTimingOfAThirdOfTheRateEach() {
    // Given: 0.004 rad, 2 ms, a rate of (1, -2, 2), size 3. Expect: 16e-6 + 4e-6 x 9 / 3.
    assertThat(new SigmaFloor(0.004, 0.002).variance(1, -2, 2)).isCloseTo(28e-6, within(1e-15));
  }

  @Test
  void theComplementaryFilterClosesATiltWithItsTimeConstant() {
    // Given: level for 20 s, then a force leaning by 1 deg about x, time constants of 5 s and a
    // bias too slow to matter. Expect: t later 1 deg x (1 - exp(-t / 5)). Within 1 %.
    ComplementaryFilter filter =
        new ComplementaryFilter(new ComplementarySettings(5, 1e9), SampleLimits.unlimited());
    double lean = Math.toRadians(1);
    for (int i = 0; i < 20_000; i++) {
      filter.update(0, 0, 0, 0, 0, G, 0.001);
    }
    for (int i = 0; i < 4000; i++) {
      filter.update(0, 0, 0, 0, G * Math.sin(lean), G * Math.cos(lean), 0.001);
    }
    Vector3 turned = filter.qEarthUnit().rotationVector();
    assertThat(turned.x()).isCloseTo(lean * (1 - Math.exp(-0.8)), within(0.01 * lean));
    assertThat(turned.y()).isCloseTo(0, within(1e-9));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1})
  void theComplementaryFilterLearnsALevelBiasOfItsOwnAxisAndSign(int axis) {
    // Given: a still, level unit with 0.5 deg/s about one level axis for 10 min. Expect: that bias
    // (integral of the error), within 2 %; its heading sigma half a degree a second.
    ComplementaryFilter filter = ComplementaryFilter.withDefaults();
    double bias = Math.toRadians(0.5);
    for (int i = 0; i < 120_000; i++) {
      filter.update(axis == 0 ? bias : 0, axis == 1 ? bias : 0, 0, 0, 0, G, 0.01);
    }
    assertThat(filter.gyroBiasRadPerS().get(axis)).isCloseTo(bias, within(0.02 * bias));
    assertThat(filter.gyroBiasRadPerS().get(1 - axis)).isCloseTo(0, within(1e-9));
    assertThat(filter.headingSigmaRad()).isCloseTo(bias * 1200, within(0.01 * bias * 1200));
    assertThat(filter.inclinationSigmaRad()).isCloseTo(Math.toRadians(1.5), within(1e-9));
    assertThat(filter.atRest()).isFalse();
  }

  @ParameterizedTest
  @CsvSource({
    "0,0",
    "1,0",
    "2,0",
    "3,-1",
    "4,-1",
    "5,0",
    "6,-1",
    "7,-1",
    "8,0",
    "9,0",
    "10,0",
    "5,Infinity",
    "10,NaN"
  })
  void aKalmanSettingThatCannotBeIsRefused(int which, double value) {
    double[] s = {0.1, 0.1, 0.03, 0, 0, 1e-3, 0, 0, 0.5, 0.5, 0.3};
    assertThat(settings(s).blockS()).isEqualTo(0.1);
    s[which] = value;
    assertThatThrownBy(() -> settings(s)).isInstanceOf(IllegalArgumentException.class);
  }

  private static KalmanSettings settings(double[] s) {
    return new KalmanSettings(
        s[0],
        s[1],
        s[2],
        s[3],
        s[4],
        s[5],
        s[6],
        s[7],
        s[8],
        s[9],
        s[10],
        RestDetectorSettings.worn(),
        SigmaFloor.standard());
  }

  @Override
  protected double value(String id) {
    KalmanSettings k = KalmanSettings.standard();
    LowPassSettings l = LowPassSettings.standard();
    return switch (id) {
      case "standard-gravity" -> StandardGravity.MPS2;
      case "block" -> k.blockS();
      case "start-tilt" -> k.startTiltRad();
      case "start-bias" -> Math.toDegrees(k.startBiasRadPerS());
      case "bias-walk" -> Math.toDegrees(k.biasWalkRadPerSSqrtS());
      case "rate-matrix" -> k.rateMatrixSigma();
      case "rate-noise" -> Math.toDegrees(k.rateNoiseRadPerSqrtS());
      case "turn-noise" -> k.turnNoiseSqrtS();
      case "velocity-noise" -> k.velocityNoiseMpsPerSqrtS();
      case "speed" -> k.speedSigmaMps();
      case "place" -> k.placeSigmaM();
      case "movement-correlation" -> k.movementCorrelationS();
      case "force-time" -> l.forceTimeS();
      case "low-pass-start-bias" -> Math.toDegrees(l.startBiasRadPerS());
      case "low-pass-bias-walk" -> Math.toDegrees(l.biasWalkRadPerSSqrtS());
      case "moving-rate" -> Math.toDegrees(l.movingRateRadPerSqrtS());
      case "largest-tilt-rate" -> Math.toDegrees(l.largestTiltRateRadPerS());
      case "tilt-time" -> ComplementarySettings.standard().tiltTimeS();
      case "bias-time" -> ComplementarySettings.standard().biasTimeS();
      case "floor-alignment" -> Math.toDegrees(SigmaFloor.standard().alignmentRad());
      case "floor-timing" -> SigmaFloor.standard().timingS();
      case "bridge" -> SampleLimits.unlimited().bridgeS();
      case "loss-acceleration" -> SampleLimits.unlimited().angularAccelRadPerS2();
      default -> rest(id);
    };
  }

  private static double rest(String id) {
    RestDetectorSettings r =
        id.startsWith("worn") ? RestDetectorSettings.worn() : RestDetectorSettings.laidDown();
    return switch (id.substring(id.indexOf('-') + 1)) {
      case "smooth" -> r.smoothS();
      case "gyro" -> Math.toDegrees(r.gyroRadPerS());
      case "accel" -> r.accelMps2();
      case "largest-rate" -> Math.toDegrees(r.largestRateRadPerS());
      case "hold" -> r.holdS();
      case "velocity" -> r.velocitySigmaMps();
      case "rate" -> Math.toDegrees(r.rateSigmaRadPerSqrtS());
      default -> throw new IllegalArgumentException("no constant " + id);
    };
  }
}
