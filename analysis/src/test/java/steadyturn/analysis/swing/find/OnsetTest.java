package steadyturn.analysis.swing.find;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Units at 200 Hz: samples 5 ms apart. */
class OnsetTest {

  @Test
  void aBlowLiesEvenlyBetweenTheLastCalmSampleAndTheFirstMoved() {
    // Given: calm at 1.000 s, moved at 1.005 s. Expect: the middle; 5 ms / root of 12 and 1.5 ms as
    // root sum of squares. Within 1e-9: rounding.
    Instant blow = new Onset(1.000, 1.005).instant();
    assertThat(blow.timeS()).isCloseTo(1.0025, within(1e-9));
    assertThat(blow.sdS()).isCloseTo(Math.hypot(0.005 / Math.sqrt(12), 0.0015), within(1e-9));
  }

  @Test
  void twoUnitsThatAgreeGiveTheirMean() {
    // Given: the other unit sampled 2 ms later. Expect: the mean of both middles, more certain by
    // the root of two. Within 1e-9: rounding.
    Onset one = new Onset(1.000, 1.005);
    Instant both = one.and(new Onset(1.002, 1.007));
    assertThat(both.timeS()).isCloseTo(1.0035, within(1e-9));
    assertThat(both.sdS()).isCloseTo(one.instant().sdS() / Math.sqrt(2), within(1e-9));
  }

  @Test
  void aUnitThatMissedTheFirstSampleOfTheRingDoesNotPutTheBlowLater() {
    // Given: the other unit moved 10 ms later: two samples near a zero of its ring. Expect: the
    // earlier one alone, whichever is asked.
    Onset early = new Onset(1.000, 1.005);
    Onset late = new Onset(1.010, 1.015);
    assertThat(early.and(late)).isEqualTo(early.instant());
    assertThat(late.and(early)).isEqualTo(early.instant());
  }

  @Test
  void aBlowBeforeItsLastCalmSampleIsRefused() {
    assertThatThrownBy(() -> new Onset(1.005, 1.0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("1.005");
  }

  @Test
  void aBlowFarFromWhereTheArmComesBackIsDoubted() {
    // Given: a blow felt 70 ms before the arm comes back, which is known to 13 ms, as in a drawn
    // lesson whose ball came with the arm. Expect: the ball lies within its range, as it does
    // where 31 ms part them (two of 280 drawn blows, both 21 ms and more wrong); one 24 ms off, as
    // hands lead and lag, is believed as it is.
    Instant back = new Instant(1.07, 0.013);
    assertThat(new Instant(1, 0.002).beside(back).sdS())
        .isCloseTo(Math.hypot(0.002, 0.07), within(1e-12));
    assertThat(new Instant(1.101, 0.002).beside(back).sdS()).isGreaterThan(0.03);
    assertThat(new Instant(1.046, 0.002).beside(back)).isEqualTo(new Instant(1.046, 0.002));
  }
}
