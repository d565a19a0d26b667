package steadyturn.fusion.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lost, late and clipped samples, by hand: 0.1 s bridged, 50 rad/s^2, 3 m/s^2 alike over 0.1 s. */
class SampleGuardTest {

  private static final double NAN = Double.NaN;
  private final SampleGuard guard = new SampleGuard(new SampleLimits(100, 30, 0.1, 50));

  private void whole(double stepS) {
    assertThat(guard.take(1, -2, 3, 0, 0, 9.8, stepS)).isTrue();
  }

  private static double unseen(double lossS) {
    return Math.pow(50 * lossS * lossS / 12, 2);
  }

  @Test
  void aWholeSampleIsTakenAsItIs() {
    whole(0.01);
    whole(0.014); // under one and a half usual steps: late, not lost
    assertThat(new double[] {guard.rateX, guard.rateY, guard.rateZ}).containsExactly(1, -2, 3);
    assertThat(guard.stepS).isEqualTo(0.014);
    assertThat(guard.rateGood && guard.accelSeen && guard.accelGood).isTrue();
    assertThat(guard.clipped).isFalse();
    assertThat(guard.angleVariance).isZero();
    assertThat(guard.velocityVariance).isZero();
  }

  @Test
  void aLostRateIsHeldForATenthOfASecondAndGrowsUnsure() {
    // Expect: held to 0.1 s, then nothing; variance since the last good one (alpha t^2 / 12)^2.
    whole(0.04);
    double sum = 0;
    for (int i = 1; i <= 3; i++) {
      guard.take(NAN, 1, 1, 0, 0, 9.8, 0.04);
      double hold = i * 0.04 <= 0.1 ? 1 : 0;
      assertThat(new double[] {guard.rateX, guard.rateY, guard.rateZ})
          .containsExactly(new double[] {hold, -2 * hold, 3 * hold}, within(0.0));
      assertThat(guard.rateGood).isFalse();
      assertThat(guard.accelGood).isTrue();
      sum += guard.angleVariance;
      assertThat(sum).isCloseTo(unseen(i * 0.04), within(1e-12));
    }
    guard.take(1, 1, 1, 0, 0, 9.8, 0.04);
    assertThat(guard.rateGood).isTrue();
    guard.take(1, Double.POSITIVE_INFINITY, 1, 0, 0, 9.8, 0.04);
    assertThat(guard.angleVariance).isCloseTo(unseen(0.04), within(1e-12));
  }

  @Test
  void aLossOfSecondsIsNotMoreUnsureThanARadian() {
    whole(0.01);
    guard.take(NAN, NAN, NAN, 0, 0, 9.8, 3);
    assertThat(guard.angleVariance).isEqualTo(1);
  }

  @Test
  void overAShortGapTheMeanOfBothEndsTurns() {
    // Given: usual steps of 10 ms, then one of 60 ms at (5, 2, -1). Expect: 10 ms of its own and 50
    // ms of the mean with (1, -2, 3), over 60 ms; unsure by 50 ms; velocity by 3^2 x 0.05 x 0.1.
    whole(0.01);
    guard.take(5, 2, -1, 0, 0, 9.8, 0.06);
    assertThat(new double[] {guard.rateX, guard.rateY, guard.rateZ})
        .containsExactly(
            new double[] {(5 + 5 * 3.0) / 6, 2 / 6.0, (-1 + 5 * 1.0) / 6}, within(1e-12));
    assertThat(guard.rateGood).isFalse();
    assertThat(guard.angleVariance).isCloseTo(unseen(0.05), within(1e-12));
    assertThat(guard.velocityVariance).isCloseTo(0.045, within(1e-12));
  }

  @Test
  void beyondATenthOfASecondTheTurnIsLeftAndPaidFor() {
    // Given: a step of 0.21 s, usual 10 ms: a gap of 0.2 s, of which 0.1 s bridged. Expect: left
    // over 0.1 s of the means (3, 0, 1), rad, squared, on top of the gap's own.
    whole(0.01);
    guard.take(5, 2, -1, 0, 0, 9.8, 0.21);
    assertThat(guard.rateX).isCloseTo((0.01 * 5 + 0.1 * 3) / 0.21, within(1e-12));
    assertThat(guard.angleVariance).isCloseTo(unseen(0.2) + Math.pow(0.4, 2), within(1e-12));
    guard.take(5, 2, -1, 0, 0, 9.8, 5);
    assertThat(guard.angleVariance).isEqualTo(1);
  }

