package steadyturn.fusion.displace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.rest.RestGate;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.strapdown.UnitState;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.fusion.trial.TrialMotion;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * Three swings about and along all axes at once, of one unit with errors of every kind, estimated
 * together: held against the conditions of a maximum and against one dense inverse, neither of
 * which eliminates anything.
 */
class LessonLawsTest {

  private static final double G = TrialMotion.GRAVITY_MPS2;
  private static final int OWN = 12;
  private static final int SHARED_FROM = UnitState.GYRO_BIAS;
  private static final int SHARED = UnitState.SIZE - SHARED_FROM;
  private static final Vector3 FIRST_BIAS = new Vector3(0.004, -0.003, 0.002);
  private static final UnitPriors PRIORS =
      UnitPriors.calibrated().withGyroBias(Math.toRadians(0.06));

  /** Still for 1 s, the trial of 1.2 s, still for 1 s; gyro and accelerometer in error. */
  private static UnitStream swing(double turnRad, double wayM) {
    TrialMotion trial = TrialMotion.thereAndBack(1.2, turnRad, wayM);
    return MadeUnit.of(
        UnitFacts.plain(BodyPoint.PELVIS, 100),
        3.2,
        t -> {
          Vector3 w = trial.rateUnitRadPerS(inTrial(t));
          return w.plus(new Vector3(0.003 * w.y(), -0.002 * w.x(), 0.004 * w.z()))
              .plus(FIRST_BIAS)
              .plus(new Vector3(0.0006, 0.0004, -0.0008));
        },
        t -> {
          Vector3 f = trial.forceUnitMps2(inTrial(t));
          return f.plus(new Vector3(0.001 * f.x(), 0, -0.001 * f.z()))
              .plus(new Vector3(0.03, -0.02, 0.025));
        });
  }

  private static double inTrial(double t) {
    return Math.max(0, Math.min(1.2, t - 1));
  }

  private static SwingSpan span(UnitStream stream) {
    return SwingSpan.of(
        stream, List.of(Anchor.address(0.1, 1), Anchor.finish(2.2, 3.1)), List.of());
  }

  private static final List<SwingSpan> SWINGS =
      List.of(span(swing(1, 0.1)), span(swing(-0.7, 0.2)), span(swing(0.4, -0.15)));

  private static final List<SwingFit> FIT =
      new LessonEstimate(PRIORS, G, 40, 1e-9, 0).fit(SWINGS, FIRST_BIAS);

  private static Rows rows(int swing) {
    UnitState state = FIT.get(swing).state();
    return Knowledge.of(SWINGS.get(swing), state, G);
  }

  private static double[] ownSd() {
    double[] sd = new double[OWN];
    for (int i = 0; i < 3; i++) {
      sd[i] = i == 2 ? 1e-6 : PRIORS.tiltRad();
      sd[3 + i] = PRIORS.velocityMps();
      sd[6 + i] = PRIORS.gyroBiasDriftRadPerS();
      sd[9 + i] = PRIORS.accelBiasDriftMps2();
    }
    return sd;
  }

  private static double[] sharedSd() {
    double[] sd = new double[SHARED];
    for (int i = 0; i < SHARED; i++) {
      int p = SHARED_FROM + i;
      sd[i] =
          p < UnitState.ACCEL_BIAS
              ? PRIORS.gyroBiasRadPerS()
              : p < UnitState.GYRO_MATRIX
                  ? PRIORS.accelBiasMps2()
                  : p < UnitState.ACCEL_SCALE ? PRIORS.gyroMatrix() : PRIORS.accelScale();
    }
    return sd;
  }

  /** How far the rows pull at parameter p: the sum of derivative times residual. */
  private static double pull(Rows rows, int p) {
    double sum = 0;
    for (int row = 0; row < rows.size(); row++) {
      sum += rows.derivative(row)[p] * rows.residual(row);
    }
    return sum;
  }

  private static double[] moved(int swing) {
    UnitState now = FIT.get(swing).state();
    Vector3 up = RestGate.meanAccelMps2(swing(swing), 0.1, 1);
    Quaternion level = Quaternion.levelling(up);
    Vector3 turn = now.qLevelUnit().times(level.conjugate()).rotationVector();
    double[] out = new double[UnitState.SIZE];
    for (int axis = 0; axis < 3; axis++) {
      out[axis] = turn.get(axis);
      out[3 + axis] = now.velocityMps().get(axis);
      out[6 + axis] = now.gyroBiasRadPerS().minus(FIRST_BIAS).get(axis);
      out[9 + axis] = now.accelBiasMps2().get(axis);
      out[UnitState.ACCEL_SCALE + axis] = now.accelScale().get(axis);
    }
    System.arraycopy(now.gyroMatrix(), 0, out, UnitState.GYRO_MATRIX, 9);
    return out;
  }

