package steadyturn.ingest.quality;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** 100 Hz; every channel steps up and down, so none holds its value by itself. */
class StuckCheckTest {

  private static List<Finding> of(SteadyUnit unit) {
    return StuckCheck.of(
        unit.stream(), unit.rateHz, SaturationCheck.of(unit.stream(), unit.rateHz));
  }

  /** Rates that step by so many deg/s on all three axes. */
  private static SteadyUnit moving(double degPerS) {
    SteadyUnit unit = SteadyUnit.usual().ranges(157, 35);
    for (int axis = 0; axis < 3; axis++) {
      unit.gyroDegPerS(axis, 0, degPerS);
    }
    return unit;
  }

  private static double[] column(SteadyUnit unit, int channel) {
    return channel < 3 ? unit.accel[channel] : unit.gyro[channel - 3];
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4, 5})
  void aChannelThatHoldsItsValueForMoreThanAQuarterSecondIsStuck(int channel) {
    // Given: 25 or 26 equal samples of 10 ms while the other rates change by 30 deg/s.
    for (int held : new int[] {25, 26}) {
      SteadyUnit unit = moving(30);
      Arrays.fill(column(unit, channel), 500, 500 + held, 0.123);
      assertThat(of(unit)).hasSize(held == 26 ? 1 : 0);
    }
  }

  @ParameterizedTest
  @CsvSource({"14.0, 0", "14.3, 1"})
  void theOthersMustMove(double degPerS, int findings) {
    // The two other rates change by 14.0 or 14.3 deg/s each: 19.8 or 20.2 together.
    SteadyUnit unit = moving(degPerS);
    Arrays.fill(unit.gyro[1], 500, 530, 0.123);
    assertThat(of(unit)).hasSize(findings);
  }

  @Test
  void aValueHeldAtTheEndOfItsRangeIsSaturation() {
    SteadyUnit unit = moving(30);
    Arrays.fill(unit.accel[0], 500, 540, 157);
    Arrays.fill(unit.accel[1], 500, 540, -157);
    assertThat(of(unit)).isEmpty();
    Arrays.fill(unit.accel[2], 500, 540, 150);
    assertThat(of(unit)).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4, 5})
  void aChannelWithoutAnyValueIsMissing(int channel) {
    SteadyUnit unit = SteadyUnit.usual();
    Arrays.fill(column(unit, channel), Double.NaN);
    assertThat(of(unit)).extracting(Finding::verdict).containsExactly(Verdict.NOT_USABLE);
    column(unit, channel)[7] = 0.5;
    assertThat(of(unit)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"1.40, 0", "1.43, 1"})
  void aChannelThatNeverChangesIsBrokenWhereTheUnitMoves(double degPerS, int findings) {
    // 1.98 or 2.02 deg/s of the other two together.
    SteadyUnit unit = moving(degPerS);
    Arrays.fill(unit.gyro[0], 0);
    assertThat(of(unit)).hasSize(findings);
  }

  @Test
  void aBrokenChannelAtTheEndOfTheStreamIsSeen() {
    SteadyUnit unit = moving(30);
    Arrays.fill(unit.gyro[2], 1970, 2000, 0.1);
    assertThat(of(unit)).hasSize(1);
  }

  /** All six values stand still for some samples in a turn of 60 deg/s that then goes on. */
  private static SteadyUnit frozen(int samples, double degPerS, double thenDegPerS) {
    SteadyUnit unit = SteadyUnit.usual();
    for (int axis = 0; axis < 3; axis++) {
      Arrays.fill(unit.accel[axis], 500, 500 + samples, unit.accel[axis][500]);
      Arrays.fill(unit.gyro[axis], 500, 500 + samples, axis == 0 ? Math.toRadians(degPerS) : 0);
      unit.gyro[axis][500 + samples] = axis == 0 ? Math.toRadians(thenDegPerS) : 0.001;
    }
    return unit;
  }

  @ParameterizedTest
  @CsvSource({
    "5, 60, 80, 1",
    "4, 60, 80, 0",
    "5, 9.9, 80, 0",
    "5, 10.1, 80, 1",
    "5, 60, 69.9, 0",
    "5, 60, 70.2, 1",
    "5, 60, 49.5, 1"
  })
  void fiveRepeatedSamplesInMidMovementAreFrozen(
      int samples, double degPerS, double thenDegPerS, int findings) {
    // Expect: frozen where the unit turned at more than 10 deg/s and jumps by as much after.
    List<Finding> found = of(frozen(samples, degPerS, thenDegPerS));
    assertThat(found).hasSize(findings);
    assertThat(found).allMatch(f -> Check.of(f) == Check.FROZEN);
    assertThat(found).allMatch(f -> f.verdict() == Verdict.WIDER_INTERVALS);
  }

  @Test
  void repeatsThatLastToTheEndAreNoMovement() {
    SteadyUnit unit = SteadyUnit.usual();
    for (int axis = 0; axis < 3; axis++) {
      Arrays.fill(unit.accel[axis], 1990, 2000, 1);
      Arrays.fill(unit.gyro[axis], 1990, 2000, 1);
    }
    assertThat(of(unit)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"501, 2.19, 1", "500, 2.19, 0", "501, 2.05, 0"})
  void whatIsHeldForFiveSecondsNeedsLessMovement(int held, double degPerS, int findings) {
    // The two other rates change by 3.1 or 2.9 deg/s together; twenty times 25 samples.
    SteadyUnit unit = moving(degPerS);
    Arrays.fill(unit.accel[1], 600, 600 + held, 0.123);
    assertThat(of(unit)).hasSize(findings);
  }

  @ParameterizedTest
  @CsvSource({
    // steps of the channel, the one by which it is reached and left: 1.5 times and 1e-4
    "0.01, 0.0145, 0",
    "0.01, 0.0155, 1",
    "0.00002, 0.000097, 0",
    "0.00002, 0.000103, 1"
  })
  void aQuietChannelLeavesItsValueByAStepAsAnyOther(double step, double jump, int findings) {
    SteadyUnit unit = moving(30);
    Arrays.setAll(unit.accel[0], i -> i % 2 == 0 ? 0 : step);
    Arrays.fill(unit.accel[0], 500, 540, step - jump);
    unit.accel[0][499] = step;
    unit.accel[0][540] = step;
    assertThat(of(unit)).hasSize(findings);
  }

  @Test
  void aChannelThatHangsToTheEndWasReachedByAJump() {
    // Given: reached by a step like any other, never left.
    SteadyUnit unit = moving(30);
    Arrays.setAll(unit.accel[0], i -> i % 2 == 0 ? 0 : 0.01);
    Arrays.fill(unit.accel[0], 1900, 2000, 0.01);
    assertThat(of(unit)).hasSize(1);
  }
}
