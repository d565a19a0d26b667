package steadyturn.analysis.swing.find;

/** Where a sampled quantity meets a level. */
final class Crossing {

  private Crossing() {}

  /** Instant at which the line through samples i-1 and i meets a level, s. */
  static double atS(double[] timeS, double[] values, int i, double level) {
    double part = (level - values[i - 1]) / (values[i] - values[i - 1]);
    return timeS[i - 1] + part * (timeS[i] - timeS[i - 1]);
  }
}
