package steadyturn.ingest.sample;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class AveragesTest {

  @Test
  void aHoleIsLeftOutOfAMean() {
    // Given: 9, 1, a hole, 3, 9. Expect: of the inner three, (1 + 3) / 2; of the hole alone and of
    // nothing 0. Exact.
    double[] column = {9, 1, Double.NaN, 3, 9};
    assertThat(Averages.mean(column, 1, 4)).isEqualTo(2);
    assertThat(Averages.mean(column, 2, 3)).isZero();
    assertThat(Averages.mean(column, 3, 3)).isZero();
  }

  @Test
  void aMedianIsAValueThatWasThere() {
    // Given: 3, 1, 2 and 4, 3, 1, 2. Expect: 2, and of 2 and 3 the upper; nothing gives NaN. The
    // values stay in their order. Exact.
    double[] values = {4, 3, 1, 2};
    assertThat(Averages.median(new double[] {3, 1, 2})).isEqualTo(2);
    assertThat(Averages.median(values)).isEqualTo(3);
    assertThat(values).containsExactly(4, 3, 1, 2);
    assertThat(Averages.median(new double[0])).isNaN();
  }
}
