package steadyturn.analysis.lab.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ErrorTallyTest {

  private static final double CLOSE = 1e-12;

  @Test
  void figuresOfThreeValuesWorkedByHand() {
    // Given: errors 1, -2 and 4 with half widths 2, 1 and 30. Expect: RMSE sqrt(21/3), bias 1, two
    // of three held, and the median half width 2, which the one wide interval does not move.
    ErrorTally tally = new ErrorTally();
    tally.add(11, 9, 13, 10);
    tally.add(8, 7, 9, 10);
    tally.add(14, -16, 44, 10);
    assertThat(tally.rmse()).isCloseTo(Math.sqrt(7), within(CLOSE));
    assertThat(tally.bias()).isCloseTo(1, within(CLOSE));
    assertThat(tally.coveragePct()).isCloseTo(200.0 / 3, within(CLOSE));
    assertThat(tally.halfWidth()).isCloseTo(2, within(CLOSE));
  }

  @Test
  void anEvenCountTakesTheMiddleOfTheTwoMiddleWidths() {
    ErrorTally tally = new ErrorTally();
    tally.add(0, -1, 1, 0);
    tally.add(0, -2, 2, 0);
    assertThat(tally.halfWidth()).isCloseTo(1.5, within(CLOSE));
  }

  @Test
  void withoutIntervalsThereIsNoWidth() {
    ErrorTally tally = new ErrorTally();
    tally.add(3);
    assertThat(tally.halfWidth()).isNaN();
    assertThat(tally.coveragePct()).isNaN();
  }
}
