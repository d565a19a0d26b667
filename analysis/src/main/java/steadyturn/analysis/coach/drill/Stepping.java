package steadyturn.analysis.coach.drill;

import steadyturn.ingest.sample.TimeAxis;
import steadyturn.ingest.sample.UnitStream;

/**
 * Tells whether a person steps, from what a unit on the pelvis feels. Feet that carry the body up
 * and down change the size of the force it feels; turning on the spot hardly does, as it pushes the
 * unit sideways only.
 *
 * @param timeS instants of the samples, s
 * @param sum running sum of the size of the specific force, m/s^2
 * @param squares running sum of its square
 */
@SuppressWarnings("ArrayRecordComponent") // columns of its own making
record Stepping(double[] timeS, double[] sum, double[] squares) {

  private static final double WINDOW_S = 1;

  /**
   * Unrest of the size of the force over a second, m/s^2. Ground: people who walk show 1 to 6, a
   * person who stands 0.02 to 0.05 (two open recordings with a unit on hip or lower back: Yang,
   * qmt, 2021; mobgap); hips that turn by 50 deg in a second with the unit 15 cm from the axis
   * under 0.2 (own arithmetic). Half way between in size.
   */
  private static final double LIMIT_MPS2 = 0.6;

  static Stepping of(UnitStream pelvis) {
    int n = pelvis.size();
    double[] sum = new double[n + 1];
    double[] squares = new double[n + 1];
    double last = 0;
    for (int i = 0; i < n; i++) {
      double size =
          Math.hypot(
              Math.hypot(pelvis.accelMps2(0, i), pelvis.accelMps2(1, i)), pelvis.accelMps2(2, i));
      last = Double.isNaN(size) ? last : size; // a lost sample changes nothing
      sum[i + 1] = sum[i] + last;
      squares[i + 1] = squares[i] + last * last;
    }
    return new Stepping(pelvis.timeColumnS(), sum, squares);
  }

  /** Whether the person steps in the second about an instant. */
  boolean at(double instantS) {
    int from = TimeAxis.indexAt(timeS, instantS - WINDOW_S / 2);
    int to = TimeAxis.indexAt(timeS, instantS + WINDOW_S / 2);
    if (to - from < 2) {
      return false;
    }
    double mean = (sum[to] - sum[from]) / (to - from);
    double variance = (squares[to] - squares[from]) / (to - from) - mean * mean;
    return variance > LIMIT_MPS2 * LIMIT_MPS2;
  }
}
