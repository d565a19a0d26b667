package steadyturn.ingest.columnmap;

import steadyturn.ingest.sample.Averages;

/** What a unit gathered over each of its steps, taken into means over the step. */
final class Increments {

  private Increments() {}

  /**
   * The means of one vector, m/s^2 or rad/s. A step that follows a lost sample was as long as every
   * other: the increment is of the unit's own step, not of the time since the sample before.
   *
   * @param timeS of the ends of the steps
   * @param gathered x, y, z in m/s or rad, or a quaternion, scalar first
   */
  static double[][] means(double[] timeS, double[][] gathered) {
    double stepS = stepS(timeS);
    double[][] means = new double[3][timeS.length];
    for (int i = 0; i < timeS.length; i++) {
      double scale = (gathered.length == 4 ? turnScale(gathered, i) : 1) / stepS;
      for (int axis = 0; axis < 3; axis++) {
        means[axis][i] = scale * gathered[gathered.length - 3 + axis][i];
      }
    }
    return means;
  }

  /** The unit's own step, s. */
  static double stepS(double[] timeS) {
    return timeS.length < 2 ? 1 : Averages.medianStep(i -> timeS[i], timeS.length);
  }

  /** What takes a quaternion's vector part into the vector of the turn, rad. */
  private static double turnScale(double[][] q, int i) {
    double sin = Math.sqrt(q[1][i] * q[1][i] + q[2][i] * q[2][i] + q[3][i] * q[3][i]);
    double sign = q[0][i] < 0 ? -1 : 1; // the shorter way
    return sin < 1e-12 ? 2 * sign : sign * 2 * Math.atan2(sin, Math.abs(q[0][i])) / sin;
  }
}
