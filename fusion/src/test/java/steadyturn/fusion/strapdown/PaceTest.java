package steadyturn.fusion.strapdown;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.stat.StatUtils;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * What a bridge is charged beside straight lines, parabolas and kinks, by hand. Steps of 1/1024 s
 * are exact in binary: 0.1 s before a gap reach to its 102nd sample, 0.1 s behind it to the 103rd,
 * 0.04 s to the 40th and the 41st.
 */
class PaceTest {

  private static final double H = 1.0 / 1024;
  private static final double ROOT3 = Math.sqrt(3);

  /** A direction between all axes. */
  private static final Vector3 ALL = new Vector3(2.0 / 3, -1.0 / 3, 2.0 / 3);

  /** What a line misses of a sine of 1 at this pace, at the worst phase, as 1.5 SD. */
  private static double missed(double paceHz, double t) {
    double pace = 2 * Math.PI * paceHz;
    return Math.min(pace * pace * t * t * t / 12, t) / 1.5;
  }

  /** Rates by the time since the middle of a gap, which is lost. */
  private static Bridge rates(int before, int steps, int end, DoubleFunction<Vector3> rate) {
    double middle = (before + steps / 2.0) * H;
    UnitFacts facts = UnitFacts.plain(BodyPoint.PELVIS, 1024);
    UnitStream stream = MadeUnit.of(facts, end * H, t -> rate.apply(t - middle), t -> Vector3.ZERO);
    for (int axis = 0; axis < 3; axis++) {
      Arrays.fill(stream.gyroColumnRadPerS(axis), before + 1, before + steps, Double.NaN);
    }
    assertThat(StrapdownSamples.of(stream).bridges()).hasSize(1);
    return StrapdownSamples.of(stream).bridges().get(0);
  }

  private static void turns(Bridge found, double part, double... parts) {
    double square = 0;
    for (double one : parts) {
      square += one * one;
    }
    double expect = Math.sqrt(square);
    assertThat(found.rotationSdRad()).isCloseTo(expect, within(part * expect));
  }

  /** The bend's charge: area between a line and a cubic with such slopes at its ends. */
  private static double bend(double differ, double both, double t) {
    double wholly = Math.min(1, t / 0.1);
    return (differ + wholly * (both - differ)) / ROOT3 * t * t / 12;
  }

  /** What a line of a length misses of a parabola seen every H, squared over three axes, each. */
  private static double ofParabola(double size, double t) {
    return size * (t * t * t - t * H * H) / 6 / ROOT3;
  }

  @Test
  void aRateThatRisesInALineIsChargedWithItsSlopesAndItsLargest() {
    // Given: 3 rad/s^2 through zero in the middle, 40 and 200 steps lost. Expect: no error of
    // lines; the wave of the largest rate, 103 samples behind the gap; both slopes, in the part
    // t / 0.1 s, at most whole. Within rounding.
    for (int steps : new int[] {40, 200}) {
      double t = steps * H;
      Bridge found = rates(600, steps, 1600, s -> ALL.times(3 * s));
      turns(found, 1e-9, 3 * (103 * H + t / 2) / ROOT3 * missed(1.3, t), bend(0, 6, t));
    }
  }

  @Test
  void slopesThatDifferCountWhollyForWhatTheyDiffer() {
    // Given: 3 rad/s^2 about x before the middle and 4 about z behind it, 40 steps lost. Expect:
    // the slopes differ by 5 and add up to 7. Within rounding.
    double t = 40 * H;
    Bridge found =
        rates(600, 40, 1600, s -> s < 0 ? new Vector3(3 * s, 0, 0) : new Vector3(0, 0, 4 * s));
    turns(found, 1e-9, 4 * (103 * H + t / 2) / ROOT3 * missed(1.3, t), bend(5, 7, t));
  }

  @Test
  void aParabolaLeavesACubeOfTheLengthBesideALine() {
    // Given: 45 rad/s^3 about all axes, 40 steps lost. Expect: the lines' errors (t^3 - t h^2) / 6
    // wherever they are laid; slopes of the middles of 40 samples before and 41 behind; the
    // largest rate. Near the start and the end of the stream lines fit on one side alone, which
    // tell the same. Within rounding.
    double t = 40 * H;
    double largest = 45 * Math.pow(103 * H + t / 2, 2) / ROOT3 * missed(1.3, t);
    double lines = ofParabola(45, t);
    double slopes = 90 * (t + 40.5 * H);
    turns(
        rates(600, 40, 1600, s -> ALL.times(45 * s * s)),
        1e-9,
        lines,
        largest,
        bend(slopes, slopes, t));
    double atStart = 90 * (t + 25.5 * H);
    turns(
        rates(10, 40, 1600, s -> ALL.times(45 * s * s)),
        1e-9,
        lines,
        largest,
        bend(atStart, atStart, t));
    double atEnd = 90 * (t + 25 * H);
    double before = 45 * Math.pow(102 * H + t / 2, 2) / ROOT3 * missed(1.3, t);
    turns(
        rates(600, 40, 651, s -> ALL.times(45 * s * s)),
        1e-9,
        lines,
        before,
        bend(atEnd, atEnd, t));
  }

