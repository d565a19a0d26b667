package steadyturn.analysis.pelvis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.geometry.enclosing.WelzlEncloser;
import org.apache.commons.math3.geometry.euclidean.twod.DiskGenerator;
import org.apache.commons.math3.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SmallestCircleTest {

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 7, 12, 60, 240})
  void theRadiusIsThatOfCommonsMath(int n) {
    // Given: 20 sets of n points, scattered, and on a curved path (seed n). Oracle: Commons Math'
    // own encloser. Within 1e-9 of the radius: its touching tolerance.
    Random random = new Random(n);
    for (int set = 0; set < 20; set++) {
      double[] x = new double[n];
      double[] y = new double[n];
      Vector2D[] points = new Vector2D[n];
      for (int i = 0; i < n; i++) {
        boolean path = set % 2 == 1;
        x[i] = path ? Math.cos(set + 2.0 * i / n) + 0.1 * i / n : random.nextGaussian();
        y[i] = path ? 0.5 * Math.sin(3.0 * i / n) : random.nextGaussian();
        points[i] = new Vector2D(x[i], y[i]);
      }
      double expected =
          new WelzlEncloser<>(1e-12, new DiskGenerator())
              .enclose(java.util.List.of(points))
              .getRadius();
      assertThat(SmallestCircle.radius(x, y)).isCloseTo(expected, within(1e-9));
    }
  }

  @Test
  void pointsInLineAreHeldByTheOuterTwo() {
    double[] x = {0, 1, 2, 3, 4, 7};
    double[] y = {0, 2, 4, 6, 8, 14};
    assertThat(SmallestCircle.radius(x, y)).isCloseTo(Math.hypot(7, 14) / 2, within(1e-12));
  }

  @Test
  void noPointsOrUnequalOnesAreRefused() {
    assertThatThrownBy(() -> SmallestCircle.radius(new double[0], new double[0]))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> SmallestCircle.radius(new double[2], new double[1]))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
