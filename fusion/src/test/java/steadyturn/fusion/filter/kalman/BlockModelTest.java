package steadyturn.fusion.filter.kalman;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.fusion.filter.SampleGuard;
import steadyturn.fusion.filter.SampleLimits;
import steadyturn.fusion.rotation.MutableQuaternion;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/** The error model of a block: against differences of two blocks, and against dense matrices. */
class BlockModelTest {

  private static final int N = BlockModel.ERRORS;
  private static final int STEPS = 40;
  private static final double STEP_S = 0.0025;
  private static final Vector3[] AXES = {Vector3.X, Vector3.Y, Vector3.Z};

  /** What a block of samples ends with when one of the errors, by the model's order, is put in. */
  private record End(Quaternion attitude, Vector3 velocity, double[] placeM, BlockSums sums) {}

  private static Vector3 rate(int i) {
    return new Vector3(2 + 0.02 * i, -1.5 + 0.01 * i, 3 - 0.03 * i);
  }

  private static Vector3 force(int i) {
    return new Vector3(4 + 0.01 * i, -3, 8 - 0.02 * i);
  }

  /** Error k of the truth against what is shown: the true rate is the shown one less it. */
  private static End block(int k, double by) {
    Quaternion q = Quaternion.fromRotationVector(new Vector3(0.5, 0.3, -0.7));
    Vector3 velocity = Vector3.ZERO;
    double[] place = new double[2];
    if (k >= 0 && k < 3) {
      q = Quaternion.fromRotationVector(AXES[k].times(by)).times(q);
    }
    if (k == 3 || k == 4) {
      velocity = AXES[k - 3].times(by);
    }
    if (k == 5 || k == 6) {
      place[k - 5] = by;
    }
    BlockSums sums = new BlockSums();
    for (int i = 0; i < STEPS; i++) {
      Vector3 shown = rate(i);
      Vector3 turned = shown;
      if (k >= 7 && k < 10) {
        turned = shown.minus(AXES[k - 7].times(by));
      }
      if (k >= 10) {
        turned = shown.minus(AXES[(k - 10) / 3].times(by * shown.get((k - 10) % 3)));
      }
      Quaternion half = Quaternion.fromRotationVector(turned.times(STEP_S / 2));
      Quaternion middle = q.times(half);
      Vector3 gain = middle.rotate(force(i)).times(STEP_S);
      add(sums, middle, shown, force(i));
      for (int axis = 0; axis < 2; axis++) {
        place[axis] += (velocity.get(axis) + 0.5 * gain.get(axis)) * STEP_S;
      }
      velocity = velocity.plus(gain);
      q = middle.times(half);
    }
    return new End(q, velocity, place, sums);
  }

  private static void add(BlockSums sums, Quaternion middle, Vector3 rate, Vector3 force) {
    SampleGuard guard = new SampleGuard(SampleLimits.unlimited());
    guard.take(rate.x(), rate.y(), rate.z(), force.x(), force.y(), force.z(), STEP_S);
    sums.add(
        new MutableQuaternion().set(middle),
        guard,
        new double[] {rate.x(), rate.y(), rate.z()},
        force.x(),
        force.y(),
        force.z());
  }

  private static BlockModel model() {
    BlockModel model = new BlockModel();
    model.set(block(-1, 0).sums);
    return model;
  }

