package steadyturn.fusion.wear.pelvis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/** The six numbers of how the pelvis unit sits, held against least squares and differences. */
class PelvisUpdateTest {

  private static final Vector3[] AXES = {Vector3.X, Vector3.Y, Vector3.Z};
  private static final double TILT_RAD = Math.toRadians(10);
  private static final Vector3 UP_PELVIS = new Vector3(-Math.sin(TILT_RAD), 0, Math.cos(TILT_RAD));

  private static final LeverArm ARM =
      new LeverArm(new Vector3(0.12, 0.01, -0.08), new Vector3(0.010, 0.005, 0.012));

  /** Sits in any way; all six numbers correlated. Seed 7. */
  private static PelvisGeometry anyGeometry() {
    Random random = new Random(7);
    double[][] root = new double[6][6];
    for (int i = 0; i < 6; i++) {
      for (int j = 0; j < 6; j++) {
        root[i][j] = (i < 3 ? 0.05 : 0.01) * random.nextGaussian();
      }
    }
    RealMatrix a = MatrixUtils.createRealMatrix(root);
    return new PelvisGeometry(
        Quaternion.fromRotationVector(new Vector3(0.4, -1.2, 0.9)),
        new Vector3(0.07, -0.02, 0.11),
        a.multiply(a.transpose()).getData());
  }

  @Test
  void theNominalSpreadIsThatOfTheMountingAndOfTheArmItTurns() {
    // Given: arm and mounting known to their spreads, independently. Expect: J S J' with J by
    // central differences of (turn, arm in unit axes) by (turn, arm in pelvis axes); mounting 3.5,
    // 12 and 3.5 deg (our assumption, constants.csv). Within 1e-12: differences of a product.
    PelvisGeometry nominal = PelvisGeometry.nominal(ARM);
    double[] sd = {
      Math.toRadians(3.5), Math.toRadians(12), Math.toRadians(3.5), 0.010, 0.005, 0.012
    };
    double[][] j = new double[6][6];
    double h = 1e-6;
    for (int p = 0; p < 6; p++) {
      j[p][p] = p < 3 ? 1 : 0;
      Vector3 slope =
          armUnit(nominal.qUnitPelvis(), p, h)
              .minus(armUnit(nominal.qUnitPelvis(), p, -h))
              .times(0.5 / h);
      for (int axis = 0; axis < 3; axis++) {
        j[3 + axis][p] = slope.get(axis);
      }
    }
    for (int row = 0; row < 6; row++) {
      for (int column = 0; column < 6; column++) {
        double expected = 0;
        for (int p = 0; p < 6; p++) {
          expected += j[row][p] * sd[p] * sd[p] * j[column][p];
        }
        assertThat(nominal.covariance()[row][column])
            .as(row + "," + column)
            .isCloseTo(expected, within(1e-11));
      }
    }
    Vector3 arm = armUnit(nominal.qUnitPelvis(), 0, 0);
    assertThat(nominal.leverArmUnitM().minus(arm).norm()).isLessThan(1e-15);
  }

  private static Vector3 armUnit(Quaternion q, int p, double by) {
    Quaternion turned =
        p < 3 ? q.times(Quaternion.fromRotationVector(AXES[p].times(by))).normalized() : q;
    Vector3 arm = ARM.midHipFromUnitPelvisM();
    return turned.rotate(p < 3 ? arm : arm.plus(AXES[p - 3].times(by)));
  }

  /** A direction seen a little off: least squares with H by differences. */
  private static Dense expected(
      PelvisGeometry before, Vector3 known, Vector3 seenUnit, double[][] spreads) {
    double h = 1e-6;
    double[][] rows = new double[3][6];
    double[] residual = new double[3];
    double[][] noise = new double[3][3];
    Vector3 off = before.qUnitPelvis().conjugate().rotate(seenUnit).minus(known);
    for (int row = 0; row < 3; row++) {
      residual[row] = off.get(row);
      for (int p = 0; p < 3; p++) {
        Vector3 moved = Quaternion.fromRotationVector(AXES[p].times(h)).rotate(known);
        rows[row][p] = moved.minus(known).get(row) / h;
      }
      for (int column = 0; column < 3; column++) {
        noise[row][column] = row == column ? 1e-6 : 0;
        for (double[] s : spreads) {
          noise[row][column] += s[row] * s[column];
        }
      }
    }
    return Dense.of(
        before.covariance(),
        MatrixUtils.createRealMatrix(rows),
        MatrixUtils.createRealMatrix(noise),
        residual);
  }

