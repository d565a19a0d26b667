package steadyturn.fusion.wear.pelvis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.strapdown.UnitMotion;

class TurnOnSpotTest {

  private static final Vector3[] AXES = {Vector3.X, Vector3.Y, Vector3.Z};
  private static final LeverArm ARM =
      new LeverArm(new Vector3(0.12, 0, -0.08), new Vector3(0.010, 0.005, 0.010));

  /** A unit that goes round a fixed mid-hip, leaning a little on the way; place by geometry. */
  private record Round(double turnRad, Vector3 trueArmUnitM, double sensorSd)
      implements UnitMotion {

    private static final int N = 41;

    @Override
    public int size() {
      return N;
    }

    @Override
    public double timeS(int k) {
      return 5 + 0.25 * k;
    }

    @Override
    public Quaternion qLevelUnit(int k) {
      double turn = turnRad * Math.sin(2 * Math.PI * k / 40.0);
      double lean = 0.1 * Math.sin(2 * Math.PI * k / 20.0);
      return Quaternion.aboutZ(turn)
          .times(Quaternion.aboutX(lean))
          .times(PelvisGeometry.nominal(ARM).qUnitPelvis().conjugate());
    }

    @Override
    public Vector3 positionM(int k) {
      return qLevelUnit(0).rotate(trueArmUnitM).minus(qLevelUnit(k).rotate(trueArmUnitM));
    }

    @Override
    public int parameters() {
      return 2;
    }

    @Override
    public double[][] covariance() {
      double v = sensorSd * sensorSd;
      return new double[][] {{v, 0.3 * v}, {0.3 * v, 2 * v}};
    }

    @Override
    public double[][] sensitivity(int k) {
      double[][] rows = new double[9][2];
      for (int row = 0; row < 9; row++) {
        rows[row][0] = row < 6 ? 100 : (row - 5) * 0.1 * k;
        rows[row][1] = row < 6 ? 100 : Math.cos(row + k);
      }
      return rows;
    }
  }

  /** The measurement as the class comment states it, by dense least squares. */
  private static Dense expected(PelvisGeometry before, Round motion) {
    int m = 40;
    RealMatrix h = MatrixUtils.createRealMatrix(3 * m, 6);
    RealMatrix noise = MatrixUtils.createRealMatrix(3 * m, 3 * m);
    RealMatrix sensor = MatrixUtils.createRealMatrix(3 * m, 2);
    double[] residual = new double[3 * m];
    Quaternion first = motion.qLevelUnit(0);
    for (int i = 0; i < m; i++) {
      Quaternion q = motion.qLevelUnit(i + 1);
      Vector3 place = motion.positionM(i + 1);
      for (int row = 0; row < 3; row++) {
        residual[3 * i + row] =
            -place.get(row)
                - q.rotate(before.leverArmUnitM()).get(row)
                + first.rotate(before.leverArmUnitM()).get(row);
        for (int c = 0; c < 3; c++) {
          h.setEntry(
              3 * i + row, 3 + c, q.rotate(AXES[c]).get(row) - first.rotate(AXES[c]).get(row));
        }
        for (int p = 0; p < 2; p++) {
          sensor.setEntry(3 * i + row, p, motion.sensitivity(i + 1)[6 + row][p]);
        }
        for (int j = 0; j < m; j++) {
          double turnI = Math.sin(2 * Math.PI * (i + 1) / 40.0);
          double turnJ = Math.sin(2 * Math.PI * (j + 1) / 40.0);
          double alike = turnI * turnJ > 0 ? 2 * turnI * turnJ : 0;
          double value = 36e-6 * Math.exp(-0.25 * Math.abs(i - j)) + 225e-6 * alike;
          noise.setEntry(3 * i + row, 3 * j + row, value + (i == j ? 1e-8 : 0));
        }
      }
    }
    RealMatrix own = MatrixUtils.createRealMatrix(motion.covariance());
    RealMatrix all = noise.add(sensor.multiply(own).multiply(sensor.transpose()));
    return Dense.of(before.covariance(), h, all, residual);
  }

