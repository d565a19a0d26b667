package steadyturn.fusion.filter.kalman;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.fusion.filter.SampleGuard;
import steadyturn.fusion.filter.SampleLimits;
import steadyturn.fusion.rotation.MutableQuaternion;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * The backward pass (no covariance inverted) against the smoother of Rauch, Tung and Striebel 1965
 * (AIAA J 3:1445-1450, from memory), which inverts each: two ways to one answer.
 */
class BackwardPassTest {

  private static final int N = BlockModel.ERRORS;
  private static final KalmanCoefficients C = KalmanCoefficients.of(KalmanSettings.standard());

  /** One block of the forward pass, dense. */
  private record Step(
      RealMatrix f,
      RealMatrix predicted,
      RealVector predictedMean,
      RealMatrix p,
      RealVector mean) {}

  private static RealMatrix dense(double[] flat) {
    RealMatrix m = MatrixUtils.createRealMatrix(N, N);
    for (int i = 0; i < N * N; i++) {
      m.setEntry(i / N, i % N, flat[i]);
    }
    return m;
  }

  private static BlockSums sums(Random random) {
    BlockSums sums = new BlockSums();
    for (int i = 0; i < 12; i++) {
      Vector3 rate = new Vector3(3 * random.nextGaussian(), random.nextGaussian(), 2);
      Quaternion q = Quaternion.fromRotationVector(rate.times(0.2));
      SampleGuard guard = new SampleGuard(SampleLimits.unlimited());
      guard.take(rate.x(), rate.y(), rate.z(), 2, -1, 9, 0.01);
      sums.add(
          new MutableQuaternion().set(q),
          guard,
          new double[] {rate.x(), rate.y(), rate.z()},
          2,
          -1,
          9);
    }
    return sums;
  }

  private static RealMatrix f(BlockModel model) {
    double[] identity = new double[N * N];
    for (int i = 0; i < N; i++) {
      identity[i * N + i] = 1;
    }
    RealMatrix f = MatrixUtils.createRealMatrix(N, N);
    for (int j = 0; j < N; j++) {
      model.carryRow(identity, j * N);
      for (int i = 0; i < N; i++) {
        f.setEntry(i, j, identity[j * N + i]);
      }
    }
    return f;
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 3})
  void theSmoothedTurnIsThatOfRauchTungAndStriebel(int lostBefore) {
    // Given: six blocks with measurements of velocity, place and bias (seed 8), in one case with
    // all lost before the fourth. Expect: the same turn and sigma after each block. Within 1e-7 of
    // turns of some 0.01 rad: inverting 19 x 19 costs digits.
    Random random = new Random(8);
    Covariance covariance = new Covariance();
    covariance.start(C);
    BlockTrace trace = new BlockTrace();
    RealVector mean = MatrixUtils.createRealVector(new double[N]);
    List<Step> steps = new ArrayList<>();
    for (int block = 0; block < 6; block++) {
      RealMatrix kept = MatrixUtils.createRealIdentityMatrix(N);
      if (block == lostBefore) {
        covariance.release(C, 0.2);
        trace.released();
        for (int k : Covariance.RELEASED) {
          kept.setEntry(k, k, 0);
        }
      }
      BlockSums sums = sums(random);
      BlockModel model = new BlockModel();
      model.set(sums);
      covariance.predict(model, sums, C);
      trace.predicted(sums);
      RealMatrix f = f(model).multiply(kept);
      mean = f.operate(mean);
      RealMatrix predicted = dense(covariance.p);
      RealVector predictedMean = mean;
      for (int k : block % 2 == 0 ? new int[] {3, 4, 5, 6} : new int[] {3, 4, 5, 6, 7, 8, 9}) {
        double innovation = (k < 7 ? 0.3 : 0.01) * random.nextGaussian();
        double variance = covariance.observe(k, k < 7 ? 0.2 : 1e-5);
        mean =
            mean.add(MatrixUtils.createRealVector(covariance.gain.clone()).mapMultiply(innovation));
        trace.observed(k, covariance.gain, variance, innovation);
      }
      double[] correction = mean.subtract(predictedMean).toArray();
      trace.corrected(correction, covariance.p);
      assertThat(trace.correctionRad(block, 1)).isEqualTo(correction[1]);
      steps.add(new Step(f, predicted, predictedMean, dense(covariance.p), mean));
    }
    BackwardPass back = new BackwardPass(trace);
    back.run();
    assertSame(steps, back);
  }

  private static void assertSame(List<Step> steps, BackwardPass back) {
    int last = steps.size() - 1;
    RealVector mean = steps.get(last).mean;
    RealMatrix p = steps.get(last).p;
    for (int block = last; block >= 0; block--) {
      Step now = steps.get(block);
      if (block < last) {
        Step next = steps.get(block + 1);
        RealMatrix gain =
            now.p
                .multiply(next.f.transpose())
                .multiply(new LUDecomposition(next.predicted, 1e-300).getSolver().getInverse());
        mean = now.mean.add(gain.operate(mean.subtract(next.predictedMean)));
        p = now.p.add(gain.multiply(p.subtract(next.predicted)).multiply(gain.transpose()));
      }
      for (int axis = 0; axis < 3; axis++) {
        assertThat(back.turnRad[3 * block + axis])
            .as("block " + block + ", axis " + axis)
            .isCloseTo(mean.getEntry(axis) - now.mean.getEntry(axis), within(1e-7));
      }
      double tilt = Math.sqrt(0.5 * (p.getEntry(0, 0) + p.getEntry(1, 1)));
      assertThat(back.inclinationSigmaRad[block]).isCloseTo(tilt, within(1e-6));
      assertThat(back.headingSigmaRad[block]).isCloseTo(Math.sqrt(p.getEntry(2, 2)), within(1e-6));
    }
  }
}