  @Test
  void whereNoLineFitsThePaceAloneIsCharged() {
    // Given: the parabola with one sample before the gap and 11 behind. Expect: no errors of
    // lines, no slope of one sample. Within rounding.
    double t = 40 * H;
    double slope = 90 * (t / 2 + 5 * H);
    double largest = 45 * Math.pow(10 * H + t / 2, 2) / ROOT3 * missed(1.3, t);
    Bridge found = rates(0, 40, 51, s -> ALL.times(45 * s * s));
    turns(found, 1e-9, largest, bend(slope, slope, t));
  }

  @Test
  void errorsOfBothSidesAreTakenTogether() {
    // Given: a parabola of 90 rad/s^3 that ends at the last sample before the gap, nothing behind.
    // Expect: half of the lines err, so the root of a half. Within 2 %: 15 or 16 of 31 lines.
    double t = 40 * H;
    Bridge found = rates(600, 40, 1600, s -> ALL.times(s < 0 ? 90 * (s + t / 2) * (s + t / 2) : 0));
    double slope = 180 * 20 * H;
    turns(
        found,
        0.02,
        ofParabola(90, t) / Math.sqrt(2),
        90 * Math.pow(102 * H, 2) / ROOT3 * missed(1.3, t),
        bend(slope, slope, t));
  }

  @Test
  void whatLiesFartherAwayIsNotAsked() {
    // Given: 3 rad/s at 200 Hz from 0.1 s and a gap's length beside the gap on, rest within, 0.2 s
    // lost. Expect: what a still body is charged, 1 deg/s. Within rounding.
    double t = 204 * H;
    double away = t / 2 + 0.1 + t + 2 * H;
    Bridge found =
        rates(
            700,
            204,
            1600,
            s -> ALL.times(Math.abs(s) > away ? 3 * Math.sin(400 * Math.PI * s) : 0));
    turns(found, 1e-9, Math.toRadians(1) / ROOT3 * missed(1.3, t));
  }

  @Test
  void aForceIsChargedWithItsParabolaAndTheHeightOfItsWave() {
    // Given: no turn, a force of 3000 m/s^4 along all axes, 20 steps of it lost. Expect: velocity
    // (t^3 - t h^2) / 6 and place (t^4 - t^2 h^2) / 12 of the parabola, with a sine of the height
    // root 2 times the spread of the 226 samples around, those of the line in the gap included.
    // Within rounding.
    double t = 20 * H;
    double middle = 610 * H;
    UnitStream stream =
        MadeUnit.of(
            UnitFacts.plain(BodyPoint.PELVIS, 1024),
            1600 * H,
            s -> Vector3.ZERO,
            s -> ALL.times(3000 * (s - middle) * (s - middle)));
    for (int axis = 0; axis < 3; axis++) {
      Arrays.fill(stream.accelColumnMps2(axis), 601, 620, Double.NaN);
    }
    double[] around = new double[226];
    for (int k = 498; k <= 723; k++) {
      double s = Math.max(t / 2, Math.abs(k * H - middle));
      around[k - 498] = 3000 * s * s;
    }
    double height = Math.sqrt(2 * StatUtils.populationVariance(around) / 3);
    Bridge found = StrapdownSamples.of(stream).bridges().get(0);
    double pace = 2 * Math.PI * 3;
    double velocity = Math.hypot(ofParabola(3000, t), height * missed(3, t));
    double place =
        Math.hypot(
            3000 * (t * t * t * t - t * t * H * H) / 12 / ROOT3,
            height * pace * pace * t * t * t * t / 24 / 1.5);
    assertThat(found.velocitySdMps()).isCloseTo(velocity, within(1e-9 * velocity));
    assertThat(found.placeSdM()).isCloseTo(place, within(1e-9 * place));
    assertThat(found.rotationSdRad()).isZero();
  }
}
