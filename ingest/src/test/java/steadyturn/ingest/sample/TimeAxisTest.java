package steadyturn.ingest.sample;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TimeAxisTest {

  private static final double[] TIME_S = {1, 2, 4};

  @ParameterizedTest
  @CsvSource({"0.5, 0, 0", "1, 0, 0", "1.5, 1, 0", "2, 1, 1", "3, 2, 1", "4, 2, 1", "4.5, 3, 1"})
  void instantsBeforeAtBetweenAndAfterFindTheirPlace(double instantS, int at, int before) {
    // Given: instants at 1, 2 and 4 s, by hand. Expect: the first at or after; the one before or at
    // that has a follower. Exact.
    assertThat(TimeAxis.indexAt(TIME_S, instantS)).isEqualTo(at);
    assertThat(TimeAxis.beforeAt(i -> TIME_S[i], TIME_S.length, instantS)).isEqualTo(before);
  }

  @Test
  void whatIsNotYetFilledIsNotLookedAt() {
    // Given: a column of five places with two instants in it. Expect: 2 beyond them, 0 in none.
    double[] growing = {1, 2, 0, 0, 0};
    assertThat(TimeAxis.indexAt(growing, 2, 9)).isEqualTo(2);
    assertThat(TimeAxis.indexAt(growing, 0, 1)).isZero();
  }

  @Test
  void columnsAndOtherInstantsAreSearchedAlike() {
    // Given: 200 columns of up to 50 instants that differ, seed 17. Expect: halving by hand finds
    // what java.util.Arrays finds, exactly.
    Random random = new Random(17);
    for (int column = 0; column < 200; column++) {
      double[] timeS = random.doubles(random.nextInt(50)).distinct().sorted().toArray();
      double instantS =
          timeS.length > 0 && random.nextBoolean()
              ? timeS[random.nextInt(timeS.length)]
              : random.nextDouble();
      assertThat(TimeAxis.indexAt(i -> timeS[i], timeS.length, instantS))
          .as("seed 17, column %d", column)
          .isEqualTo(TimeAxis.indexAt(timeS, instantS));
    }
  }
}
