package steadyturn.fusion.filter.kalman;

/** Hears what the Kalman filter does at the end of each block; the smoother records it. */
interface BlockListener {

  /** A listener that forgets everything: for live use. */
  BlockListener NONE =
      new BlockListener() {
        @Override
        public void released() {}

        @Override
        public void predicted(BlockModel model) {}

        @Override
        public void observed(int error, double[] gain, double variance, double innovation) {}

        @Override
        public void corrected(double[] correction, double[] covariance) {}
      };

  /** Tilt, velocity and place were lost and are found anew before the next block. */
  void released();

  /** The errors were carried over a block by this model. */
  void predicted(BlockModel model);

  /**
   * One scalar measurement was folded in.
   *
   * @param error which of the errors was measured
   * @param variance variance of the innovation
   */
  void observed(int error, double[] gain, double variance, double innovation);

  /** The block is done: its correction was applied, this covariance is left (19 x 19). */
  void corrected(double[] correction, double[] covariance);
}
