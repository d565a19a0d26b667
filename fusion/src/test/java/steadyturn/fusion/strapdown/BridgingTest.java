package steadyturn.fusion.strapdown;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * The spreads of bridges over streams for which they follow by hand: what the calmest body may do,
 * what a parabola leaves beside a straight line, a tilt's part of gravity, and values cut off.
 */
class BridgingTest {

  private static final double STEP_S = 0.001;

  /** What a line misses of a sine of 1 and this pace, at the worst phase, as 1.5 SD. */
  private static double missed(double paceHz, double t) {
    double pace = 2 * Math.PI * paceHz;
    return Math.min(pace * pace * t * t * t / 12, t) / 1.5;
  }

  /** The same once more summed. */
  private static double missedWay(double paceHz, double t) {
    double pace = 2 * Math.PI * paceHz;
    return Math.min(pace * pace * t * t * t * t / 24, t * t / 2) / 1.5;
  }

  private static UnitStream made(
      double lengthS, DoubleFunction<Vector3> rate, DoubleFunction<Vector3> force) {
    UnitFacts facts = new UnitFacts(BodyPoint.PELVIS, "", 1 / STEP_S, 50, 10, false);
    return MadeUnit.of(facts, lengthS, rate, force);
  }

  private static Vector3 none(double t) {
    return Vector3.ZERO;
  }

  private static Vector3 resting(double t) {
    return new Vector3(0, 0, 9.80665);
  }

  /** Loses the rate, the force, or both between two samples that stay. */
  private static UnitStream lost(UnitStream stream, String what, int before, int after) {
    for (int axis = 0; axis < 3; axis++) {
      if (what.contains("rate")) {
        Arrays.fill(stream.gyroColumnRadPerS(axis), before + 1, after, Double.NaN);
      }
      if (what.contains("force")) {
        Arrays.fill(stream.accelColumnMps2(axis), before + 1, after, Double.NaN);
      }
    }
    return stream;
  }

  private static Bridge only(UnitStream stream) {
    List<Bridge> found = StrapdownSamples.of(stream).bridges();
    assertThat(found).hasSize(1);
    return found.get(0);
  }

  private static void has(Bridge found, double turn, double velocity, double place) {
    assertThat(found.rotationSdRad()).as("turn").isCloseTo(turn, within(1e-6 * turn + 1e-15));
    assertThat(found.velocitySdMps())
        .as("velocity")
        .isCloseTo(velocity, within(1e-6 * velocity + 1e-15));
    assertThat(found.placeSdM()).as("place").isCloseTo(place, within(1e-6 * place + 1e-15));
  }

  @Test
  void aStillBodyMayDoTheLeastAndTiltsGravityWithIt() {
    // Given: a still unit, rows without rate and force for 0.1, 0.2, 0.5 and 2 s. Expect: a sine of
    // 1 deg/s along all axes together at 1.3 Hz and of 0.1 m/s^2 along each at 3 Hz, from some
    // length on all of it; the tilt's part of gravity over half the time on top, its way a third.
    // Within rounding.
    for (double t : new double[] {0.1, 0.2, 0.5, 2}) {
      int after = 500 + (int) Math.round(t / STEP_S);
      UnitStream stream = made(4, BridgingTest::none, BridgingTest::resting);
      Bridge found = only(lost(stream, "rate and force", 500, after));
      double turn = Math.toRadians(1) / Math.sqrt(3) * missed(1.3, t);
      double tilted = 9.80665 * turn * t / 2;
      has(
          found,
          turn,
          Math.hypot(0.1 * missed(3, t), tilted),
          Math.hypot(0.1 * missedWay(3, t), tilted * t / 3));
      assertThat(found.after()).isEqualTo(501);
      assertThat(found.beforeS()).isEqualTo(0.5);
      assertThat(found.afterS()).isCloseTo(0.5 + t, within(1e-12));
    }
  }

