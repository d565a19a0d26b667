package steadyturn.fusion.filter.kalman;

import static steadyturn.fusion.filter.kalman.BlockModel.ERRORS;

import steadyturn.fusion.filter.kalman.BlockTrace.Block;
import steadyturn.fusion.filter.kalman.BlockTrace.Observation;

/**
 * The backward half of a fixed-interval smoother over the blocks of a forward pass, in the form of
 * Bierman 1973, "Fixed interval smoothing with discrete measurements", Int J Control 18:65-75 (from
 * memory; modified Bryson-Frazier): an adjoint vector and matrix are carried back, no covariance is
 * inverted. The smoothed error after block k is -P(k) lambda(k), its covariance P - P Lambda P.
 */
public final class BackwardPass {

  private static final int N = ERRORS;

  private final BlockTrace trace;
  private final double[] lambda = new double[N];
  private final double[] lambdaMatrix = new double[N * N];
  private final double[] product = new double[N];

  /** Smoothed turn after block k, less what the forward pass had then: rad, at 3 k + axis. */
  public final double[] turnRad;

  /** One sigma of the smoothed inclination (mean of two axes) and heading after block k, rad. */
  public final double[] inclinationSigmaRad;

  public final double[] headingSigmaRad;

  public BackwardPass(BlockTrace trace) {
    this.trace = trace;
    turnRad = new double[3 * trace.blocks()];
    inclinationSigmaRad = new double[trace.blocks()];
    headingSigmaRad = new double[trace.blocks()];
  }

  public void run() {
    for (int k = trace.blocks() - 1; k >= 0; k--) {
      Block block = trace.block(k);
      finish(k, block.turnRows);
      for (int o = block.observations.size() - 1; o >= 0; o--) {
        undo(block.observations.get(o));
      }
      carryBack(block.model);
      if (block.startsAnew) {
        forget();
      }
    }
  }

  /** What was lost before a block tells nothing of what came before it. */
  private void forget() {
    for (int k : Covariance.RELEASED) {
      lambda[k] = 0;
      for (int j = 0; j < N; j++) {
        lambdaMatrix[k * N + j] = 0;
        lambdaMatrix[j * N + k] = 0;
      }
    }
  }

  private void finish(int block, double[] turnRows) {
    for (int axis = 0; axis < 3; axis++) {
      double sum = 0;
      for (int j = 0; j < N; j++) {
        sum += turnRows[axis * N + j] * lambda[j];
      }
      turnRad[3 * block + axis] = -sum;
    }
    double inclination = 0.5 * (smoothedVariance(turnRows, 0) + smoothedVariance(turnRows, 1));
    inclinationSigmaRad[block] = Math.sqrt(Math.max(0, inclination));
    headingSigmaRad[block] = Math.sqrt(Math.max(0, smoothedVariance(turnRows, 2)));
  }

  private double smoothedVariance(double[] turnRows, int axis) {
    int at = axis * N;
    double taken = 0;
    for (int i = 0; i < N; i++) {
      double sum = 0;
      for (int j = 0; j < N; j++) {
        sum += lambdaMatrix[i * N + j] * turnRows[at + j];
      }
      taken += turnRows[at + i] * sum;
    }
    return turnRows[at + axis] - taken;
  }

  /** lambda' = (I - K h)^T lambda - h^T nu / S, and the like for the matrix. */
  private void undo(Observation seen) {
    int h = seen.error();
    double[] gain = seen.gain();
    double inverse = 1 / seen.variance();
    double along = 0;
    double square = 0;
    for (int i = 0; i < N; i++) {
      double sum = 0;
      for (int j = 0; j < N; j++) {
        sum += lambdaMatrix[i * N + j] * gain[j];
      }
      product[i] = sum;
      along += gain[i] * lambda[i];
      square += gain[i] * sum;
    }
    lambda[h] -= along + seen.innovation() * inverse;
    for (int i = 0; i < N; i++) {
      lambdaMatrix[h * N + i] -= product[i];
      lambdaMatrix[i * N + h] -= product[i];
    }
    lambdaMatrix[h * N + h] += square + inverse;
  }

  /** The matrix, which is its own transpose, becomes F-transposed times it times F. */
  private void carryBack(BlockModel model) {
    model.carryBack(lambda, 0);
    for (int i = 0; i < N; i++) {
      model.carryBack(lambdaMatrix, i * N);
    }
    for (int i = 0; i < N; i++) {
      for (int j = 0; j < i; j++) {
        double upper = lambdaMatrix[j * N + i];
        lambdaMatrix[j * N + i] = lambdaMatrix[i * N + j];
        lambdaMatrix[i * N + j] = upper;
      }
    }
    for (int i = 0; i < N; i++) {
      model.carryBack(lambdaMatrix, i * N);
    }
    for (int i = 0; i < N; i++) {
      for (int j = 0; j < i; j++) {
        double mean = 0.5 * (lambdaMatrix[i * N + j] + lambdaMatrix[j * N + i]);
        lambdaMatrix[i * N + j] = mean;
        lambdaMatrix[j * N + i] = mean;
      }
    }
  }
}
