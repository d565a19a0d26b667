package steadyturn.fusion.strapdown;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** The pass against motions whose end is known in closed form. */
class ClosedFormTest {

  private static final double G = 9.80665;

  private static UnitFacts at(double rateHz) {
    return UnitFacts.plain(BodyPoint.PELVIS, rateHz);
  }

  private static UnitState still(int bridges) {
    return UnitState.start(Quaternion.IDENTITY, Vector3.ZERO, bridges);
  }

  /** Samples at given instants with no rate and the force (3, -2, 5) + (10, 40, -30) t. */
  private static UnitStream rising(double... timeS) {
    double[][] force = new double[3][timeS.length];
    for (int i = 0; i < timeS.length; i++) {
      Vector3 f = new Vector3(3, -2, 5).plus(new Vector3(10, 40, -30).times(timeS[i]));
      for (int axis = 0; axis < 3; axis++) {
        force[axis][i] = f.get(axis);
      }
    }
    return new UnitStream(at(100), timeS, force, new double[3][timeS.length]);
  }

  private static double[] grid(int n, double stepS) {
    double[] out = new double[n];
    for (int i = 0; i < n; i++) {
      out[i] = 2 + i * stepS;
    }
    return out;
  }

  private static void near(Vector3 found, Vector3 expect, double within) {
    assertThat(found.minus(expect).norm()).as("%s, not %s", found, expect).isLessThan(within);
  }

  @Test
  void aConstantRateAboutATiltedAxisTurnsAConstantForce() {
    // Given: a tilted start that moves, a unit with every error there is (biases, a full gyro
    // matrix, three scales), constant readings, 1.2 s at 1000 Hz. Expect (closed form, w = |rate|,
    // n its axis): velocity = v0 + q0 [f_n t + f_p sin(wt)/w + n x f (1 - cos wt)/w] - g t z, place
    // its integral. Within 1e-5: the trapezoid of 1 ms, (w h)^2 / 12 of 10 m/s^2 for 1.2 s.
    Vector3 shownRate = new Vector3(2.1, -1.4, 3.2);
    Vector3 shownForce = new Vector3(4, 7, -5);
    double[] step = new double[UnitState.SIZE];
    for (int i = 3; i < step.length; i++) {
      step[i] = 0.01 * i * (i % 2 == 0 ? 1 : -1);
    }
    UnitState state =
        UnitState.start(Quaternion.fromRotationVector(new Vector3(0.5, -0.3, 0.8)), Vector3.ZERO, 0)
            .plus(step);
    Vector3 rate =
        new Vector3(
            turned(step, 12, shownRate.minus(state.gyroBiasRadPerS())) + 2.1 - step[6],
            turned(step, 15, shownRate.minus(state.gyroBiasRadPerS())) - 1.4 - step[7],
            turned(step, 18, shownRate.minus(state.gyroBiasRadPerS())) + 3.2 - step[8]);
    Vector3 force =
        new Vector3(
            (1 + step[21]) * (4 - step[9]),
            (1 + step[22]) * (7 - step[10]),
            (1 + step[23]) * (-5 - step[11]));
    UnitStream samples = MadeUnit.of(at(1000), 1.201, t -> shownRate, t -> shownForce);
    Strapdown pass = Strapdown.run(StrapdownSamples.of(samples), state, G);
    int k = pass.indexAt(1.2 - 1e-9);
    double t = pass.timeS(k);
    assertThat(t).isCloseTo(1.2, within(1e-9));
    double w = rate.norm();
    Vector3 n = rate.unit();
    Vector3 along = n.times(n.dot(force));
    Vector3 across = force.minus(along);
    Vector3 round = n.cross(force);
    double s = Math.sin(w * t);
    double c = Math.cos(w * t);
    Vector3 impulse = along.times(t).plus(across.times(s / w)).plus(round.times((1 - c) / w));
    Vector3 path =
        along
            .times(t * t / 2)
            .plus(across.times((1 - c) / (w * w)))
            .plus(round.times((t - s / w) / w));
    Quaternion q0 = state.qLevelUnit();
    near(pass.rateRadPerS(k), rate, 1e-12);
    near(
        q0.times(Quaternion.fromRotationVector(rate.times(t)))
            .conjugate()
            .times(pass.qLevelUnit(k))
            .rotationVector(),
        Vector3.ZERO,
        1e-9);
    Vector3 v0 = state.velocityMps();
    near(pass.velocityMps(k), v0.plus(q0.rotate(impulse)).minus(new Vector3(0, 0, G * t)), 1e-5);
    near(
        pass.positionM(k),
        v0.times(t).plus(q0.rotate(path)).minus(new Vector3(0, 0, G * t * t / 2)),
        1e-5);
  }

  private static double turned(double[] m, int row, Vector3 u) {
    return m[row] * u.x() + m[row + 1] * u.y() + m[row + 2] * u.z();
  }

