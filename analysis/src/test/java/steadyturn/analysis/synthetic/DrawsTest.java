package steadyturn.analysis.synthetic;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DrawsTest {

  private static final int SEEDS = 400;
  private static final int DEPTH = 40;

  @ParameterizedTest
  @ValueSource(strings = {"habits", "player", "swing", "alignment PELVIS", "unit PELVIS"})
  void neighbouringSeedsDrawApart(String purpose) {
    // Given: seeds 0..399, the first 40 normal numbers of each. Expect: at every depth mean 0 and
    // spread 1 over the seeds, no correlation with the next seed. Within 0.22, 0.16 and 0.22:
    // spreads
    // are 0.05, 0.035 and 0.05; the largest of 200 such reaches three and a half of them.
    double[][] byDepth = new double[DEPTH][SEEDS + 1];
    for (int seed = 0; seed <= SEEDS; seed++) {
      RandomGenerator random = Draws.of(seed, purpose, 0);
      for (int depth = 0; depth < DEPTH; depth++) {
        byDepth[depth][seed] = random.nextGaussian();
      }
    }
    for (double[] values : byDepth) {
      assertThat(Math.abs(StatUtils.mean(values))).isLessThan(0.22);
      assertThat(Math.abs(Math.sqrt(StatUtils.variance(values)) - 1)).isLessThan(0.16);
      double[] one = java.util.Arrays.copyOfRange(values, 0, SEEDS);
      double[] next = java.util.Arrays.copyOfRange(values, 1, SEEDS + 1);
      assertThat(Math.abs(new PearsonsCorrelation().correlation(one, next))).isLessThan(0.22);
    }
  }
}
