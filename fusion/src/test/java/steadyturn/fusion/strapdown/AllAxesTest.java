package steadyturn.fusion.strapdown;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Attitudes;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

/** Turning about all axes and moving along them at once, against the exact path. */
class AllAxesTest {

  private static final Tumble TUMBLE = new Tumble(1, 0.6, 0.08, 0);

  private static UnitState truth(Tumble tumble, double atS, int bridges) {
    UnitState still = UnitState.start(tumble.attitude(atS), Vector3.ZERO, bridges);
    double[] step = new double[still.size()];
    for (int axis = 0; axis < 3; axis++) {
      step[UnitState.VELOCITY + axis] = tumble.velocityMps(atS).get(axis);
    }
    return still.plus(step);
  }

  /** Attitude after a rate that changes in a straight line, seen in so many steps. */
  private static Quaternion endOfLine(Vector3 from, Vector3 to, double lengthS, int steps) {
    double[] time = new double[steps + 1];
    double[][] rate = new double[3][steps + 1];
    for (int i = 0; i <= steps; i++) {
      double part = (double) i / steps;
      time[i] = lengthS * part;
      for (int axis = 0; axis < 3; axis++) {
        rate[axis][i] = from.get(axis) + part * (to.get(axis) - from.get(axis));
      }
    }
    return Attitudes.ofRates(Quaternion.IDENTITY, time, rate).at(steps);
  }

  @Test
  void oneStepOfARateWhoseAxisWandersEndsWhereThousandsOfStepsEnd() {
    // Given: 50 ms in which the rate goes in a line from (4, 1, -2) to (-1, 5, 3) rad/s, in one
    // step
    // and in 20,000, where what the coning term adds is below 1e-9 in all. Expect: the same end.
    // Within 3e-4 rad (the next order, |w0 x w1| |w| dt^3 / 60): left out the term costs 0.0062
    // rad, with the wrong sign twice that.
    Vector3 from = new Vector3(4, 1, -2);
    Vector3 to = new Vector3(-1, 5, 3);
    Quaternion one = endOfLine(from, to, 0.05, 1);
    Quaternion many = endOfLine(from, to, 0.05, 20_000);
    assertThat(many.conjugate().times(one).rotationVector().norm()).isLessThan(3e-4);
    Vector3 without = from.plus(to).times(0.025);
    double left =
        many.conjugate().times(Quaternion.fromRotationVector(without)).rotationVector().norm();
    assertThat(left).isBetween(5e-3, 8e-3);
  }

  @Test
  void theWholePathIsFollowed() {
    // Given: exact samples at 500 Hz, the true start. Expect: attitude, velocity and place at 3 s.
    // Within 0.1 mrad, 2 mm/s, 3 mm: a lag of half a sample anywhere costs ten times that.
    UnitStream samples = TUMBLE.samples(500, 0, 3);
    Strapdown pass =
        Strapdown.run(StrapdownSamples.of(samples), truth(TUMBLE, 0, 0), Tumble.GRAVITY_MPS2);
    int k = pass.size() - 1;
    double turned =
        pass.qLevelUnit(k).conjugate().times(TUMBLE.attitude(3)).rotationVector().norm();
    assertThat(turned).isLessThan(1e-4);
    assertThat(pass.velocityMps(k).minus(TUMBLE.velocityMps(3)).norm()).isLessThan(2e-3);
    Vector3 moved = TUMBLE.positionM(3).minus(TUMBLE.positionM(0));
    assertThat(pass.positionM(k).minus(moved).norm()).isLessThan(3e-3);
  }

  /** Two stretches lost, of 60 and 40 ms, and one of the forces alone. */
  private static UnitStream withGaps(UnitStream samples) {
    for (int axis = 0; axis < 3; axis++) {
      Arrays.fill(samples.gyroColumnRadPerS(axis), 140, 152, Double.NaN);
      Arrays.fill(samples.gyroColumnRadPerS(axis), 300, 308, Double.NaN);
      Arrays.fill(samples.accelColumnMps2(axis), 220, 228, Double.NaN);
    }
    return samples;
  }

  @Test
  void everySensitivityIsTheDifferenceOfTwoPasses() {
    // Given: 2.5 s of tumbling at 200 Hz with three gaps. Expect: each of the 24 + 27 derivatives,
    // at a sample between two kept ones, is the central difference of two whole passes.
    // Within 1.5 % of the larger of 1 and the size of that triple: steps of 1e-4, blocks of 8 ms,
    // and the one block that a gap of 60 ms is; a wrong sign anywhere costs 200 %.
    StrapdownSamples samples = StrapdownSamples.of(withGaps(TUMBLE.samples(200, 0, 2.5)));
    assertThat(samples.bridges()).hasSize(3);
    UnitState state = truth(TUMBLE, 0, 3);
    Strapdown pass = Strapdown.run(samples, state, Tumble.GRAVITY_MPS2);
    int k = pass.size() - 2;
    double[][] found = Sensitivities.everywhere(pass).of(k);
    for (int p = 0; p < state.size(); p++) {
      double[] step = new double[state.size()];
      step[p] = 1e-4;
      Strapdown plus = Strapdown.run(samples, state.plus(step), Tumble.GRAVITY_MPS2);
      step[p] = -1e-4;
      Strapdown minus = Strapdown.run(samples, state.plus(step), Tumble.GRAVITY_MPS2);
      Vector3[] expect = {
        plus.qLevelUnit(k).times(minus.qLevelUnit(k).conjugate()).rotationVector().times(5e3),
        plus.velocityMps(k).minus(minus.velocityMps(k)).times(5e3),
        plus.positionM(k).minus(minus.positionM(k)).times(5e3)
      };
      for (int row = 0; row < 9; row++) {
        double size = Math.max(1, expect[row / 3].norm());
        assertThat(found[row][p])
            .as("row %d by parameter %d", row, p)
            .isCloseTo(expect[row / 3].get(row % 3), within(0.015 * size));
      }
    }
  }
}
