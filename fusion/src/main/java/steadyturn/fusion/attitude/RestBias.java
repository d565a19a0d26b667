package steadyturn.fusion.attitude;

import org.apache.commons.math3.stat.StatUtils;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

/**
 * Gyroscope bias of a whole recording from its quiet moments: the stream is cut into blocks of 0.5
 * s; the bias is the median of the block means of all blocks that turn by less than 2 deg/s RMS
 * about their mean and show a mean below 8 deg/s. The median over the stillnesses of a player who
 * sways is better than any one of them. Zero when no block is quiet.
 */
public final class RestBias {

  private static final double BLOCK_S = 0.5;
  private static final double QUIET_RMS_RAD_PER_S = Math.toRadians(2);
  // our choice: more than any unit of today shows as bias, less than any walk
  private static final double LARGEST_BIAS_RAD_PER_S = Math.toRadians(8);

  private RestBias() {}

  /**
   * What quiet blocks show.
   *
   * @param radPerS middle of their means, unit axes; zero where there is none
   * @param blocks how many
   */
  public record Quiet(Vector3 radPerS, int blocks) {

    public static final Quiet NONE = new Quiet(Vector3.ZERO, 0);
  }

  /** One pass over the columns; the bias in unit axes, rad/s. */
  public static Vector3 of(UnitStream stream) {
    return quiet(stream).radPerS;
  }

  /** The same with the number of blocks that it rests on. */
  public static Quiet quiet(UnitStream stream) {
    int n = stream.size();
    double[][] means = new double[3][n / 16 + 1];
    int blocks = 0;
    for (int from = 0; from < n; ) {
      int to = Math.min(n, Math.max(from + 1, stream.indexAt(stream.timeS(from) + BLOCK_S)));
      if (to - from >= 16 && quiet(stream, from, to, means, blocks)) {
        blocks++;
      }
      from = to;
    }
    int count = blocks;
    return count == 0
        ? Quiet.NONE
        : new Quiet(Vector3.each(axis -> median(means[axis], count)), count);
  }

  /** Writes the block's mean to column {@code slot}; false when the block is not quiet. */
  private static boolean quiet(UnitStream stream, int from, int to, double[][] means, int slot) {
    double spread = 0;
    double size = 0;
    for (int axis = 0; axis < 3; axis++) {
      double[] column = stream.gyroColumnRadPerS(axis);
      double sum = 0;
      double squares = 0;
      for (int i = from; i < to; i++) {
        sum += column[i];
        squares += column[i] * column[i];
      }
      double mean = sum / (to - from);
      means[axis][slot] = mean;
      spread += squares / (to - from) - mean * mean;
      size += mean * mean;
    }
    // NaN fails both comparisons
    return spread < QUIET_RMS_RAD_PER_S * QUIET_RMS_RAD_PER_S
        && size < LARGEST_BIAS_RAD_PER_S * LARGEST_BIAS_RAD_PER_S;
  }

  private static double median(double[] values, int count) {
    return StatUtils.percentile(values, 0, count, 50);
  }
}
