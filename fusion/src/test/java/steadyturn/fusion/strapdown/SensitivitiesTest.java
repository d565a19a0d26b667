package steadyturn.fusion.strapdown;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** The derivatives of a pass, in closed form and as differences of two whole passes. */
class SensitivitiesTest {

  private static final double G = Tumble.GRAVITY_MPS2;

  private static StrapdownSamples samples(
      double rateHz, double lengthS, Vector3 rate, Vector3 force) {
    return StrapdownSamples.of(
        MadeUnit.of(UnitFacts.plain(BodyPoint.PELVIS, rateHz), lengthS, t -> rate, t -> force));
  }

  @Test
  void aUnitThatDoesNotTurnHasThemInClosedForm() {
    // Given: no turn, force f along all axes, readings of a rate r that is all bias, 1000 Hz, t =
    // 0.4 s. Expect: turn by
    // gyro bias -t, velocity by it -(t^2 / 2) e x f, place -(t^3 / 6) e x f; velocity by accel bias
    // -t, by scale t (f - b), place t^2 / 2 of those. Within 1e-4: trapezoid of 8 ms, (8 ms)^2 t /
    // 12 of 10 m/s^2.
    Vector3 r = new Vector3(0.5, -0.8, 1.1);
    Vector3 f = new Vector3(6, -3, 9);
    UnitState state = UnitState.start(Quaternion.IDENTITY, r, 0);
    double[] step = new double[UnitState.SIZE];
    Vector3 b = new Vector3(1, 2, -1.5);
    for (int axis = 0; axis < 3; axis++) {
      step[UnitState.ACCEL_BIAS + axis] = b.get(axis);
    }
    Strapdown pass = Strapdown.run(samples(1000, 0.5, r, f), state.plus(step), G);
    double t = 0.4;
    Vector3 felt = f.minus(b);
    for (int k : new int[] {400, 403}) {
      t = pass.timeS(k);
      double[][] found = Sensitivities.everywhere(pass).of(k);
      Vector3[] unit = {Vector3.X, Vector3.Y, Vector3.Z};
      for (int axis = 0; axis < 3; axis++) {
        Vector3 lever = unit[axis].cross(felt);
        is(found, 0, UnitState.GYRO_BIAS + axis, unit[axis].times(-t));
        is(found, 3, UnitState.GYRO_BIAS + axis, lever.times(-t * t / 2));
        is(found, 6, UnitState.GYRO_BIAS + axis, lever.times(-t * t * t / 6));
        is(found, 3, UnitState.ACCEL_BIAS + axis, unit[axis].times(-t));
        is(found, 6, UnitState.ACCEL_BIAS + axis, unit[axis].times(-t * t / 2));
        is(found, 3, UnitState.ACCEL_SCALE + axis, unit[axis].times(t * felt.get(axis)));
        is(found, 6, UnitState.ACCEL_SCALE + axis, unit[axis].times(t * t / 2 * felt.get(axis)));
        is(found, 3, UnitState.ATTITUDE + axis, lever.times(t));
        is(found, 6, UnitState.ATTITUDE + axis, lever.times(t * t / 2));
        is(found, 6, UnitState.VELOCITY + axis, unit[axis].times(t));
        for (int by = 0; by < 3; by++) {
          is(found, 0, UnitState.GYRO_MATRIX + 3 * axis + by, Vector3.ZERO);
        }
      }
    }
  }

  private static void is(double[][] found, int row, int column, Vector3 expect) {
    for (int axis = 0; axis < 3; axis++) {
      assertThat(found[row + axis][column])
          .as("row %d by parameter %d", row + axis, column)
          .isCloseTo(expect.get(axis), within(1e-4));
    }
  }

  private static UnitState truth(Tumble tumble, double atS, int bridges, double[] errors) {
    UnitState still = UnitState.start(tumble.attitude(atS), Vector3.ZERO, bridges);
    double[] step = new double[still.size()];
    for (int axis = 0; axis < 3; axis++) {
      step[UnitState.VELOCITY + axis] = tumble.velocityMps(atS).get(axis);
      step[UnitState.GYRO_BIAS + axis] = errors[axis];
      step[UnitState.ACCEL_BIAS + axis] = errors[3 + axis];
    }
    return still.plus(step);
  }

