package steadyturn.fusion.attitude;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
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
