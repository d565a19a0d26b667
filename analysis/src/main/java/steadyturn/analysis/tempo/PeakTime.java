package steadyturn.analysis.tempo;

import steadyturn.analysis.measure.MeasureValue;

/**
 * The instant of a maximum that is flat: the middle of the stretch in which the quantity stays
 * within a small part of its highest value. Where another stretch comes as near to it, the maximum
 * may as well lie there.
 *
 * @param timeS the instant, s
 * @param sdS its standard deviation if it may lie anywhere in such a stretch: for one, its length
 *     over the root of 12 (the even distribution), s
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
    double fromS = from == 0 ? timeS[0] : meets(timeS, values, from - 1, level);
    double toS = to == values.length - 1 ? timeS[to] : meets(timeS, values, to, level);
    double middle = atEdge ? timeS[best] : (fromS + toS) / 2;
    double square = (toS - fromS) * (toS - fromS) / 12 * (to - from + 1);
    int count = to - from + 1;
    for (int i = 0; i < values.length; i++) {
      if ((i < from || i > to) && values[i] >= level) {
        square += (timeS[i] - middle) * (timeS[i] - middle);
        count++;
      }
    }
    return new PeakTime(middle, Math.max(stepS / 2, Math.sqrt(square / count)), values[best]);
  }

  /**
   * The same where the values may be off by a larger part at one moment than at another, as those
   * of a unit that springs on soft skin: every other peak that may be the highest in truth lies
   * within 95 %.
   *
   * @param values as found from
   * @param rivalPart a peak lower by more than that part of the highest is none
   */
  PeakTime beside(double[] timeS, double[] values, double rivalPart) {
    double farthestS = 0;
    for (int i = 0; i < values.length; i++) {
      boolean isPeak =
          (i == 0 || values[i - 1] <= values[i])
              && (i == values.length - 1 || values[i + 1] <= values[i]);
      if (isPeak && values[i] >= value * (1 - rivalPart)) {
        farthestS = Math.max(farthestS, Math.abs(timeS[i] - this.timeS));
      }
    }
    return new PeakTime(this.timeS, Math.hypot(sdS, farthestS / MeasureValue.Z95), value);
  }

  /** Where the line through samples i and i + 1 meets the level. */
  private static double meets(double[] timeS, double[] values, int i, double level) {
    double part = (level - values[i]) / (values[i + 1] - values[i]);
    return timeS[i] + part * (timeS[i + 1] - timeS[i]);
  }
}