  @ParameterizedTest
  @CsvSource({"5,2,-1", "-5,2,-1", "5,-8,-1", "-5,-8,1"})
  void whichWayItTurnedBeforeAGapDoesNotMatterForItsPrice(double x, double y, double z) {
    // Given: the unit as above, 1, -2 and 3 rad/s before the gap of 0.2 s, 0.1 s bridged. Expect:
    // the sizes of the three means over the 0.1 s that are left, squared, on top of the gap's own.
    whole(0.01);
    guard.take(x, y, z, 0, 0, 9.8, 0.21);
    double left = 0.1 * (Math.abs(x + 1) + Math.abs(y - 2) + Math.abs(z + 3)) / 2;
    assertThat(guard.angleVariance).isCloseTo(unseen(0.2) + left * left, within(1e-12));
  }

  @Test
  void theUsualStepFollowsSlowly() {
    // Given: steps of 10 ms, then of 14 ms: a twentieth of the difference each. Expect: after one
    // of 14 ms the usual is 10.2 ms, so 15.2 ms is not a gap and 15.4 ms is one.
    whole(0.01);
    whole(0.014);
    whole(0.0152);
    assertThat(guard.rateGood).isTrue();
    SampleGuard other = new SampleGuard(SampleLimits.unlimited());
    for (double stepS : new double[] {0.01, 0.014, 0.0154}) {
      other.take(1, 1, 1, 0, 0, 9.8, stepS);
    }
    assertThat(other.rateGood).isFalse();
    other.forgetStep();
    other.take(1, 1, 1, 0, 0, 9.8, 1);
    assertThat(other.rateGood).isTrue();
  }

  @ParameterizedTest
  @CsvSource({
    "29.98,0,0,true",
    "0,-29.98,0,true",
    "0,0,29.98,true",
    "29.9,-29.9,29.9,false",
    "-29.97,0,0,true"
  })
  void aRateAtFullScaleIsClipped(double x, double y, double z, boolean clipped) {
    // Given: 30 rad/s full scale; from 99.9 % on, 29.97. Expect: half the scale over 20 ms unsure.
    whole(0.01);
    guard.take(x, y, z, 0, 0, 9.8, 0.01);
    assertThat(guard.clipped).isEqualTo(clipped);
    assertThat(guard.rateGood).isEqualTo(!clipped);
    assertThat(guard.angleVariance).isCloseTo(clipped ? 15 * 15 * 0.01 * 0.02 : 0, within(1e-12));
    assertThat(guard.rateX).isEqualTo(x);
  }

  @ParameterizedTest
  @CsvSource({
    "99.95,0,0,true,true",
    "0,-99.95,0,true,true",
    "0,0,99.9,true,true",
    "99.8,-99.8,99.8,true,false",
    "NaN,0,0,false,false"
  })
  void aForceAtFullScaleOrLostSaysNothing(
      double x, double y, double z, boolean seen, boolean clipped) {
    whole(0.01);
    guard.take(1, 1, 1, x, y, z, 0.01);
    boolean good = seen && !clipped;
    assertThat(guard.accelSeen).isEqualTo(seen);
    assertThat(guard.accelGood).isEqualTo(good);
    assertThat(guard.clipped).isEqualTo(clipped);
    assertThat(guard.velocityVariance).isCloseTo(good ? 0 : 9 * 0.01 * 0.1, within(1e-12));
  }

  @Test
  void noStepIsNoSample() {
    for (double stepS : new double[] {0, -1, NAN, Double.POSITIVE_INFINITY}) {
      assertThat(guard.take(1, 1, 1, 1, 1, 1, stepS)).isFalse();
    }
  }

  @Test
  void impossibleLimitsAreRefused() {
    for (double[] l :
        new double[][] {{0, 1, 0, 0}, {1, 0, 0, 0}, {1, 1, -1, 0}, {1, 1, 0, -1}, {NAN, 1, 0, 0}}) {
      assertThatThrownBy(() -> new SampleLimits(l[0], l[1], l[2], l[3]))
          .isInstanceOf(IllegalArgumentException.class);
    }
    assertThat(new SampleLimits(1, 1, 0, 0).bridgeS()).isZero();
  }
}
