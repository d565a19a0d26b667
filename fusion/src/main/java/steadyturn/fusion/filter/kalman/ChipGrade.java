package steadyturn.fusion.filter.kalman;

import java.util.Arrays;
import steadyturn.fusion.filter.SampleGuard;
import steadyturn.ingest.sample.StandardGravity;

/**
 * How good this very unit is, as its own rests show. Its noise is read off the differences between
 * one hundredth of a second and the next: swaying and trembling are too slow to show in them, and
 * any sample rate gives the same figure. How far the force at rest is from gravity hints at the
 * errors of the accelerometer, which tilt every answer and which no filter can see.
 */
final class ChipGrade {

  /** Angle that the noise of a usual unit gathers in one second, rad (units of the 2020s). */
  private static final double USUAL_NOISE_RAD = Math.toRadians(0.006);

  /** No unit counts as more than this much better or worse than a usual one. */
  private static final double LOWEST = 0.2;

  private static final double HIGHEST = 5;
  private static final double PIECE_S = 0.0099;
  private static final int ENOUGH = 60;

  private final double[] turn = new double[3];
  private final double[] before = new double[3];
  private double lengthS;
  private boolean followsAnother;
  private double noiseSum;
  private int pieces;
  private double tiltSum;
  private int rests;

  /** Takes a step of a rest, measured in full. */
  void take(SampleGuard step) {
    turn[0] += step.rateX * step.stepS;
    turn[1] += step.rateY * step.stepS;
    turn[2] += step.rateZ * step.stepS;
    lengthS += step.stepS;
    if (lengthS >= PIECE_S) {
      endPiece();
    }
  }

  private void endPiece() {
    double squares = 0;
    for (int axis = 0; axis < 3; axis++) {
      double mean = turn[axis] / lengthS;
      squares += (mean - before[axis]) * (mean - before[axis]);
      before[axis] = mean;
      turn[axis] = 0;
    }
    if (followsAnother) {
      noiseSum += squares / 6 * lengthS;
      pieces++;
    }
    followsAnother = true;
    lengthS = 0;
  }

  /** The step is none of a rest. */
  void leave() {
    if (followsAnother || lengthS > 0) {
      followsAnother = false;
      lengthS = 0;
      Arrays.fill(turn, 0);
    }
  }

  boolean noiseKnown() {
    return pieces >= ENOUGH;
  }

  /** The unit's noise over that of a usual unit, kept within bounds. */
  double noiseRatio() {
    double ratio = Math.sqrt(noiseSum / pieces) / USUAL_NOISE_RAD;
    return Math.max(LOWEST, Math.min(HIGHEST, ratio));
  }

  /** Takes the mean force of a block at rest. */
  void takeRest(BlockSums rest) {
    double[] v = rest.velocityMps;
    double force = Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]) / rest.lengthS;
    double tilt = force / StandardGravity.MPS2 - 1;
    tiltSum += tilt * tilt;
    rests++;
  }

  /**
   * By how much the variance of the tilt that the accelerometer's errors make is off from what was
   * assumed: that and the one error seen (along gravity) count alike.
   */
  double tiltVarianceOff(double assumed) {
    return rests == 0 ? 0 : 0.5 * (tiltSum / rests - assumed);
  }
}
