package steadyturn.fusion.filter.kalman;

/** Hears what the Kalman filter does at the end of each block; the smoother records it. */
interface BlockListener {

  /** A listener that forgets everything: for live use. */
  BlockListener NONE = new BlockListener() {};

  /** Tilt, velocity and place were lost and are found anew before the next block. */
  default void released() {}

  /** The errors were carried over a block of these sums. */
  default void predicted(BlockSums sums) {}

  /**
   * One scalar measurement was folded in.
   *
   * @param error which of the errors was measured
   * @param variance variance of the innovation
   */
  default void observed(int error, double[] gain, double variance, double innovation) {}

  /** The block is done: its correction was applied, this covariance is left (19 x 19). */
  default void corrected(double[] correction, double[] covariance) {}
}
