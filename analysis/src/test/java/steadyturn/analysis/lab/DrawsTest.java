package steadyturn.analysis.lab;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
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
    for (double[] values : byDepth(purpose, 0, SEEDS + 1)) {
      assertThat(Math.abs(StatUtils.mean(values))).isLessThan(0.22);
      assertThat(Math.abs(Math.sqrt(StatUtils.variance(values)) - 1)).isLessThan(0.16);
      double[] one = java.util.Arrays.copyOfRange(values, 0, SEEDS);
      double[] next = java.util.Arrays.copyOfRange(values, 1, SEEDS + 1);
      assertThat(Math.abs(new PearsonsCorrelation().correlation(one, next))).isLessThan(0.22);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "wear, 0, pose, 0",
    "wear, 0, player, 0",
    "habits, 0, pose, 0",
    "swing-errors, 0, swing-errors, 1",
    "swing, 3, swing, 4",
    "unit PELVIS, 0, alignment PELVIS, 0"
  })
  void whatIsDrawnForOnePurposeTellsNothingOfAnother(
      String purpose, int index, String other, int otherIndex) {
    // Given: seeds 0..399, the first 40 normal numbers of two purposes (or of two swings) each.
    // Expect: no correlation at any depth. Within 0.22, four and a half times the 0.05 of chance.
    // Sources of error that went together would be summed wrongly in every study.
    double[][] ones = byDepth(purpose, index, SEEDS);
    double[][] twos = byDepth(other, otherIndex, SEEDS);
    for (int depth = 0; depth < DEPTH; depth++) {
      double correlation = new PearsonsCorrelation().correlation(ones[depth], twos[depth]);
      assertThat(Math.abs(correlation)).as("depth " + depth).isLessThan(0.22);
    }
  }

  /** Normal numbers of seeds 0 on, by how many were drawn before. */
  private static double[][] byDepth(String purpose, int index, int seeds) {
    double[][] out = new double[DEPTH][seeds];
    for (int seed = 0; seed < seeds; seed++) {
      RandomGenerator random = Draws.of(seed, purpose, index);
      for (int depth = 0; depth < DEPTH; depth++) {
        out[depth][seed] = random.nextGaussian();
      }
    }
    return out;
  }
}