  private static void assertMoved(PelvisGeometry before, PelvisGeometry after, Dense expected) {
    // Within 2 % of the move and 1e-4 of the covariance: turns of 0.3 deg do not quite add up, and
    // the slope is a difference.
    Vector3 turn = before.qUnitPelvis().conjugate().times(after.qUnitPelvis()).rotationVector();
    Vector3 arm = after.leverArmUnitM().minus(before.leverArmUnitM());
    Vector3 turnStep = new Vector3(expected.step()[0], expected.step()[1], expected.step()[2]);
    Vector3 armStep = new Vector3(expected.step()[3], expected.step()[4], expected.step()[5]);
    assertThat(turn.minus(turnStep).norm()).isLessThan(0.02 * turnStep.norm());
    assertThat(arm.minus(armStep).norm()).isLessThan(0.02 * armStep.norm());
    for (int i = 0; i < 6; i++) {
      for (int j = 0; j < 6; j++) {
        double size =
            Math.sqrt(expected.covariance().getEntry(i, i) * expected.covariance().getEntry(j, j));
        assertThat(after.covariance()[i][j])
            .isCloseTo(expected.covariance().getEntry(i, j), within(1e-4 * size));
        assertThat(after.covariance()[i][j]).isEqualTo(after.covariance()[j][i]);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.02})
  void aQuietStanceIsLeastSquaresOfTheVertical(double unitSdRad) {
    // Given: any prior; the vertical seen 0.3 deg off. The standing pelvis is tilted 10 +- 5 deg
    // and sidewards 0 +- 1.4 deg (constants.csv), the accelerometer turns it by unitSdRad about
    // each axis. Expect: least squares in information form.
    PelvisGeometry before = anyGeometry();
    Vector3 off = new Vector3(0.003, -0.002, 0.004);
    Vector3 seen = before.qUnitPelvis().times(Quaternion.fromRotationVector(off)).rotate(UP_PELVIS);
    double[][] spreads = {
      {-Math.cos(TILT_RAD) * Math.toRadians(5), 0, -Math.sin(TILT_RAD) * Math.toRadians(5)},
      {0, Math.toRadians(1.4), 0},
      {unitSdRad, 0, 0},
      {0, unitSdRad, 0},
      {0, 0, unitSdRad}
    };
    PelvisGeometry after = before.afterQuietStance(seen.times(9.7), unitSdRad);
    assertMoved(before, after, expected(before, UP_PELVIS, seen, spreads));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-3, 1})
  void aBowIsLeastSquaresOfTheHipLineInEitherSense(double sense) {
    // Given: any prior; the axis seen 0.3 deg off, of either sense and any length. Expect: least
    // squares; a bow turns about the hip line within 2.5 deg (constants.csv).
    PelvisGeometry before = anyGeometry();
    Vector3 off = new Vector3(0.004, 0.001, -0.003);
    Vector3 seen = before.qUnitPelvis().times(Quaternion.fromRotationVector(off)).rotate(Vector3.Y);
    double sd = Math.toRadians(2.5);
    PelvisGeometry after = before.afterBow(seen.times(sense));
    assertMoved(
        before, after, expected(before, Vector3.Y, seen, new double[][] {{sd, 0, 0}, {0, 0, sd}}));
  }

  @Test
  void whoKnowsNothingBelievesTheStepHoweverFarOff() {
    // Given: a mounting known to 3 rad only, and a bow axis 25 deg away. Expect: the hip line comes
    // to lie on it, as turns that do not add up are gone over three times: within 0.05 deg (prior
    // against bow, (2.5 / 170)^2 of 25 deg); one round alone leaves 0.7 deg.
    double[][] wide = new double[6][6];
    for (int i = 0; i < 6; i++) {
      wide[i][i] = i < 3 ? 9 : 1e-4;
    }
    PelvisGeometry before =
        new PelvisGeometry(anyGeometry().qUnitPelvis(), ARM.midHipFromUnitPelvisM(), wide);
    Vector3 seen =
        before
            .qUnitPelvis()
            .times(Quaternion.fromRotationVector(new Vector3(0.3, 0, -0.32)))
            .rotate(Vector3.Y);
    Vector3 found = before.afterBow(seen).qUnitPelvis().rotate(Vector3.Y);
    assertThat(Math.toDegrees(Math.acos(Math.min(1, found.dot(seen))))).isLessThan(0.05);
  }

