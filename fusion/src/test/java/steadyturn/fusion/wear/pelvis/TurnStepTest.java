package steadyturn.fusion.wear.pelvis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.InstanceOfAssertFactories.DOUBLE;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.StepReason;
import steadyturn.fusion.wear.StepResult;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * How a turn on the spot is judged. Given in all: a unit at 200 Hz, upright, marked from 1 to 9 s.
 */
class TurnStepTest {

  private static final double RATE_HZ = 200;

  private static StepResult judge(DoubleUnaryOperator rateDegPerS) {
    int n = (int) (10 * RATE_HZ);
    double[] timeS = new double[n];
    double[][] accel = new double[3][n];
    double[][] gyro = new double[3][n];
    for (int i = 0; i < n; i++) {
      timeS[i] = i / RATE_HZ;
      accel[0][i] = 9.80665; // x up the spine
      gyro[0][i] = Math.toRadians(rateDegPerS.applyAsDouble(timeS[i]));
    }
    UnitFacts facts = new UnitFacts(BodyPoint.PELVIS, "made", RATE_HZ, 157, 35, true);
    return TurnStep.of(new UnitStream(facts, timeS, accel, gyro), Vector3.ZERO, 1, 9).result();
  }

  /** Rate of a swing to and fro of so many deg each way, from 2 to 8 s. */
  private static DoubleUnaryOperator toAndFro(double deg, double offsetDeg) {
    double omega = 2 * Math.PI / 3;
    return t -> t < 2 || t > 8 ? 0 : deg * omega * Math.cos(omega * (t - 2)) + offsetDeg / 6;
  }

  /** Given: 30 deg to each side. Expect: good; the figure 30 deg within 0.2 (sampling). */
  @Test
  void aTurnToBothSidesIsGood() {
    StepResult result = judge(toAndFro(30, 0));
    assertThat(result.used()).as(result.why().code().word()).isTrue();
    assertThat(result.quality()).isCloseTo(30, within(0.2));
  }

  /** Given: 8 deg to each side. Expect: do it again, with the turn that was seen. */
  @Test
  void aSmallTurnIsToBeDoneAgain() {
    StepResult result = judge(toAndFro(8, 0));
    assertThat(result.used()).isFalse();
    assertThat(result.why().code()).isEqualTo(StepReason.TURN_LITTLE);
    assertThat(result.why().args().get("largestDeg"))
        .asInstanceOf(DOUBLE)
        .isCloseTo(8, within(1.0));
  }

  /** Given: 70 deg to each side within 3 s, so 147 deg/s. Expect: again, slower. */
  @Test
  void aFastTurnIsToBeDoneAgain() {
    Reason why = judge(toAndFro(70, 0)).why();
    assertThat(why.code()).isEqualTo(StepReason.TURN_FAST);
    assertThat(why.args().get("rateDegPerS")).asInstanceOf(DOUBLE).isCloseTo(147, within(0.5));
  }

  /** Given: 45 deg to each side, ending 25 deg away. Expect: again, with the feet kept. */
  @Test
  void aTurnThatDoesNotComeBackIsToBeDoneAgain() {
    Reason why = judge(toAndFro(45, 25)).why();
    assertThat(why.code()).isEqualTo(StepReason.TURN_NOT_BACK);
    assertThat(why.args().get("offDeg")).asInstanceOf(DOUBLE).isCloseTo(25, within(0.5));
  }

  /** Given: turning all the time. Expect: again, with stillness before and after. */
  @Test
  void aTurnWithoutStillnessIsToBeDoneAgain() {
    assertThat(judge(t -> 30 * Math.cos(t)).why()).isEqualTo(Reason.of(StepReason.TURN_NOT_STILL));
  }

  /** Rate of a turn by so many deg within 2 s from an instant on, as half a sine. */
  private static double halfSine(double t, double fromS, double deg) {
    double u = (t - fromS) / 2;
    return u < 0 || u > 1 ? 0 : deg * Math.PI / 4 * Math.sin(Math.PI * u);
  }

  /**
   * Given: a deg to the left, b to the right, ending off by so many. Expect: good from 15 deg to
   * the lesser and 25 to the larger side on, under 120 deg/s ((a + b) pi / 4 here) and within 12
   * deg of the start; the figure is the lesser side. Within 0.2 deg (sampling).
   */
  @ParameterizedTest
  @CsvSource({
    "30,14.5,0,false", "30,15.5,0,true", "14.5,30,0,false", "15.5,30,0,true", "24,20,0,false",
    "26,20,0,true", "20,26,0,true", "20,24,0,false", "76,76,0,true", "77,77,0,false",
    "40,40,11,true", "40,40,13,false", "40,40,-11,true", "40,40,-13,false"
  })
  void theBordersOfATurn(double a, double b, double off, boolean good) {
    StepResult result =
        judge(t -> halfSine(t, 2, a) + halfSine(t, 4, -a - b) + halfSine(t, 6, b + off));
    assertThat(result.used()).isEqualTo(good);
    assertThat(result.quality()).isCloseTo(Math.min(a, b), within(0.2));
    assertThat(result.limit()).isEqualTo(15);
  }

  /**
   * Given: 30 deg to each side, and no rates for so long in the middle of it. Expect: a slow turn
   * is bridged up to 150 ms; beyond that again, with what was missing.
   */
  @ParameterizedTest
  @CsvSource({"0.145, true", "0.155, false"})
  void aTurnMayBeUnseenForUpTo150Milliseconds(double missingS, boolean good) {
    DoubleUnaryOperator turn = toAndFro(30, 0);
    double toS = 4.6 + missingS - 1e-6;
    StepResult result = judge(t -> t > 4.600001 && t < toS ? Double.NaN : turn.applyAsDouble(t));
    assertThat(result.used()).isEqualTo(good);
    if (!good) {
      assertThat(result.why().code()).isEqualTo(StepReason.GAP);
    }
  }
}