  /** Columns of F as the rows are carried. */
  private static double[][] columns(BlockModel model) {
    double[] identity = new double[N * N];
    for (int i = 0; i < N; i++) {
      identity[i * N + i] = 1;
    }
    double[][] f = new double[N][N];
    for (int j = 0; j < N; j++) {
      model.carryRow(identity, j * N);
      for (int i = 0; i < N; i++) {
        f[i][j] = identity[j * N + i];
      }
    }
    return f;
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18})
  void everyColumnIsTheDifferenceOfTwoBlocks(int k) {
    // Given: a block of 0.1 s of brisk turning about all axes, one error of 1e-6 put in. Expect:
    // turn, velocity and place at its end change by the model's column. Within 3 % of turn and
    // velocity, for rate errors 12 %: their effect is spread evenly over a block that turns by 25
    // deg; the place within what a block is long, 2 % of the speed.
    double h = 1e-6;
    End without = block(-1, 0);
    End with = block(k, h);
    double[][] f = columns(model());
    Vector3 turn = with.attitude.times(without.attitude.conjugate()).rotationVector().times(1 / h);
    Vector3 speed = with.velocity.minus(without.velocity).times(1 / h);
    double part = k < 7 ? 0.03 : 0.12;
    for (int axis = 0; axis < 3; axis++) {
      assertThat(f[axis][k]).isCloseTo(turn.get(axis), within(0.01 * turn.norm() + 1e-9));
    }
    for (int axis = 0; axis < 2; axis++) {
      assertThat(f[3 + axis][k]).isCloseTo(speed.get(axis), within(part * speed.norm() + 1e-7));
      double place = (with.placeM[axis] - without.placeM[axis]) / h;
      assertThat(f[5 + axis][k]).isCloseTo(place, within(0.02 * speed.norm() + 1e-7));
    }
  }

  /** F as the class comment writes it, from integrals added up apart. */
  private static RealMatrix written() {
    RealMatrix f = MatrixUtils.createRealIdentityMatrix(N);
    Quaternion q = Quaternion.fromRotationVector(new Vector3(0.5, 0.3, -0.7));
    Vector3 dv = Vector3.ZERO;
    for (int i = 0; i < STEPS; i++) {
      Quaternion half = Quaternion.fromRotationVector(rate(i).times(STEP_S / 2));
      Quaternion middle = q.times(half);
      for (int row = 0; row < 3; row++) {
        for (int c = 0; c < 3; c++) {
          double r = middle.rotate(AXES[c]).get(row) * STEP_S;
          f.addToEntry(row, 7 + c, -r);
          for (int j = 0; j < 3; j++) {
            f.addToEntry(row, 10 + 3 * c + j, -r * rate(i).get(j));
          }
        }
      }
      dv = dv.plus(middle.rotate(force(i)).times(STEP_S));
      q = middle.times(half);
    }
    for (int j = 0; j < N; j++) {
      Vector3 before = new Vector3(j == 0 ? 1 : 0, j == 1 ? 1 : 0, j == 2 ? 1 : 0);
      Vector3 after = new Vector3(f.getEntry(0, j), f.getEntry(1, j), f.getEntry(2, j));
      Vector3 gain = before.plus(after).times(0.5).cross(dv);
      for (int axis = 0; axis < 2; axis++) {
        double speed = j == 3 + axis ? 1 : 0;
        f.setEntry(3 + axis, j, speed + gain.get(axis));
        f.setEntry(
            5 + axis, j, (j == 5 + axis ? 1 : 0) + STEPS * STEP_S * (speed + 0.5 * gain.get(axis)));
      }
    }
    return f;
  }

  private static RealMatrix random(int rows, int columns, long seed) {
    Random random = new Random(seed);
    RealMatrix m = MatrixUtils.createRealMatrix(rows, columns);
    for (int i = 0; i < rows; i++) {
      for (int j = 0; j < columns; j++) {
        m.setEntry(i, j, random.nextGaussian());
      }
    }
    return m;
  }

  private static double[] flat(RealMatrix m) {
    double[] out = new double[m.getRowDimension() * m.getColumnDimension()];
    for (int i = 0; i < out.length; i++) {
      out[i] = m.getEntry(i / m.getColumnDimension(), i % m.getColumnDimension());
    }
    return out;
  }

  private static void assertSame(double[] found, RealMatrix expected, double tolerance) {
    assertThat(found).containsExactly(flat(expected), within(tolerance));
  }

  @Test
  void rowsAndColumnsAreCarriedByTheMatrixAndItsTranspose() {
    // Given: any vectors and matrices (seeds 1 and 2). Expect: products with F as the class comment
    // writes it. Within 1e-10: rounding of sums of 19.
    BlockModel model = model();
    RealMatrix f = written();
    assertSame(flat(MatrixUtils.createRealMatrix(columns(model))), f, 1e-10);
    RealMatrix any = random(N, N, 1);
    double[] rows = flat(any);
    for (int i = 0; i < N; i++) {
      model.carryRow(rows, i * N);
    }
    assertSame(rows, any.multiply(f.transpose()), 1e-10);
    double[] adjoint = flat(random(1, N, 2));
    RealMatrix column = MatrixUtils.createColumnRealMatrix(adjoint.clone());
    model.carryBack(adjoint, 0);
    assertSame(adjoint, f.transpose().multiply(column), 1e-10);
  }

  @Test
  void sumsAddUpTurnsTimesAndRates() {
    // Expect: the rates' integral as measured, the time, the force once and twice, by hand over the
    // same steps. Within 1e-12: rounding.
    End end = block(-1, 0);
    double[] angle = new double[3];
    double squared = 0;
    for (int i = 0; i < STEPS; i++) {
      for (int axis = 0; axis < 3; axis++) {
        angle[axis] += rate(i).get(axis) * STEP_S;
        squared += rate(i).get(axis) * rate(i).get(axis) * STEP_S;
      }
    }
    assertThat(end.sums.rateSquared).isCloseTo(squared, within(1e-12));
    assertThat(end.sums.forceSquared).isPositive();
    assertThat(end.sums.angleRad).containsExactly(angle, within(1e-12));
    assertThat(end.sums.lengthS).isCloseTo(STEPS * STEP_S, within(1e-12));
    assertThat(end.sums.placeM).containsExactly(end.placeM, within(1e-12));
    assertThat(end.sums.velocityMps)
        .containsExactly(
            new double[] {end.velocity.x(), end.velocity.y(), end.velocity.z()}, within(1e-12));
    end.sums.atRest = false;
    end.sums.clear();
    assertThat(end.sums.atRest).isTrue();
    for (double[] part :
        new double[][] {
          end.sums.angleRad,
          end.sums.attitudeRate,
          end.sums.attitudeS,
          end.sums.placeM,
          end.sums.velocityMps,
          {end.sums.lengthS, end.sums.angleVariance, end.sums.velocityVariance},
          {end.sums.rateSquared, end.sums.forceSquared}
        }) {
      assertThat(part).containsOnly(0);
    }
  }

  private static final KalmanCoefficients C = KalmanCoefficients.of(KalmanSettings.standard());

  @Test
  void aPredictionIsFPFTransposedPlusQAndAMeasurementTheKalmanUpdate() {
    // Given: any covariance (seed 4), the block above with losses. Expect: dense matrices. Within
    // 1e-9 of values up to 100.
    RealMatrix root = random(N, N, 4);
    RealMatrix p = root.multiply(root.transpose());
    Covariance covariance = new Covariance();
    System.arraycopy(flat(p), 0, covariance.p, 0, N * N);
    BlockSums sums = block(-1, 0).sums;
    sums.angleVariance = 0.3;
    sums.velocityVariance = 0.7;
    covariance.predict(model(), sums, C);
    RealMatrix q = MatrixUtils.createRealMatrix(N, N);
    double t = STEPS * STEP_S;
    double noise = Math.toRadians(0.02);
    double turn = 0.0002;
    for (int axis = 0; axis < 3; axis++) {
      q.setEntry(axis, axis, noise * noise * t + turn * turn * sums.rateSquared + 0.3);
      q.setEntry(7 + axis, 7 + axis, Math.pow(Math.toRadians(0.003), 2) * t);
    }
    q.setEntry(3, 3, 0.02 * 0.02 * t + 0.7);
    q.setEntry(4, 4, 0.02 * 0.02 * t + 0.7);
    RealMatrix predicted = written().multiply(p).multiply(written().transpose()).add(q);
    assertSame(covariance.p, predicted, 1e-9);
    for (int k : new int[] {0, 4, 8, 18}) {
      RealMatrix column = predicted.getColumnMatrix(k);
      double s = predicted.getEntry(k, k) + 0.25;
      assertThat(covariance.observe(k, 0.25)).isCloseTo(s, within(1e-9));
      assertSame(covariance.gain, column.scalarMultiply(1 / s), 1e-9);
      predicted = predicted.subtract(column.multiply(column.transpose()).scalarMultiply(1 / s));
      assertSame(covariance.p, predicted, 1e-9);
      assertThat(covariance.variance(k)).isCloseTo(predicted.getEntry(k, k), within(1e-9));
    }
  }

  @Test
  void aLossForgetsTiltVelocityAndPlaceAndKeepsHeadingBiasAndMatrix() {
    // Given: any covariance, released. Expect: the start's variances without any covariance for
    // what was lost; the heading's variance grown by the turn; the rest untouched.
    RealMatrix root = random(N, N, 5);
    RealMatrix p = root.multiply(root.transpose());
    Covariance covariance = new Covariance();
    System.arraycopy(flat(p), 0, covariance.p, 0, N * N);
    covariance.release(C, 0.4);
    double[] start = {0.01, 0.01, 0, 0.25, 0.25, 0.25, 0.25};
    for (int i = 0; i < N; i++) {
      for (int j = 0; j < N; j++) {
        boolean lost = (i < 7 && i != 2) || (j < 7 && j != 2);
        double kept = p.getEntry(i, j) + (i == 2 && j == 2 ? 0.4 : 0);
        double expected = lost ? i == j ? start[i] : 0 : kept;
        assertThat(covariance.p[i * N + j]).isCloseTo(expected, within(1e-12));
      }
    }
    covariance.start(C);
    double[] diagonal = new double[N];
    for (int i = 0; i < N; i++) {
      diagonal[i] = i < 7 ? start[i] : i < 10 ? Math.pow(Math.toRadians(2), 2) : 0.0025 * 0.0025;
    }
    diagonal[2] = 1e-9;
    assertSame(covariance.p, MatrixUtils.createRealDiagonalMatrix(diagonal), 1e-15);
  }

  @Test
  void aStatementMadeMoreOftenThanMovementChangesCountsLess() {
    // Given: speed and place 0.5, alike over 0.3 s (standard settings). Expect: variance times 0.3
    // s over the step, never under one statement.
    assertThat(C.speedVarianceOver(0.1)).isCloseTo(0.25 * 3, within(1e-12));
    assertThat(C.placeVarianceOver(0.05)).isCloseTo(0.25 * 6, within(1e-12));
    assertThat(C.speedVarianceOver(2)).isCloseTo(0.25, within(1e-12));
    assertThat(C.placeVarianceOver(2)).isCloseTo(0.25, within(1e-12));
  }
}