  @Test
  void aLostForceTurnsNothing() {
    // Given: a still unit that lacks its force for 0.1 s. Expect: no turn, no tilted gravity; the
    // force's own sine. A pass over rates alone sees no bridge. Within rounding.
    UnitStream stream = made(2, BridgingTest::none, BridgingTest::resting);
    lost(stream, "force", 500, 600);
    Bridge found = only(stream);
    has(found, 0, 0.1 * missed(3, 0.1), 0.1 * missedWay(3, 0.1));
    assertThat(found.after()).isEqualTo(600);
    assertThat(StrapdownSamples.overLostRates(stream)).isEmpty();
  }

  @Test
  void aSteadyTurnIsFollowedByTheLineAndChargedWithItsPace() {
    // Given: 0.5 rad/s about an axis between all three, no force, 0.2 s of rates lost. Expect: the
    // line itself errs by nothing; a sine of that rate is charged, in thirds of its square. The
    // same to a pass over rates alone. Within rounding.
    Vector3 rate = new Vector3(2, -1, 2).unit().times(0.5);
    UnitStream stream = made(2, t -> rate, BridgingTest::none);
    lost(stream, "rate", 800, 1000);
    double t = 0.2;
    double turn = 0.5 / Math.sqrt(3) * missed(1.3, t);
    double tilted = 9.80665 * turn * t / 2;
    Bridge found = only(stream);
    has(
        found,
        turn,
        Math.hypot(0.1 * missed(3, t), tilted),
        Math.hypot(0.1 * missedWay(3, t), tilted * t / 3));
    assertThat(StrapdownSamples.overLostRates(stream)).containsExactly(found);
  }

  @Test
  void aValueCutOffIsAQuarterOfFullScaleFartherOverItsTime() {
    // Given: full scales of 10 rad/s and 50 m/s^2; a force at -50 for 40 samples, later a rate at
    // 10 for 50. Expect: by time a velocity of 12.5 m/s^2 over the 41 ms between the good samples
    // and half of that as its way, then a turn of 2.5 rad/s over 51 ms. Rates alone: cut rates
    // are left as shown. Within rounding.
    UnitStream stream = made(2, BridgingTest::none, BridgingTest::resting);
    Arrays.fill(stream.accelColumnMps2(1), 500, 540, -50);
    Arrays.fill(stream.gyroColumnRadPerS(2), 900, 950, 10);
    List<Bridge> found = StrapdownSamples.of(stream).bridges();
    assertThat(found).hasSize(2);
    has(found.get(0), 0, 12.5 * 0.041, 12.5 * 0.041 * 0.041 / 2);
    assertThat(found.get(0).after()).isEqualTo(540);
    has(found.get(1), 2.5 * 0.051, 0, 0);
    assertThat(found.get(1).after()).isEqualTo(950);
    assertThat(found.get(1).beforeS()).isCloseTo(0.899, within(1e-12));
    assertThat(StrapdownSamples.overLostRates(stream)).isEmpty();
  }

  @Test
  void aLostForceBeforeALostRateComesFirst() {
    // Given: forces lost at 0.4 s, rates at 0.9 s. Expect: by time, whatever the kind.
    UnitStream stream = made(2, BridgingTest::none, BridgingTest::resting);
    lost(lost(stream, "rate", 900, 1100), "force", 400, 600);
    assertThat(StrapdownSamples.of(stream).bridges())
        .extracting(Bridge::beforeS)
        .containsExactly(0.4, 0.9);
  }

  @Test
  void aSlightLossOfAStillBodyIsNoBridge() {
    // Given: 10 ms lost. Expect: 1 deg/s and 0.1 m/s^2 leave less than a unit's other errors do.
    UnitStream stream = made(2, BridgingTest::none, BridgingTest::resting);
    lost(stream, "rate and force", 500, 510);
    assertThat(StrapdownSamples.of(stream).bridges()).isEmpty();
    assertThat(StrapdownSamples.overLostRates(stream)).isEmpty();
  }
}