  @Test
  void aForceThatRisesInALineMovesWithTheCubeOfTime() {
    // Given: steps of 3 to 24 ms, no turn. Expect: exactly v = a t + b t^2 / 2 and the place a t^2
    // / 2 + b t^3 / 6 at every sample, as the line between samples is the force itself. Within
    // rounding.
    StrapdownSamples samples =
        StrapdownSamples.of(rising(0, 0.003, 0.013, 0.037, 0.05, 0.074, 0.08, 0.095));
    Strapdown pass = Strapdown.run(samples, still(samples.bridges().size()), 0);
    Vector3 a = new Vector3(3, -2, 5);
    Vector3 b = new Vector3(10, 40, -30);
    for (int k = 0; k < pass.size(); k++) {
      double t = pass.timeS(k);
      near(pass.velocityMps(k), a.times(t).plus(b.times(t * t / 2)), 1e-12);
      near(pass.positionM(k), a.times(t * t / 2).plus(b.times(t * t * t / 6)), 1e-12);
    }
  }

  @Test
  void overAStepFrom25MillisecondsOnTheLineEndsInMeansOfTwelve() {
    // Given: the rising force b t at 800 Hz (ten samples within 12 ms, their middle 5.625 ms
    // inside), 30 ms missing. Expect: the line begins b 5.625 ms lower and ends as much higher, so
    // the velocity behind is as without the gap and the place short by b 0.005625 0.03^2 / 6.
    // Within rounding.
    double[] all = grid(161, 0.00125);
    double[] holed = new double[138];
    System.arraycopy(all, 0, holed, 0, 69); // to 2.085
    System.arraycopy(all, 92, holed, 69, 69); // from 2.115
    Strapdown whole = Strapdown.run(StrapdownSamples.of(rising(all)), still(0), 0);
    StrapdownSamples samples = StrapdownSamples.of(rising(holed));
    Strapdown pass = Strapdown.run(samples, still(samples.bridges().size()), 0);
    assertThat(pass.timeS(69) - pass.timeS(68)).isCloseTo(0.03, within(1e-9));
    near(pass.velocityMps(69), whole.velocityMps(92), 1e-9);
    Vector3 b = new Vector3(10, 40, -30);
    near(whole.positionM(92).minus(pass.positionM(69)), b.times(0.005625 * 0.03 * 0.03 / 6), 1e-9);
  }

  @Test
  void theEndOfALineIsTheSampleOrTheMeanBesideIt() {
    // Given: as above, and forces of samples 60 to 79 lost. Expect: below 25 ms the sample itself;
    // from there on the mean of ten samples outward, of fewer at the stream's edge, of those alone
    // that have a force; where none has, the line's own value. Within rounding.
    UnitStream stream = rising(grid(161, 0.00125));
    for (int axis = 0; axis < 3; axis++) {
      Arrays.fill(stream.accelColumnMps2(axis), 60, 80, Double.NaN);
    }
    StrapdownSamples samples = StrapdownSamples.of(stream);
    Strapdown pass = Strapdown.run(samples, still(samples.bridges().size()), 0);
    double perSample = 40 * 0.00125;
    double atZero = -2 + 40 * 2;
    end(pass, 120, -1, 0.0249, atZero + 120 * perSample);
    end(pass, 120, -1, 0.025, atZero + 115.5 * perSample);
    end(pass, 120, 1, 0.025, atZero + 124.5 * perSample);
    end(pass, 2, -1, 0.03, atZero + 1 * perSample);
    end(pass, 158, 1, 0.03, atZero + 159 * perSample);
    end(pass, 81, -1, 0.03, atZero + 80.5 * perSample);
    end(pass, 70, -1, 0.03, pass.force[1][70]);
  }

  private static void end(Strapdown pass, int k, int step, double lineS, double expect) {
    assertThat(pass.endMps2(1, k, step, lineS))
        .as("sample %d, step %d, %s s", k, step, lineS)
        .isCloseTo(expect, within(1e-9));
  }

