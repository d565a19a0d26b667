package steadyturn.fusion.filter.kalman;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.fusion.filter.SampleGuard;
import steadyturn.fusion.filter.SampleLimits;
import steadyturn.fusion.rotation.MutableQuaternion;

class ChipGradeTest {

  private static final double G = 9.80665;

  /** 4 s of rest with white noise of this angle in one second, on a slow sway. */
  private static ChipGrade rested(double noiseDeg, double rateHz) {
    Random random = new Random(11);
    ChipGrade grade = new ChipGrade();
    SampleGuard guard = new SampleGuard(SampleLimits.unlimited());
    double sd = Math.toRadians(noiseDeg) * Math.sqrt(rateHz);
    for (int i = 0; i < 4 * rateHz; i++) {
      double sway = Math.toRadians(0.5) * Math.sin(2 * Math.PI * 0.5 * i / rateHz);
      double x = 0.02 + sway + sd * random.nextGaussian();
      double y = sd * random.nextGaussian();
      double z = sd * random.nextGaussian();
      guard.take(x, y, z, 0, 0, G, 1 / rateHz);
      grade.take(guard);
    }
    return grade;
  }

  @ParameterizedTest
  @CsvSource({
    "0.006, 100, 1",
    "0.006, 1000, 1",
    "0.018, 100, 3",
    "0.003, 400, 0.5",
    "0.5, 100, 5",
    "0.0001, 100, 0.2"
  })
  void theNoiseOfARestIsReadAtAnyRate(double noiseDeg, double rateHz, double ratio) {
    // Expect: its noise over 0.006 deg in one second, between 0.2 and 5, sway and bias or not.
    // Within 10 %: some 400 pieces of three axes give 3 %, the sway a little.
    ChipGrade grade = rested(noiseDeg, rateHz);
    assertThat(grade.noiseKnown()).isTrue();
    assertThat(grade.noiseRatio()).isCloseTo(ratio, within(0.1 * ratio));
  }

  @Test
  void aRestThatIsInterruptedIsNotMeasuredAcross() {
    // Given: 0.3 s at one rate, a movement, 0.3 s at another rate. Expect: not yet enough (60
    // pieces); and the jump between the two is no noise: lowest ratio after a third rest.
    ChipGrade grade = new ChipGrade();
    SampleGuard guard = new SampleGuard(SampleLimits.unlimited());
    for (int part = 0; part < 3; part++) {
      assertThat(grade.noiseKnown()).isFalse();
      for (int i = 0; i < 30; i++) {
        guard.take(part, -part, 0, 0, 0, G, 0.01);
        grade.take(guard);
      }
      grade.leave();
    }
    assertThat(grade.noiseKnown()).isTrue();
    assertThat(grade.noiseRatio()).isEqualTo(0.2);
  }

  @Test
  void aForceOffGravityAtRestMovesTheTiltAssumed() {
    // Given: a block at rest whose mean force is 20 mg above g. Expect: half of 0.02^2 - assumed,
    // up or down; before any rest nothing. Within 1e-12: closed form.
    ChipGrade grade = new ChipGrade();
    assertThat(grade.tiltVarianceOff(1e-4)).isZero();
    SampleGuard guard = new SampleGuard(SampleLimits.unlimited());
    guard.take(0, 0, 0, 0, 0, 1.02 * G, 0.1);
    BlockSums sums = new BlockSums();
    sums.add(new MutableQuaternion(), guard, new double[3], 0, 0, 1.02 * G);
    grade.takeRest(sums);
    assertThat(grade.tiltVarianceOff(1e-4)).isCloseTo(0.5 * (4e-4 - 1e-4), within(1e-12));
    assertThat(grade.tiltVarianceOff(1e-3)).isCloseTo(0.5 * (4e-4 - 1e-3), within(1e-12));
  }
}
