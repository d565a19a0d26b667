package steadyturn.fusion.attitude;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.fitting.PolynomialCurveFitter;
import org.apache.commons.math3.fitting.WeightedObservedPoints;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SmoothingTest {

  /** Uneven instants and a course with bends. */
  private static final double[] TIME_S = new double[41];

  private static final double[] VALUES = new double[41];

  static {
    for (int i = 0; i < TIME_S.length; i++) {
      TIME_S[i] = 0.01 * i + 0.003 * Math.sin(i);
      VALUES[i] = Math.cos(9 * TIME_S[i]) + 0.3 * Math.sin(57 * i);
    }
  }

  @Test
  void theParabolaIsTheLeastSquaresFitOfTheSamplesWithinReach() {
    // Given: uneven samples. Oracle: Commons Math' curve fitter over the same window. Within 1e-9.
    double[] out = CentredParabola.of(TIME_S, VALUES, 0.05);
    for (int i = 0; i < TIME_S.length; i++) {
      WeightedObservedPoints near = new WeightedObservedPoints();
      for (int k = 0; k < TIME_S.length; k++) {
        if (Math.abs(TIME_S[k] - TIME_S[i]) <= 0.05) {
          near.add(TIME_S[k] - TIME_S[i], VALUES[k]);
        }
      }
      double fitted = PolynomialCurveFitter.create(2).fit(near.toList())[0];
      assertThat(out[i]).as("sample " + i).isCloseTo(fitted, within(1e-9));
    }
  }

  @Test
  void sumsThatAreCarriedAlongAreThoseOfEachWindowByItself() {
    // Given: 500 uneven samples (random, seed 11), a gap, one lost value. Expect: the parabola that
    // the same few samples give when they stand alone, as a window that is summed up anew. Within
    // 1e-11: sums of 50 numbers of size 1 carried over 32 samples.
    System.out.println("seed 11");
    Random random = new Random(11);
    double[] time = new double[500];
    double[] values = new double[500];
    for (int i = 0; i < 500; i++) {
      time[i] = (i == 0 ? 20 : time[i - 1]) + 0.001 + 0.002 * random.nextDouble();
      time[i] += i == 250 ? 0.03 : 0;
      values[i] = random.nextGaussian();
    }
    values[400] = Double.NaN;
    double[] out = CentredParabola.of(time, values, 0.05);
    double[] first = CentredParabola.upTo(300, time, values, 0.05);
    for (int i = 0; i < 500; i++) {
      double alone = alone(time, values, i, 0.05);
      if (Double.isNaN(alone)) {
        assertThat(out[i]).isNaN();
      } else {
        assertThat(out[i]).as("sample " + i).isCloseTo(alone, within(1e-11));
      }
      if (i < 300) {
        assertThat(first[i]).isEqualTo(out[i]);
      }
    }
    assertThat(first).hasSize(300);
  }

  /** The fit of one window, with its sample as the first of a course, where nothing is carried. */
  private static double alone(double[] time, double[] values, int i, double reachS) {
    double[][] sums = new double[3][4];
    for (int k = 0; k < time.length; k++) {
      double u = (time[k] - time[i]) / reachS;
      boolean isNear = time[k] >= time[i] - reachS && time[k] <= time[i] + reachS;
      for (int row = 0; isNear && row < 3; row++) {
        for (int column = 0; column < 3; column++) {
          sums[row][column] += Math.pow(u, row + column);
        }
        sums[row][3] += Math.pow(u, row) * values[k];
      }
    }
    for (int pivot = 2; pivot > 0; pivot--) { // from the last row up: what is left is a
      for (int row = 0; row < pivot; row++) {
        double part = sums[row][pivot] / sums[pivot][pivot];
        for (int column = 0; column < 4; column++) {
          sums[row][column] -= part * sums[pivot][column];
        }
      }
    }
    return sums[0][3] / sums[0][0];
  }

  @Test
  void underFiveSamplesNothingIsSmoothed() {
    // Given: 10 ms apart, reach 20 ms: three at the ends, four beside them, five inside.
    double[] even = new double[9];
    Arrays.setAll(even, i -> i * 0.01);
    double[] spike = {0, 0, 0, 0, 1, 0, 0, 0, 0};
    double[] out = CentredParabola.of(even, spike, 0.0201);
    // Expect: 17/35 in the middle (Savitzky-Golay weights of five points: -3 12 17 12 -3 over 35).
    assertThat(out[4]).isCloseTo(17 / 35.0, within(1e-12));
    assertThat(out[3]).isCloseTo(12 / 35.0, within(1e-12));
    assertThat(out[6]).isCloseTo(-3 / 35.0, within(1e-12));
    assertThat(CentredParabola.of(even, spike, 0.015)).containsExactly(spike);
  }

  @ParameterizedTest
  @CsvSource({"0,1", "1,2", "4,5", "5,6", "6,7.2", "7,8.3333333333333", "8,10"})
  void theMeanIsCentredAndNarrowsTowardsTheEnds(int i, double expected) {
    // Given: 1..8 and 10, one a second, reach 2 s (a border sample counts). Expect by hand: five
    // inside, (5 + 6 + 7 + 8 + 10) / 5 = 7.2; three beside the end, (7 + 8 + 10) / 3; the end
    // alone.
    double[] timeS = {0, 1, 2, 3, 4, 5, 6, 7, 8};
    double[] values = {1, 2, 3, 4, 5, 6, 7, 8, 10};
    assertThat(CentredMean.of(timeS, values, 2)[i]).isCloseTo(expected, within(1e-12));
  }

  @Test
  void theMeanReachesNoFartherThanTheNearerSide() {
    // Given: uneven instants, reach 1 s. Expect: around 2 s one sample each side, though two follow
    // within reach: (2 + 4 + 8) / 3; around 2.1 s one, as only 2.2 s follows: (4 + 8 + 16) / 3.
    double[] timeS = {0, 1, 2, 2.1, 2.2};
    double[] out = CentredMean.of(timeS, new double[] {1, 2, 4, 8, 16}, 1);
    assertThat(out[2]).isCloseTo(14 / 3.0, within(1e-12));
    assertThat(out[3]).isCloseTo(28 / 3.0, within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({"0.9,0", "1,0", "1.5,0.1", "2,0.2", "3,0.25", "4,0.3", "9,0.3"})
  void aDoubtGrowsInStraightLinesAndStays(double timeS, double expected) {
    AngleDoubt doubt = new AngleDoubt(new double[] {1, 2, 4}, new double[] {0, 0.2, 0.3});
    assertThat(doubt.atRad(timeS)).isCloseTo(expected, within(1e-12));
    assertThat(new AngleDoubt(new double[0], new double[0]).atRad(timeS)).isZero();
  }
}
