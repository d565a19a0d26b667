package steadyturn.ingest.columnmap.check;

/**
 * How a unit turns from step to step in a window, as mapped: unit vectors of the rate, and the
 * angle of each step. Order and signs of axes change the vectors only, so the angles serve many
 * guesses.
 *
 * @param direction unit vector of each step's rate, one column an axis
 * @param sin of each step's angle
 * @param cos of each step's angle
 */
record WindowTurns(double[][] direction, double[] sin, double[] cos) {

  /**
   * @param scale what the rates are multiplied by
   */
  static WindowTurns of(
      EvenSamples samples, double[] biasRadPerS, int from, int count, double scale) {
    double[][] direction = new double[3][count];
    double[] sin = new double[count];
    double[] cos = new double[count];
    for (int i = 0; i < count; i++) {
      double square = 0;
      for (int axis = 0; axis < 3; axis++) {
        direction[axis][i] = samples.values()[3 + axis][from + i] - biasRadPerS[axis];
        square += direction[axis][i] * direction[axis][i];
      }
      double size = Math.sqrt(square);
      for (int axis = 0; axis < 3; axis++) {
        direction[axis][i] = size > 0 ? direction[axis][i] / size : 0;
      }
      sin[i] = Math.sin(size * scale * samples.stepS());
      cos[i] = Math.cos(size * scale * samples.stepS());
    }
    return new WindowTurns(direction, sin, cos);
  }
}
