package steadyturn.fusion.filter.lowpass;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The parts of the low-pass filter in closed form. */
class LowPassPartsTest {

  @Test
  void theBiasIsAKalmanUpdateOfThreeNumbers() {
    // Given: any directions, innovations and variances (seed 3), walks between. Expect: the same in
    // dense matrices of Commons Math. Within 1e-12.
    Random random = new Random(3);
    BiasEstimate bias = new BiasEstimate(0.04, 0.01);
    RealMatrix p = MatrixUtils.createRealIdentityMatrix(3).scalarMultiply(0.0016);
    RealMatrix b = MatrixUtils.createRealMatrix(3, 1);
    for (int i = 0; i < 20; i++) {
      bias.walk(0.5);
      p = p.add(MatrixUtils.createRealIdentityMatrix(3).scalarMultiply(0.0001 * 0.5));
      double[] h = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
      double off = 0.1 * random.nextGaussian();
      bias.observe(h, off, 0.002);
      RealMatrix ph = p.multiply(MatrixUtils.createColumnRealMatrix(h));
      double s = MatrixUtils.createRowRealMatrix(h).multiply(ph).getEntry(0, 0) + 0.002;
      b = b.add(ph.scalarMultiply(off / s));
      p = p.subtract(ph.multiply(ph.transpose()).scalarMultiply(1 / s));
      assertThat(bias.values()).containsExactly(b.getColumn(0), within(1e-12));
      assertThat(bias.get(2)).isEqualTo(bias.values()[2]);
      assertThat(bias.sigmaRadPerS()).isCloseTo(Math.sqrt(p.getTrace() / 3), within(1e-12));
    }
  }

  @Test
  void theLowPassIsAMeanAtFirstAndTwoStagesAfterwards() {
    // Given: a step from 1 to 3, time constant 2 s (two stages of 1 s), steps of 1 ms. Expect: 1
    // as long as 1; t after the step the second stage at 3 - 2 (1 + t) exp(-t), the first at 3 - 2
    // exp(-t), so their difference 2 t exp(-t). Within 1e-3: steps of a thousandth.
    TwoStageMean mean = new TwoStageMean(2, 2);
    for (int i = 0; i < 10_000; i++) {
      mean.step(0.001);
      mean.add(0, 1);
      mean.add(1, i);
      assertThat(mean.get(0)).isCloseTo(1, within(1e-12));
      assertThat(mean.settled()).isEqualTo(i >= 2000);
    }
    for (int i = 1; i <= 1500; i++) {
      mean.step(0.001);
      mean.add(0, 3);
    }
    assertThat(mean.get(0)).isCloseTo(3 - 2 * 2.5 * Math.exp(-1.5), within(1e-3));
    assertThat(mean.lag(0)).isCloseTo(2 * 1.5 * Math.exp(-1.5), within(1e-3));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 10})
  void theFirstSamplesAreWeighedEvenly(int n) {
    // Given: 1 .. n, a second each, a slow low-pass. Expect: the first stage their plain mean; what
    // it lags by the second as weights 2 k / (n (n + 1)) of those means give.
    TwoStageMean mean = new TwoStageMean(1e6, 1);
    double second = 0;
    for (int k = 1; k <= n; k++) {
      mean.step(1);
      mean.add(0, k);
      second += (0.5 * (k + 1) - second) * 2 / (k + 1.0);
    }
    assertThat(mean.get(0)).isCloseTo(second, within(1e-12));
    assertThat(mean.get(0) + mean.lag(0)).isCloseTo(0.5 * (n + 1), within(1e-12));
    mean.trust(0);
    mean.step(1);
    mean.add(0, 100);
    assertThat(mean.get(0)).isCloseTo(100, within(1e-12));
  }
}
