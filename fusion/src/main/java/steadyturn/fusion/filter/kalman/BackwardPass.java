package steadyturn.fusion.filter.kalman;

import static steadyturn.fusion.filter.kalman.BlockModel.ERRORS;

/**
 * The backward half of a fixed-interval smoother over the blocks of a forward pass, in the form of
 * Bierman 1973, "Fixed interval smoothing with discrete measurements", Int J Control 18:65-75 (from
 * memory; modified Bryson-Frazier): an adjoint vector and matrix are carried back, no covariance is
 * inverted. The smoothed error after block k is -P(k) lambda(k), its covariance P - P Lambda P.
 */
public final class BackwardPass {

  private static final int N = ERRORS;

  private final BlockTrace trace;
  private final BlockModel model = new BlockModel();
  private final double[] lambda = new double[N];
  private final double[] lambdaMatrix = new double[N * N];
  private final double[] gain = new double[N];
  private final double[] product = new double[N];
  private final double[] turnRows = new double[3 * N];

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
    for (int block = trace.blocks() - 1; block >= 0; block--) {
      finish(block);
      for (int o = trace.observations(block) - 1; o >= 0; o--) {
        undoObservation(block, o);
      }
      carryBack(block);
      if (trace.startsAnew(block)) {
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

  private void finish(int block) {
    trace.readTurnRows(block, turnRows);
    for (int axis = 0; axis < 3; axis++) {
      double sum = 0;
      for (int j = 0; j < N; j++) {
        sum += turnRows[axis * N + j] * lambda[j];
      }
      turnRad[3 * block + axis] = -sum;
    }
    double inclination = 0.5 * (smoothedVariance(0) + smoothedVariance(1));
    inclinationSigmaRad[block] = Math.sqrt(Math.max(0, inclination));
    headingSigmaRad[block] = Math.sqrt(Math.max(0, smoothedVariance(2)));
  }

  private double smoothedVariance(int axis) {
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
  private void undoObservation(int block, int o) {
    int h = trace.error(block, o);
    double inverse = 1 / trace.variance(block, o);
    trace.readGain(block, o, gain);
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
    lambda[h] -= along + trace.innovation(block, o) * inverse;
    for (int i = 0; i < N; i++) {
      lambdaMatrix[h * N + i] -= product[i];
      lambdaMatrix[i * N + h] -= product[i];
    }
    lambdaMatrix[h * N + h] += square + inverse;
  }

  private void carryBack(int block) {
    trace.readModel(block, model);
    model.carryBack(lambda, 0);
    for (int i = 0; i < N; i++) {
      model.carryBack(lambdaMatrix, i * N);
    }
    model.carryBackRows(lambdaMatrix);
    for (int i = 0; i < N; i++) {
      for (int j = 0; j < i; j++) {
        double mean = 0.5 * (lambdaMatrix[i * N + j] + lambdaMatrix[j * N + i]);
        lambdaMatrix[i * N + j] = mean;
        lambdaMatrix[j * N + i] = mean;
      }
    }
  }
}