  private static UnitStream swing(int k) {
    return k == 0 ? swing(1, 0.1) : k == 1 ? swing(-0.7, 0.2) : swing(0.4, -0.15);
  }

  @Test
  void atTheMaximumEveryParameterStandsWherePriorAndRowsPullAlike() {
    // Given: the estimate run to its end. Expect: an own parameter has moved by its variance times
    // the pull of its swing's rows, a shared one by its variance times the pull of all swings'
    // rows; a bias by both. Within 1e-3 of its spread: turns do not quite add up.
    for (int s = 0; s < 3; s++) {
      double[] found = moved(s);
      for (int p = 0; p < UnitState.SIZE; p++) {
        double expected = p < OWN ? ownSd()[p] * ownSd()[p] * pull(rows(s), p) : 0;
        double sd = p < OWN ? ownSd()[p] : sharedSd()[p - SHARED_FROM];
        if (p >= SHARED_FROM) {
          double all = pull(rows(0), p) + pull(rows(1), p) + pull(rows(2), p);
          expected += sharedSd()[p - SHARED_FROM] * sharedSd()[p - SHARED_FROM] * all;
        }
        assertThat(found[p])
            .as("swing " + s + ", parameter " + p)
            .isCloseTo(expected, within(1e-3 * sd + 1e-8));
      }
    }
  }

  @Test
  void theCovarianceIsThatOfOneDenseInverse() {
    // Given: all 3 x 12 own and 18 shared parameters in one information matrix of 54. Expect: the
    // covariance of each swing's 24 numbers, a bias being the sum of its own and the shared one.
    // Within 1e-4 of each size.
    int n = 3 * OWN + SHARED;
    RealMatrix information = MatrixUtils.createRealMatrix(n, n);
    for (int s = 0; s < 3; s++) {
      for (int i = 0; i < OWN; i++) {
        information.setEntry(OWN * s + i, OWN * s + i, Math.pow(ownSd()[i], -2));
      }
    }
    for (int i = 0; i < SHARED; i++) {
      information.setEntry(3 * OWN + i, 3 * OWN + i, Math.pow(sharedSd()[i], -2));
    }
    for (int s = 0; s < 3; s++) {
      Rows rows = rows(s);
      for (int row = 0; row < rows.size(); row++) {
        double[] wide = new double[n];
        System.arraycopy(rows.derivative(row), 0, wide, OWN * s, OWN);
        System.arraycopy(rows.derivative(row), SHARED_FROM, wide, 3 * OWN, SHARED);
        RealMatrix one = MatrixUtils.createRowRealMatrix(wide);
        information = information.add(one.transpose().multiply(one));
      }
    }
    RealMatrix inverse = new LUDecomposition(information, 1e-300).getSolver().getInverse();
    for (int s = 0; s < 3; s++) {
      RealMatrix map = MatrixUtils.createRealMatrix(UnitState.SIZE, n);
      for (int p = 0; p < UnitState.SIZE; p++) {
        if (p < OWN) {
          map.setEntry(p, OWN * s + p, 1);
        }
        if (p >= SHARED_FROM) {
          map.setEntry(p, 3 * OWN + p - SHARED_FROM, 1);
        }
      }
      RealMatrix expected = map.multiply(inverse).multiply(map.transpose());
      double[][] found = FIT.get(s).covariance();
      for (int i = 0; i < UnitState.SIZE; i++) {
        for (int j = 0; j < UnitState.SIZE; j++) {
          double size = Math.sqrt(expected.getEntry(i, i) * expected.getEntry(j, j));
          assertThat(found[i][j])
              .as("swing " + s + ", " + i + "," + j)
              .isCloseTo(expected.getEntry(i, j), within(1e-4 * size));
        }
      }
    }
  }

  @Test
  void theUnitsErrorsAreFoundWithinTheirStatedSpreads() {
    // Expect: the gyro's bias and the accelerometer's nearer than three spreads of what was put in,
    // and the spread no wider than the prior. The path comes back to where it began within 20 mm.
    UnitState state = FIT.get(0).state();
    double[][] covariance = FIT.get(0).covariance();
    Vector3 bias = FIRST_BIAS.plus(new Vector3(0.0006, 0.0004, -0.0008));
    Vector3 accel = new Vector3(0.03, -0.02, 0.025);
    for (int axis = 0; axis < 3; axis++) {
      double gyroSd = Math.sqrt(covariance[6 + axis][6 + axis]);
      double accelSd = Math.sqrt(covariance[9 + axis][9 + axis]);
      assertThat(state.gyroBiasRadPerS().get(axis)).isCloseTo(bias.get(axis), within(3 * gyroSd));
      assertThat(state.accelBiasMps2().get(axis)).isCloseTo(accel.get(axis), within(3 * accelSd));
      assertThat(gyroSd).isLessThan(Math.hypot(sharedSd()[0], ownSd()[6]));
    }
    assertThat(FIT).allMatch(SwingFit::taught);
  }
}
