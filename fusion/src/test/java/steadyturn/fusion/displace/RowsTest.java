package steadyturn.fusion.displace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.junit.jupiter.api.Test;

class RowsTest {

  @Test
  void aStepTakesItsDerivativeOffWhatIsLeft() {
    // Given: two rows, spreads 2 and 0.5; a step of random size (seed 3). Expect by hand: residual
    // (known minus predicted) less derivative times step, over the spread. Within rounding.
    System.out.println("seed 3");
    Random random = new Random(3);
    Rows rows = new Rows();
    rows.add(3, new double[] {1, -2, 0.5}, 2);
    rows.add(-1, new double[] {0, 4, 1}, 0.5);
    double[] step = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
    Rows moved = rows.moved(step);
    assertThat(moved.size()).isEqualTo(2);
    assertThat(moved.residual(0))
        .isCloseTo((3 - step[0] + 2 * step[1] - 0.5 * step[2]) / 2, within(1e-12));
    assertThat(moved.residual(1)).isCloseTo((-1 - 4 * step[1] - step[2]) / 0.5, within(1e-12));
    assertThat(moved.derivative(1)).containsExactly(0, 8, 2);
    assertThat(rows.residual(0)).isEqualTo(1.5);
  }

  /** Rows of a rest of 2 s whose velocity is told every tenth of a second, as for an address. */
  private static RestSway sway(DoubleUnaryOperator xMps, DoubleUnaryOperator upMps) {
    Anchor rest = Anchor.address(0, 2);
    int m = 21;
    double[][] residual = new double[3][m];
    DMatrixRMaj shape = new DMatrixRMaj(m, m);
    for (int i = 0; i < m; i++) {
      residual[0][i] = xMps.applyAsDouble(0.1 * i);
      residual[2][i] = upMps.applyAsDouble(0.1 * i);
      for (int j = 0; j < m; j++) {
        shape.set(i, j, Math.exp(-0.1 * Math.abs(i - j) / Anchor.SWAY_CORRELATION_S));
      }
    }
    DMatrixRMaj level = shape.copy();
    DMatrixRMaj up = shape.copy();
    CommonOps_DDRM.scale(rest.velocitySdMps() * rest.velocitySdMps(), level);
    CommonOps_DDRM.scale(rest.upSdMps() * rest.upSdMps(), up);
    Rows rows = new Rows();
    rows.addTied(residual[0], new double[m][1], level);
    rows.addTied(residual[1], new double[m][1], level);
    rows.addTied(residual[2], new double[m][1], up);
    rows.endWithSway(m, rest, level);
    return rows.sway().orElseThrow();
  }

  @Test
  void whatLastsWidensARestAsFarAsSwayOfThatSpreadWould() {
    // Given: 200,000 velocities of a body that sways by 1 along each axis, alike over 0.3 s, told
    // every
    // tenth of a second (first-order recursion, seed 11). Expect: the RMS of their half-second
    // means
    // over two axes is that of a spread of 1. Within 3 %: chance, and 5 instants for half a second.
    System.out.println("seed 11");
    Random random = new Random(11);
    double keeps = Math.exp(-0.1 / 0.3);
    double[] velocity = new double[200_000];
    for (int i = 1; i < velocity.length; i++) {
      velocity[i] = keeps * velocity[i - 1] + Math.sqrt(1 - keeps * keeps) * random.nextGaussian();
    }
    double squares = 0;
    for (int i = 5; i < velocity.length; i++) {
      double mean = 0;
      for (int k = i - 5; k < i; k++) {
        mean += velocity[k] / 5;
      }
      squares += mean * mean / (velocity.length - 5);
    }
    double lasting = Math.sqrt(2 * squares);
    assertThat(new RestSway(0.1, 0, lasting).spreadMps()).isCloseTo(1, within(0.03));
    assertThat(new RestSway(2, 0, lasting).spreadMps()).isEqualTo(2);
  }

  @Test
  void swayComesBackAndADriftLasts() {
    // Given: a drift of 20 mm/s; sway there and back twice a second of 20 mm/s. Expect by hand: the
    // first lasts as fast as it is; the second means nothing over half a second. Within rounding.
    RestSway drift = sway(t -> 0.02, t -> 0);
    assertThat(drift.lastingMps()).isCloseTo(0.02, within(1e-9));
    RestSway sway = sway(t -> 0.02 * Math.sin(4 * Math.PI * t), t -> 0);
    assertThat(sway.lastingMps()).isLessThan(1e-9);
  }

  @Test
  void swayIsAsFastAsItsChangesSay() {
    // Given: a velocity that follows an address's own spread and its correlation, times two along
    // the ground (seed 5) and times three up and down. Expect: 12 and 6 mm/s. Within a third: the
    // median of 21 numbers scatters by a sixth of itself.
    System.out.println("seed 5");
    Random random = new Random(5);
    double keeps = Math.exp(-0.1 / Anchor.SWAY_CORRELATION_S);
    double[][] v = new double[2][21];
    for (double[] course : v) {
      course[0] = random.nextGaussian();
      for (int i = 1; i < course.length; i++) {
        course[i] = keeps * course[i - 1] + Math.sqrt(1 - keeps * keeps) * random.nextGaussian();
      }
    }
    RestSway sway =
        sway(
            t -> 0.012 * v[0][(int) Math.round(10 * t)],
            t -> 0.006 * v[1][(int) Math.round(10 * t)]);
    assertThat(sway.upMps()).isCloseTo(0.006, within(0.002));
    // one of the two level axes keeps still here: half of the numbers are zero
    assertThat(sway.levelMps()).isLessThan(0.012);
  }
}
