package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.UnitStream;

/**
 * Where a unit's clock may have begun anew: samples are missing, and those after them do not lie
 * where the even steps of those before them lead. A unit whose clock runs on keeps its step over
 * any loss; one that starts again is laid down by arrival, anywhere between two steps.
 *
 * @param lastS the last sample before, s
 * @param firstS the first after, s
 * @param isSure whether the steps do not go on; else they may by chance
 */
record ClockBreak(double lastS, double firstS, boolean isSure) {

  /** Shorter holes are not looked into, steps and s. */
  private static final double HOLE_STEPS = 3.5;

  private static final double HOLE_S = 0.02;

  /** Samples at hardly any distance were put there, steps. */
  private static final double CROWDED_STEPS = 0.2;

  /** So much on either side shows the steps, s; and at least so many samples. */
  private static final double SIDE_S = 3;

  private static final int LEAST_SAMPLES = 20;

  /** Beyond so many spreads the steps do not go on; times are written to a millionth or so, s. */
  private static final double SURE = 5;

  private static final double ROUNDED_S = 5e-6;

  /** How fast the count of steps follows times that jitter (our choice). */
  private static final double FOLLOW = 0.1;

  private static final double FOLLOW_STEP = 0.005;

  /** Steps that are known worse than that part of one tell nothing; then a long hole is a break. */
  private static final double TELLS = 0.25;

  /** The same for times that jitter by more than that part of a step: some are miscounted. */
  private static final double COUNTED = 0.12;

  /** Times are counted again by the line through them: a count that slipped stays no longer. */
  private static final int RECOUNTS = 3;

  /** So long a hole leaves time to begin anew, s. */
  private static final double LONG_S = 0.2;

  ClockBreak earlier(double byS) {
    return new ClockBreak(lastS - byS, firstS - byS, isSure);
  }

  /** All breaks in order. */
  static List<ClockBreak> of(UnitStream unit) {
    List<Integer> holes = new ArrayList<>(); // the samples before them
    double stepS = unit.usualStepS();
    for (int i = 0; i + 1 < unit.size(); i++) {
      double dtS = unit.timeS(i + 1) - unit.timeS(i);
      if (dtS > Math.max(HOLE_S, HOLE_STEPS * stepS) || dtS < CROWDED_STEPS * stepS) {
        holes.add(i);
      }
    }
    List<ClockBreak> breaks = new ArrayList<>();
    for (int h = 0; h < holes.size(); h++) {
      int first = h == 0 ? 0 : holes.get(h - 1) + 1;
      int last = h + 1 == holes.size() ? unit.size() - 1 : holes.get(h + 1);
      int at = holes.get(h);
      Steps before = Steps.of(unit, Math.max(first, unit.indexAt(unit.timeS(at) - SIDE_S)), at);
      int end = Math.min(last, unit.indexAt(unit.timeS(at + 1) + SIDE_S) - 1);
      Steps after = Steps.of(unit, end, at + 1);
      boolean isLong = unit.timeS(at + 1) - unit.timeS(at) > LONG_S;
      boolean isBroken = isBroken(before, after).orElse(isLong);
      if (isBroken || isLong) {
        breaks.add(new ClockBreak(unit.timeS(at), unit.timeS(at + 1), isBroken));
      }
    }
    return breaks;
  }

  /** None where the steps do not tell. */
  private static Optional<Boolean> isBroken(Steps before, Steps after) {
    double weight = 1 / (before.stepSdS * before.stepSdS);
    double other = 1 / (after.stepSdS * after.stepSdS);
    double stepS = (weight * before.stepS + other * after.stepS) / (weight + other);
    double steps = (after.endS - before.endS) / stepS;
    double offS = Math.abs(steps - Math.rint(steps)) * stepS;
    double sdS =
        Math.hypot(Math.hypot(before.endSdS, after.endSdS), steps / Math.sqrt(weight + other));
    boolean tells =
        Math.min(before.samples, after.samples) >= LEAST_SAMPLES
            && SURE * sdS <= TELLS * stepS
            && Math.max(before.strayS, after.strayS) <= COUNTED * stepS;
    return tells ? Optional.of(offS > SURE * sdS + ROUNDED_S) : Optional.empty();
  }

  /**
   * The line through times that come in even steps, towards its end at a hole.
   *
   * @param endS the line at the hole's edge, s
   * @param stepS length of a step, s
   * @param strayS how far single times lie from it, RMS, s
   */
  private record Steps(
      int samples, double endS, double endSdS, double stepS, double stepSdS, double strayS) {

    /** From a sample to the one at the hole, forwards or backwards in time. */
    static Steps of(UnitStream unit, int from, int at) {
      int way = from < at ? 1 : -1;
      int n = Math.abs(at - from) + 1;
      double phaseS = 0;
      double usualS = unit.usualStepS();
      double[] number = new double[n];
      double[] awayS = new double[n];
      for (int k = 1; k < n; k++) { // from the hole outwards
        awayS[k] = unit.timeS(at - way * k) - unit.timeS(at);
        double steps = Math.max(0, Math.rint((Math.abs(awayS[k]) - phaseS) / usualS));
        double besideS = Math.abs(awayS[k]) - phaseS - steps * usualS;
        phaseS += steps * usualS + FOLLOW * besideS; // single times jitter
        usualS += FOLLOW_STEP * besideS;
        number[k] = number[k - 1] - way * steps;
      }
      Steps line = through(number, awayS);
      for (int round = 0; round < RECOUNTS && line.stepS > 0; round++) {
        for (int k = 0; k < n; k++) { // a time that jitters by half a step was counted wrong
          number[k] = Math.rint((awayS[k] - line.endS) / line.stepS);
        }
        line = through(number, awayS);
      }
      return new Steps(
          n, unit.timeS(at) + line.endS, line.endSdS, line.stepS, line.stepSdS, line.strayS);
    }

    /** The line of least squares; its end is where the number is 0. */
    private static Steps through(double[] number, double[] awayS) {
      int n = number.length;
      double meanN = Averages.mean(number, 0, n);
      double meanS = Averages.mean(awayS, 0, n);
      double nn = 0;
      double ns = 0;
      double ss = 0;
      for (int k = 0; k < n; k++) {
        nn += (number[k] - meanN) * (number[k] - meanN);
        ns += (number[k] - meanN) * (awayS[k] - meanS);
        ss += (awayS[k] - meanS) * (awayS[k] - meanS);
      }
      double stepS = ns / nn;
      double sdS =
          Math.hypot(Math.sqrt(Math.max(0, ss - stepS * ns) / Math.max(1, n - 2)), ROUNDED_S);
      double endSdS = sdS * Math.sqrt(1.0 / n + meanN * meanN / nn);
      return new Steps(n, meanS - stepS * meanN, endSdS, stepS, sdS / Math.sqrt(nn), sdS);
    }
  }
}