  private static void hold(
      StrapdownSamples samples, UnitState state, double part, double least, int... at) {
    Sensitivities all = Sensitivities.everywhere(Strapdown.run(samples, state, G));
    double[][][] found = Arrays.stream(at).mapToObj(all::of).toArray(double[][][]::new);
    for (int p = 0; p < state.size(); p++) {
      double[] step = new double[state.size()];
      step[p] = 1e-4;
      Strapdown plus = Strapdown.run(samples, state.plus(step), G);
      step[p] = -1e-4;
      Strapdown minus = Strapdown.run(samples, state.plus(step), G);
      boolean carried = p >= UnitState.GYRO_BIAS && p < UnitState.SIZE;
      for (int i = 0; i < at.length; i++) {
        Vector3[] expect = difference(plus, minus, at[i]);
        for (int row = 0; row < 9; row++) {
          double size = Math.max(carried ? least : 0.01, expect[row / 3].norm());
          assertThat(found[i][row][p])
              .as("sample %d, row %d by parameter %d", at[i], row, p)
              .isCloseTo(expect[row / 3].get(row % 3), within(part * size));
        }
      }
    }
  }

  /** Central difference of two passes: turn, velocity, place of a sample. */
  private static Vector3[] difference(Strapdown plus, Strapdown minus, int k) {
    return new Vector3[] {
      plus.qLevelUnit(k).times(minus.qLevelUnit(k).conjugate()).rotationVector().times(5e3),
      plus.velocityMps(k).minus(minus.velocityMps(k)).times(5e3),
      plus.positionM(k).minus(minus.positionM(k)).times(5e3)
    };
  }

  @Test
  void withLargeErrorsOfTheUnitTheyAreStillTheDifferences() {
    // Given: 0.5 s of tumbling at 1000 Hz taken with biases of 0.5 rad/s and 2 m/s^2. Expect: the
    // differences of two passes, at the first samples, inside a block of 8 ms, at its end, and at
    // the last. Within 0.5 % of the triple's size, 0.001 at least (lines across blocks of 8 ms): a
    // bias taken with the wrong sign costs 10 % and more.
    Tumble tumble = new Tumble(1, 0.6, 0.08, 0.2);
    StrapdownSamples samples = StrapdownSamples.of(tumble.samples(1000, 0.3, 0.8));
    UnitState state = truth(tumble, 0.3, 0, new double[] {0.5, -0.4, 0.6, 2, -1.5, 1});
    hold(samples, state, 0.005, 0.2, 0, 8, 9, 250, 253, 256, 499, 500);
  }

  @Test
  void besideEveryBridgeTheyAreTheDifferences() {
    // Given: 1 s at 500 Hz, rates lost over 16 ms and 28 ms, forces alone over 14 ms before the
    // second and over 30 ms by themselves. Expect: the differences of two passes at the last
    // sample before each bridge, the first behind it and some later ones. Within 2 % of the
    // triple's size; jumps, which are exact, of 0.01 at least, the unit's errors of 1 at least (a
    // line of 42 ms turns by 0.15 rad).
    Tumble tumble = new Tumble(1, 0.6, 0.08, -0.3);
    UnitStream stream = tumble.samples(500, 0, 1);
    for (int axis = 0; axis < 3; axis++) {
      Arrays.fill(stream.gyroColumnRadPerS(axis), 100, 107, Double.NaN);
      Arrays.fill(stream.accelColumnMps2(axis), 194, 200, Double.NaN);
      Arrays.fill(stream.gyroColumnRadPerS(axis), 200, 213, Double.NaN);
      Arrays.fill(stream.accelColumnMps2(axis), 350, 364, Double.NaN);
    }
    StrapdownSamples samples = StrapdownSamples.of(stream);
    UnitState state = truth(tumble, 0, samples.bridges().size(), new double[6]);
    assertThat(samples.bridges()).hasSizeBetween(3, 4);
    IntStream.Builder at = IntStream.builder().add(samples.size() - 1);
    for (Bridge bridge : samples.bridges()) {
      int before = Arrays.binarySearch(samples.timeS, bridge.beforeS());
      while (!samples.hasForce(before)) {
        before--; // a lost force hangs on the jump behind it
      }
      at.add(before).add(bridge.after()).add(bridge.after() + 1).add(bridge.after() + 7);
    }
    hold(samples, state, 0.02, 1, at.build().toArray());
  }

