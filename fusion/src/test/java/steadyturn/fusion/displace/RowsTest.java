package steadyturn.fusion.displace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
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
}
