package steadyturn.ingest.sensor;

import steadyturn.ingest.sample.Offered;

/**
 * Follows a counter that starts again at zero when its bits are used up: microseconds in 32 bits
 * after 71.6 minutes, a sample number in 16 bits after some minutes. Every step is taken forwards:
 * for a unit whose counter begins anew after a power loss, make a new one when its port was opened.
 */
@Offered
public final class WrappingCounter {

  private final long size;
  private long total;
  private boolean hasBegun;

  /**
   * A counter of so many bits.
   *
   * @param bits 1 to 62
   */
  public WrappingCounter(int bits) {
    if (bits < 1 || bits > 62) {
      throw new IllegalArgumentException("a counter has 1 to 62 bits, not " + bits);
    }
    size = 1L << bits;
  }

  /** The count without the wraps; the first call returns the value itself. */
  public long next(long value) {
    if (!hasBegun) {
      hasBegun = true;
      total = value;
      return total;
    }
    total += Math.floorMod(value - total, size);
    return total;
  }
}