  @Test
  void aLostForceLiesOnTheLineBetweenItsNeighbours() {
    // Given: forces lost at the start (3), inside (6 samples, 8.75 ms: neighbours themselves; 24
    // samples, 31 ms: means of ten) and at the end (4). Expect: at the edges the nearest force
    // seen; inside the line through the ends. Within rounding. Without any force: none.
    UnitStream stream = rising(grid(161, 0.00125));
    for (int axis = 0; axis < 3; axis++) {
      double[] f = stream.accelColumnMps2(axis);
      Arrays.fill(f, 0, 3, Double.NaN);
      Arrays.fill(f, 40, 46, Double.NaN);
      Arrays.fill(f, 90, 114, Double.NaN);
      Arrays.fill(f, 157, 161, Double.NaN);
    }
    StrapdownSamples samples = StrapdownSamples.of(stream);
    Strapdown pass = Strapdown.run(samples, still(samples.bridges().size()), 0);
    double perSample = 40 * 0.00125;
    double atZero = -2 + 40 * 2;
    assertThat(pass.force[1][0]).isCloseTo(atZero + 3 * perSample, within(1e-9));
    assertThat(pass.force[1][2]).isCloseTo(atZero + 3 * perSample, within(1e-9));
    assertThat(pass.force[1][160]).isCloseTo(atZero + 156 * perSample, within(1e-9));
    assertThat(pass.force[1][42]).isCloseTo(atZero + 42 * perSample, within(1e-9));
    double begin = 89 - 4.5;
    double end = 114 + 4.5;
    assertThat(pass.force[1][95])
        .isCloseTo(atZero + (begin + 6.0 / 25 * (end - begin)) * perSample, within(1e-9));
    for (int axis = 0; axis < 3; axis++) {
      Arrays.fill(stream.accelColumnMps2(axis), Double.NaN);
    }
    pass = Strapdown.run(StrapdownSamples.of(stream), still(0), 0);
    near(pass.positionM(160), Vector3.ZERO, 1e-15);
  }

  @Test
  void behindABridgeTheStateJumps() {
    // Given: a still unit, 0.2 s missing before its sample 50, a jump of a turn of 90 deg about z,
    // a
    // velocity and a place. Expect: nothing before; from sample 50 on the turn, the velocity, and
    // the place with the velocity's way since. Within rounding, forces along z alone.
    UnitStream all = MadeUnit.of(at(200), 1, t -> Vector3.ZERO, t -> new Vector3(0, 0, G));
    for (int axis = 0; axis < 3; axis++) {
      Arrays.fill(all.gyroColumnRadPerS(axis), 50, 90, Double.NaN);
    }
    StrapdownSamples samples = StrapdownSamples.of(all);
    assertThat(samples.bridges()).hasSize(1);
    assertThat(samples.bridges().get(0).after()).isEqualTo(50);
    double[] step = new double[UnitState.SIZE + Bridge.SIZE];
    double[] jump = {0, 0, Math.PI / 2, 0.1, 0.2, -0.3, 0.04, 0.05, 0.06};
    System.arraycopy(jump, 0, step, UnitState.SIZE, 9);
    Strapdown pass = Strapdown.run(samples, still(1).plus(step), G);
    near(pass.qLevelUnit(49).rotationVector(), Vector3.ZERO, 1e-12);
    near(pass.velocityMps(49), Vector3.ZERO, 1e-12);
    near(pass.positionM(49), Vector3.ZERO, 1e-12);
    for (int k : new int[] {50, 51, 90}) {
      double behindS = pass.timeS(k) - 90 / 200.0;
      near(pass.qLevelUnit(k).rotationVector(), new Vector3(0, 0, Math.PI / 2), 1e-12);
      near(pass.velocityMps(k), new Vector3(0.1, 0.2, -0.3), 1e-12);
      near(
          pass.positionM(k),
          new Vector3(0.04, 0.05, 0.06).plus(new Vector3(0.1, 0.2, -0.3).times(behindS)),
          1e-12);
    }
  }

  @Test
  void anInstantIsGivenTheFirstSampleAtOrAfterIt() {
    Strapdown pass = Strapdown.run(StrapdownSamples.of(rising(1, 1.5, 2, 2.25)), still(0), 0);
    assertThat(pass.indexAt(-7)).isEqualTo(0);
    assertThat(pass.indexAt(1)).isEqualTo(0);
    assertThat(pass.indexAt(1.01)).isEqualTo(1);
    assertThat(pass.indexAt(1.5)).isEqualTo(1);
    assertThat(pass.indexAt(2.2)).isEqualTo(3);
    assertThat(pass.indexAt(2.25)).isEqualTo(3);
    assertThat(pass.indexAt(9)).isEqualTo(3);
  }

  @Test
  void threeSamplesWithARateAreNeededToSeeABridge() {
    // Given: five rows, the rates of two or three of them lost. Expect: of three whole ones the
    // bridge over the rest, to batch and to a pass over rates alone; of two none.
    UnitStream three = rising(grid(5, 0.01));
    Arrays.fill(three.gyroColumnRadPerS(1), 2, 4, Double.NaN);
    UnitStream two = rising(grid(5, 0.01));
    Arrays.fill(two.gyroColumnRadPerS(1), 1, 4, Double.NaN);
    assertThat(StrapdownSamples.of(three).bridges()).hasSize(1);
    assertThat(StrapdownSamples.overLostRates(three)).hasSize(1);
    assertThat(StrapdownSamples.of(three).timeS(2)).isEqualTo(2.04);
    assertThat(StrapdownSamples.of(two).bridges()).isEmpty();
    assertThat(StrapdownSamples.overLostRates(two)).isEmpty();
    assertThat(StrapdownSamples.overLostRates(rising(grid(5, 0.01)))).isEmpty();
  }
}