  @Test
  void theArmIsLeastSquaresOfTheRoundTheUnitGoes() {
    // Given: an arm 20 mm off in any direction, a turn of 57 deg to each side, wander of 6 mm alike
    // over 1 s, 15 mm along with the turn, an uncertain unit (constants.csv). Expect: dense least
    // squares. Within 1e-7 m, and 1e-4 of the covariance: the turn is measured at a tenth of the
    // samples, its largest there.
    PelvisGeometry before = PelvisGeometry.nominal(ARM);
    Round motion =
        new Round(1, before.leverArmUnitM().plus(new Vector3(0.01, 0.012, -0.012)), 0.003);
    PelvisGeometry after = TurnOnSpot.fold(before, motion).orElseThrow();
    Dense expected = expected(before, motion);
    Vector3 moved = after.leverArmUnitM().minus(before.leverArmUnitM());
    Vector3 turned = before.qUnitPelvis().conjugate().times(after.qUnitPelvis()).rotationVector();
    for (int axis = 0; axis < 3; axis++) {
      assertThat(moved.get(axis)).isCloseTo(expected.step()[3 + axis], within(1e-7));
      assertThat(turned.get(axis)).isCloseTo(expected.step()[axis], within(1e-7));
    }
    for (int i = 0; i < 6; i++) {
      for (int j = 0; j < 6; j++) {
        double size =
            Math.sqrt(expected.covariance().getEntry(i, i) * expected.covariance().getEntry(j, j));
        assertThat(after.covariance()[i][j])
            .isCloseTo(expected.covariance().getEntry(i, j), within(1e-4 * size));
      }
    }
  }

  @Test
  void aGoodTurnBringsTheArmNearerAndSaysHowNear() {
    // Given: an arm 20 mm off in the level. Expect: nearer by a third at least; its stated spread
    // neither beyond the prior nor under what wandering leaves, 15 mm / turn of 1 rad over three.
    PelvisGeometry before = PelvisGeometry.nominal(ARM);
    Vector3 truth = before.leverArmUnitM().plus(new Vector3(0, 0, -0.02));
    PelvisGeometry after = TurnOnSpot.fold(before, new Round(1, truth, 1e-6)).orElseThrow();
    assertThat(after.leverArmUnitM().minus(truth).norm()).isLessThan(0.014);
    double sd = Math.sqrt(after.covariance()[5][5]);
    assertThat(sd).isLessThan(Math.sqrt(before.covariance()[5][5])).isGreaterThan(0.003);
  }

  @Test
  void underTwentyFiveDegreesTheTurnTeachesNothing() {
    // Given: turns of 24 and 26 deg; the largest lies at a tenth sample. Expect: not used, and
    // used. The largest turn itself within 0.1 deg, lean included.
    PelvisGeometry before = PelvisGeometry.nominal(ARM);
    Vector3 truth = before.leverArmUnitM().times(1.1);
    Round little = new Round(Math.toRadians(24), truth, 1e-6);
    assertThat(TurnOnSpot.fold(before, little)).isEmpty();
    assertThat(TurnOnSpot.fold(before, new Round(Math.toRadians(26), truth, 1e-6))).isPresent();
    assertThat(Math.toDegrees(TurnOnSpot.largestTurnRad(little))).isCloseTo(24, within(0.1));
    assertThat(Math.toDegrees(TurnOnSpot.largestTurnRad(new Round(-0.5, truth, 1))))
        .isCloseTo(Math.toDegrees(0.5), within(0.1));
  }

  @Test
  void aTurnThatDoesNotFitIsNotUsed() {
    // Given: mid-hip that jumps 25 mm aside and back at every other instant, where 6 mm alike over
    // a
    // second are expected; and an arm 150 mm longer than the player's sizes say, where 10 mm of
    // spread
    // and 30 mm of what a turn of 1 rad leaves open (15 mm there and 15 back) are expected, 4.7
    // sigmas.
    // Expect: neither is used.
    PelvisGeometry before = PelvisGeometry.nominal(ARM);
    Round steady = new Round(1, before.leverArmUnitM(), 1e-6);
    assertThat(TurnOnSpot.fold(before, steady)).isPresent();
    assertThat(TurnOnSpot.fold(before, new Jumping(steady))).isEmpty();
    Vector3 far = before.leverArmUnitM().plus(new Vector3(0, 0, -0.15));
    assertThat(TurnOnSpot.fold(before, new Round(1, far, 1e-6))).isEmpty();
  }

  /** The same with a mid-hip that jumps. */
  private record Jumping(Round round) implements UnitMotion {

    @Override
    public int size() {
      return round.size();
    }

    @Override
    public double timeS(int k) {
      return round.timeS(k);
    }

    @Override
    public Quaternion qLevelUnit(int k) {
      return round.qLevelUnit(k);
    }

    @Override
    public Vector3 positionM(int k) {
      return round.positionM(k).plus(new Vector3(0, k % 2 == 0 ? 0 : 0.025, 0));
    }

    @Override
    public int parameters() {
      return round.parameters();
    }

    @Override
    public double[][] covariance() {
      return round.covariance();
    }

    @Override
    public double[][] sensitivity(int k) {
      return round.sensitivity(k);
    }
  }
}
