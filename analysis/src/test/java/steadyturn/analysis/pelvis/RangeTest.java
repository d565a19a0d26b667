package steadyturn.analysis.pelvis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Intervals of functions that bend. */
class RangeTest {

  private static final double[][] COLUMNS = {
    {0.02, 0}, {0.003, 0.004}, {0, 0}, {0, 0}, {0, 0}, {0, 0}
  };

  private static PoseSpread pose(double turnRad, double slideM) {
    return new PoseSpread(PelvisPose.of(new double[] {turnRad, slideM, 0, 0, 0, 0}), COLUMNS);
  }

  /**
   * Given: slide 10 mm, spread 5 mm (3 mm of it shared with the turn). Expect: the usual interval
   * 10 -+ 1.96 x 5 mm for a straight function, within 0.2 % (72 directions).
   */
  @Test
  void aStraightFunctionHasTheUsualInterval() {
    Range slide = Range.of(pose(0.3, 0.010), 0, 1, (turn, s) -> s);
    assertThat(slide.low()).isCloseTo(0.010 - 1.96 * 0.005, within(0.00002));
    assertThat(slide.high()).isCloseTo(0.010 + 1.96 * 0.005, within(0.00002));
    // turn + slide: variance 0.02^2 + 0.005^2 + 2 x 0.02 x 0.003
    double sd = Math.sqrt(0.0004 + 0.000025 + 0.00012);
    Range sum = Range.of(pose(0.3, 0.010), 0, 1, Double::sum);
    assertThat(sum.high()).isCloseTo(0.310 + 1.96 * sd, within(0.002 * 1.96 * sd));
  }

  /** Given: a turn that may be zero. Expect: the interval of |turn| begins at zero, not below. */
  @Test
  void aFoldIsSeen() {
    Range folded = Range.of(pose(0.01, 0), 0, 1, (turn, s) -> Math.abs(turn));
    assertThat(folded.low()).isBetween(0.0, 0.002);
    assertThat(folded.high()).isCloseTo(0.01 + 1.96 * 0.02, within(0.0001));
  }
}
