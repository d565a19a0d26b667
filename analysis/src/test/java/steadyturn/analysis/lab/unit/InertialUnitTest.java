package steadyturn.analysis.lab.unit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.stat.StatUtils;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

class InertialUnitTest {

  private static final int SEED = 21;
  private static final double RATE_HZ = 500;
  private static final UnitPath STILL =
      (timeS, force, rate) -> {
        force[0] = 0;
        force[1] = 0;
        force[2] = 9.80665;
        rate[0] = rate[1] = rate[2] = 0;
      };

  private static UnitErrors noise(double gyro, double accel, boolean quantized) {
    double[][] one = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    return new UnitErrors(
        one, new double[3], new double[3][3], 0, gyro, one, new double[3], accel, quantized);
  }

  private static UnitStream record(
      UnitErrors errors, UnitPath path, double jitterS, double lossPct, double skew) {
    UnitFacts facts = new UnitFacts(BodyPoint.PELVIS, "", RATE_HZ, 16 * 9.80665, 34.9, false);
    return new InertialUnit(facts, errors, new UnitClock(0.3, 0, skew), jitterS, lossPct, 0, false)
        .record(path, 100.3, new Well19937c(SEED));
  }

  @Test
  void whiteNoiseHasItsDensityTimesTheRootOfHalfTheRate() {
    // Given: 0.0075 deg/s/rtHz and 150 ug/rtHz at 500 Hz: 0.1186 deg/s and 0.0233 m/s^2.
    // Within 2 %: 50,000 samples know a spread to 1 / sqrt(100,000) = 0.3 %.
    UnitStream s = record(noise(Math.toRadians(0.0075), 150e-6 * 9.80665, false), STILL, 0, 0, 0);
    assertThat(Math.toDegrees(Math.sqrt(StatUtils.variance(s.gyroColumnRadPerS(1)))))
        .isCloseTo(0.1186, within(0.0024));
    assertThat(Math.sqrt(StatUtils.variance(s.accelColumnMps2(0))))
        .isCloseTo(0.0233, within(0.0005));
  }

  @Test
  void aValueBeyondTheFullScaleIsCutAndShownInSteps() {
    // Given: 20 g on a 16 g unit of 16 bits. Expect: 32767 steps of 16 g / 32768.
    UnitPath hard =
        (timeS, force, rate) -> {
          force[0] = -20 * 9.80665;
          force[1] = 1.0001;
          force[2] = 0;
        };
    UnitStream s = record(noise(0, 0, true), hard, 0, 0, 0);
    double step = 16 * 9.80665 / 32768;
    assertThat(s.accelMps2(0, 7)).isCloseTo(-32767 * step, within(1e-9));
    assertThat(Math.abs(s.accelMps2(1, 7) - 1.0001)).isLessThanOrEqualTo(step / 2);
    assertThat(s.accelMps2(1, 7) / step).isCloseTo(Math.rint(1.0001 / step), within(1e-9));
  }

  @Test
  void lostSamplesAreAsManyAsAskedFor() {
    // Given: 2 % of 50,000, in bursts of three. Expect: 1000 lost, within 200: about 333 bursts
    // have a spread of 18, their lengths double that, times 3 samples, twice over.
    UnitStream s = record(noise(0, 0, false), STILL, 0, 2, 0);
    assertThat(50_001 - s.size()).isBetween(800, 1200);
  }

  @Test
  void piecesFollowOneAnotherAsTheWholeRecording() {
    // Given: a unit with noise, wander, a chip's filter, jitter and lost bursts, seed 21, in pieces
    // of 777 samples. Expect: the numbers of the recording in one piece, each to the bit, as both
    // draw them from the same generator in the same order.
    UnitErrors errors = UnitErrors.draw(UnitGrade.RAW, new Well19937c(SEED));
    UnitFacts facts = new UnitFacts(BodyPoint.PELVIS, "", RATE_HZ, 16 * 9.80665, 34.9, false);
    InertialUnit unit =
        new InertialUnit(facts, errors, new UnitClock(0.3, 0, 3e-5), 2e-4, 2, 90, true);
    UnitPath swinging =
        (timeS, force, rate) -> {
          force[0] = 3 * Math.sin(timeS);
          force[1] = 9;
          rate[2] = 4 * Math.cos(timeS);
        };
    UnitStream whole = unit.record(swinging, 10.3, new Well19937c(SEED));
    List<UnitStream> pieces = new ArrayList<>();
    unit.pieces(swinging, 10.3, () -> new Well19937c(SEED), 777).forEachRemaining(pieces::add);
    assertThat(pieces).hasSize(7).allMatch(piece -> piece.size() < 777);
    assertThat(join(pieces, UnitStream::timeColumnS)).isEqualTo(whole.timeColumnS());
    for (int channel = 0; channel < 6; channel++) {
      int c = channel;
      assertThat(join(pieces, piece -> piece.column(c))).isEqualTo(whole.column(c));
    }
  }

  private static double[] join(List<UnitStream> pieces, Function<UnitStream, double[]> column) {
    return pieces.stream().flatMapToDouble(p -> Arrays.stream(column.apply(p))).toArray();
  }

  @Test
  void stampsJitterAndAClockThatRunsFastShowsMoreSeconds() {
    // Given: 0.2 ms of jitter, 50 ppm fast, 100 s. Expect: spread of the steps 0.2 ms * sqrt 2
    // within 3 % (50,000 steps); the last stamp near 100.005 s: within one sample and five jitters.
    UnitStream s = record(noise(0, 0, false), STILL, 2e-4, 0, 50e-6);
    double[] steps = new double[s.size() - 1];
    for (int k = 1; k < s.size(); k++) {
      steps[k - 1] = s.timeS(k) - s.timeS(k - 1);
    }
    assertThat(Math.sqrt(StatUtils.variance(steps))).isCloseTo(2.83e-4, within(0.085e-4));
    assertThat(s.timeS(s.size() - 1)).isCloseTo(100.005, within(0.003));
  }

  @Test
  void aCalibratedUnitHasTheErrorsItsGradeSays() {
    // Given: 400 calibrated and 400 raw units. Expect: RMS accelerometer bias 3 and 26.5 mg (evenly
    // 10..40), gyroscope scale 0.2 % and 0.68 % (evenly 0.3..1). Within 6 %: 1200 values, 2 %.
    assertThat(rmsBiasMg(UnitGrade.CALIBRATED)).isCloseTo(3, within(0.18));
    assertThat(rmsBiasMg(UnitGrade.RAW)).isCloseTo(26.5, within(1.6));
    assertThat(rmsScalePct(UnitGrade.CALIBRATED)).isCloseTo(0.2, within(0.012));
    assertThat(rmsScalePct(UnitGrade.RAW)).isCloseTo(0.68, within(0.04));
  }

  private static double rmsBiasMg(UnitGrade grade) {
    double sum = 0;
    for (int i = 0; i < 400; i++) {
      for (double bias : UnitErrors.draw(grade, new Well19937c(i)).accelBiasMps2()) {
        sum += Math.pow(bias / 9.80665e-3, 2);
      }
    }
    return Math.sqrt(sum / 1200);
  }

  private static double rmsScalePct(UnitGrade grade) {
    double sum = 0;
    for (int i = 0; i < 400; i++) {
      double[][] m = UnitErrors.draw(grade, new Well19937c(i)).gyroMatrix();
      for (int axis = 0; axis < 3; axis++) {
        sum += Math.pow(100 * (m[axis][axis] - 1), 2);
      }
    }
    return Math.sqrt(sum / 1200);
  }
}