  @Test
  void aBridgeMayBeginBeforeAnyForceOrAnyRateIsSeen() {
    // Given: 1 s at 500 Hz, once without forces up to sample 120 and without rates from 90 to 110,
    // once without rates up to 60 and with forces at full scale before. Expect: a jump behind that
    // acts as a first velocity does, no failure. Within rounding.
    Tumble tumble = new Tumble(1, 0.6, 0.08, 0.2);
    UnitStream forceless = tumble.samples(500, 0, 1);
    UnitStream rateless = withFullScale(tumble.samples(500, 0, 1));
    for (int axis = 0; axis < 3; axis++) {
      Arrays.fill(forceless.accelColumnMps2(axis), 0, 120, Double.NaN);
      Arrays.fill(forceless.gyroColumnRadPerS(axis), 90, 110, Double.NaN);
      Arrays.fill(rateless.gyroColumnRadPerS(axis), 0, 60, Double.NaN);
      Arrays.fill(rateless.accelColumnMps2(axis), 5, 50, 100);
    }
    for (UnitStream stream : new UnitStream[] {forceless, rateless}) {
      StrapdownSamples samples = StrapdownSamples.of(stream);
      assertThat(samples.bridges()).hasSize(1);
      Strapdown pass = Strapdown.run(samples, truth(tumble, 0, 1, new double[6]), G);
      int from = samples.bridges().get(0).after();
      double[][] found = Sensitivities.everywhere(pass).of(from + 50);
      double behindS = pass.timeS(from + 50) - pass.timeS(from);
      assertThat(found[6][UnitState.SIZE + 3]).isCloseTo(behindS, within(1e-12));
    }
  }

  private static UnitStream withFullScale(UnitStream s) {
    UnitFacts facts = new UnitFacts(BodyPoint.PELVIS, "", 500, 100, 30, false);
    double[][] accel = {s.accelColumnMps2(0), s.accelColumnMps2(1), s.accelColumnMps2(2)};
    double[][] gyro = {s.gyroColumnRadPerS(0), s.gyroColumnRadPerS(1), s.gyroColumnRadPerS(2)};
    return new UnitStream(facts, s.timeColumnS(), accel, gyro);
  }

  @Test
  void thoseOfAskedSamplesAreThoseOfAllAtBlockEnds() {
    // Given: samples asked for in any order, twice. Expect: what a pass that keeps every block has
    // there; between two asked ones the line. Within rounding at the kept ones of 8 ms blocks.
    Tumble tumble = new Tumble(1, 0.6, 0.08, 0.2);
    StrapdownSamples samples = StrapdownSamples.of(tumble.samples(1000, 0, 0.1));
    Strapdown pass = Strapdown.run(samples, truth(tumble, 0, 0, new double[6]), G);
    Sensitivities asked = Sensitivities.at(pass, new int[] {64, 16, 16, 40});
    Sensitivities all = Sensitivities.everywhere(pass);
    for (int k : new int[] {16, 40, 64}) {
      assertThat(asked.of(k)).isDeepEqualTo(all.of(k));
    }
    int column = UnitState.GYRO_BIAS;
    double line = asked.of(16)[3][column] / 2 + asked.of(40)[3][column] / 2;
    assertThat(asked.of(28)[3][column]).isCloseTo(line, within(1e-12));
  }

  @Test
  void aMotionHandsOnItsPass() {
    Tumble tumble = new Tumble(1, 0.6, 0.08, 0.2);
    UnitStream stream = tumble.samples(200, 0, 1);
    for (int axis = 0; axis < 3; axis++) {
      Arrays.fill(stream.gyroColumnRadPerS(axis), 100, 120, Double.NaN);
    }
    StrapdownSamples samples = StrapdownSamples.of(stream);
    Strapdown pass = Strapdown.run(samples, truth(tumble, 0, 1, new double[6]), G);
    StrapdownMotion motion = new StrapdownMotion(pass, new double[33][33]);
    assertThat(motion.size()).isEqualTo(181);
    assertThat(motion.timeS(180)).isEqualTo(1);
    assertThat(motion.parameters()).isEqualTo(33);
    assertThat(motion.bridges()).hasSize(1).isEqualTo(samples.bridges());
    assertThat(motion.positionM(150)).isEqualTo(pass.positionM(150));
    assertThat(motion.qLevelUnit(150)).isEqualTo(pass.qLevelUnit(150));
    assertThat(motion.sensitivity(150)).isDeepEqualTo(Sensitivities.everywhere(pass).of(150));
  }
}
