package steadyturn.ingest.quality;

import java.util.OptionalDouble;

/**
 * Notices a sensor that is cut below the range it states: the largest value of all three axes comes
 * several times in a row, and is reached and left by a jump, as no smooth peak is.
 */
final class CutBelow {

  /** A top from here on is the stated end of the range. */
  private static final double STATED = 0.95;

  private static final int FLAT_SAMPLES = 4;

  /** Part of the top by which the samples beside a flat are lower. */
  private static final double JUMP = 0.004;

  private CutBelow() {}

  /** The value at which the sensor is cut; empty where the stated range holds. */
  static OptionalDouble of(double stated, double[][] axes, double smallest) {
    double top = 0;
    for (double[] axis : axes) {
      for (double value : axis) {
        top = Math.abs(value) > top ? Math.abs(value) : top;
      }
    }
    if (top < smallest || top > STATED * stated) {
      return OptionalDouble.empty();
    }
    for (double[] axis : axes) {
      if (hasFlat(axis, top * (1 - 2e-5))) {
        return OptionalDouble.of(top);
      }
    }
    return OptionalDouble.empty();
  }

  private static boolean hasFlat(double[] axis, double same) {
    int from = -1;
    for (int i = 0; i < axis.length; i++) {
      if (Math.abs(axis[i]) >= same) {
        from = from < 0 ? i : from;
      } else if (from >= 0) {
        boolean jumps =
            from > 0
                && Math.abs(axis[from - 1]) < (1 - JUMP) * same
                && Math.abs(axis[i]) < (1 - JUMP) * same;
        if (i - from >= FLAT_SAMPLES && jumps) {
          return true;
        }
        from = -1;
      }
    }
    return false;
  }
}