  @Test
  void aUnitTurnedInItsBeltTurnsTheAnswerAndNothingElse() {
    // Given: the same steps seen by a unit that is strapped on in another way. Expect: mounting and
    // arm turned by it. Within 1e-12: rounding.
    Quaternion other = Quaternion.fromRotationVector(new Vector3(-0.7, 0.2, 1.4));
    PelvisGeometry one = PelvisGeometry.nominal(ARM);
    RealMatrix turn = MatrixUtils.createRealIdentityMatrix(6);
    for (int row = 0; row < 3; row++) {
      for (int column = 0; column < 3; column++) {
        turn.setEntry(3 + row, 3 + column, other.rotate(AXES[column]).get(row));
      }
    }
    RealMatrix covariance = MatrixUtils.createRealMatrix(one.covariance());
    PelvisGeometry two =
        new PelvisGeometry(
            other.times(one.qUnitPelvis()),
            other.rotate(one.leverArmUnitM()),
            turn.multiply(covariance).multiply(turn.transpose()).getData());
    Vector3 up = new Vector3(9, 2, -3);
    Vector3 axis = new Vector3(0.1, 0.95, 0.2);
    PelvisGeometry first = one.afterQuietStance(up, 0.01).afterBow(axis);
    PelvisGeometry second =
        two.afterQuietStance(other.rotate(up), 0.01).afterBow(other.rotate(axis));
    assertThat(
            other
                .times(first.qUnitPelvis())
                .conjugate()
                .times(second.qUnitPelvis())
                .rotationVector()
                .norm())
        .isLessThan(1e-12);
    assertThat(other.rotate(first.leverArmUnitM()).minus(second.leverArmUnitM()).norm())
        .isLessThan(1e-12);
  }

  @Test
  void anUpdateIsLeastSquaresInInformationForm() {
    // Given: any prior, five numbers seen through any matrix, noise of their own. Seed 11. Oracle:
    // Commons Math. Within 1e-9 of each size.
    Random random = new Random(11);
    DMatrixRMaj h = new DMatrixRMaj(5, 6);
    DMatrixRMaj noise = new DMatrixRMaj(5, 5);
    double[] residual = new double[5];
    for (int i = 0; i < 5; i++) {
      residual[i] = random.nextGaussian();
      noise.set(i, i, 1 + i);
      for (int j = 0; j < 6; j++) {
        h.set(i, j, 30 * random.nextGaussian());
      }
    }
    noise.set(0, 1, 0.4);
    noise.set(1, 0, 0.4);
    Update found = Update.of(anyGeometry().covariance(), h, noise, residual);
    Dense expected =
        Dense.of(
            anyGeometry().covariance(),
            MatrixUtils.createRealMatrix(h.get2DData()),
            MatrixUtils.createRealMatrix(noise.get2DData()),
            residual);
    for (int i = 0; i < 6; i++) {
      assertThat(found.step()[i]).isCloseTo(expected.step()[i], within(1e-9));
      for (int j = 0; j < 6; j++) {
        assertThat(found.covariance()[i][j])
            .isCloseTo(expected.covariance().getEntry(i, j), within(1e-10));
      }
    }
    assertThatThrownBy(() -> Update.of(new double[6][6], h, new DMatrixRMaj(5, 5), residual))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void theSurpriseIsTheChanceOfALesserStep() {
    // Given: six numbers known to 2 each, independently; two of them seen to 1.5, off by 6.5 and 2.
    // Expect by hand: steps of variance 2^4 / (2^2 + 1.5^2) = 2.56, that is squares (4 + 2.25 =
    // 6.25)
    // 6.5^2 / 6.25 + 2^2 / 6.25 = 7.40, of two degrees 1 - exp(-7.40 / 2) = 0.97528; misfit 3.70.
    double[][] prior = new double[6][6];
    for (int i = 0; i < 6; i++) {
      prior[i][i] = 4;
    }
    DMatrixRMaj h = new DMatrixRMaj(2, 6);
    h.set(0, 1, 1);
    h.set(1, 4, 1);
    DMatrixRMaj noise = CommonOps_DDRM.diag(2.25, 2.25);
    Update update = Update.of(prior, h, noise, new double[] {6.5, 2});
    assertThat(update.surprise()).isCloseTo(0.97528, within(1e-5));
    assertThat(update.misfit()).isCloseTo(3.70, within(1e-9));
  }
}
