package steadyturn.analysis.tempo;

/**
 * The instant of a maximum that is flat: the middle of the stretch in which the quantity stays
 * within a small part of its highest value.
 *
 * @param timeS the instant, s
 * @param sdS its standard deviation: half of that stretch, s
 * @param value the highest value
 */
public record PeakTime(double timeS, double sdS, double value) {

  /**
   * Finds the highest of the values.
   *
   * @param part part of the highest value that noise can hide
   */
  public static PeakTime of(double[] timeS, double[] values, double part) {
    int best = 0;
    for (int i = 0; i < values.length; i++) {
      best = values[i] > values[best] ? i : best;
    }
    double level = values[best] * (1 - part);
    int from = best;
    while (from > 0 && values[from - 1] >= level) {
      from--;
    }
    int to = best;
    while (to < values.length - 1 && values[to + 1] >= level) {
      to++;
    }
    double stepS = (timeS[timeS.length - 1] - timeS[0]) / Math.max(1, timeS.length - 1);
    boolean atEdge = from == 0 || to == values.length - 1;
    double middle = atEdge ? timeS[best] : (timeS[from] + timeS[to]) / 2;
    double sd = Math.max(stepS / 2, (timeS[to] - timeS[from]) / 3);
    return new PeakTime(middle, sd, values[best]);
  }
}
