package steadyturn.ingest.quality;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.UnitStream;

/**
 * Finds the stretches in which the unit was still and what they show. A person sways, so the gate
 * is the spread of the rates about their mean, not their size: a biased unit still rests.
 */
final class RestCheck {

  /** Length of the stretches looked at, s; every half of it a new one begins. */
  private static final double STRETCH_S = 0.7;

  /** A stretch is a rest below these spreads (standing people stay below them). */
  private static final double STILL_RAD_PER_S = Math.toRadians(3);

  private static final double STILL_MPS2 = 0.6;

  /** Mean rate above this is a steady turn, not a bias. */
  private static final double STEADY_TURN_RAD_PER_S = Math.toRadians(20);

  /** A single quiet stretch may be half a sway: so many are asked, where there are (our choice). */
  private static final int ENOUGH = 5;

  private RestCheck() {}

  static RestFacts of(UnitStream unit, double rateHz) {
    int length = (int) Math.round(STRETCH_S * rateHz);
    if (length < 10 || unit.size() < length) {
      return RestFacts.NONE;
    }
    List<Stretch> rests = new ArrayList<>();
    for (int from = 0; from + length <= unit.size(); from += length / 2) {
      boolean isUnbroken = unit.timeS(from + length - 1) - unit.timeS(from) < 1.2 * STRETCH_S;
      if (isUnbroken && turnsEvenly(unit, from, from + length)) {
        Stretch stretch = Stretch.of(unit, from, from + length);
        if (stretch.isStill()) {
          rests.add(stretch);
        }
      }
    }
    return rests.isEmpty() ? RestFacts.NONE : facts(rests);
  }

  /**
   * A quick look, as most stretches move: no axis alone is spread more than all may be together.
   */
  private static boolean turnsEvenly(UnitStream unit, int from, int to) {
    for (int axis = 0; axis < 3; axis++) {
      double variance = meanAndVariance(unit.gyroColumnRadPerS(axis), from, to)[1];
      if (!(variance < STILL_RAD_PER_S * STILL_RAD_PER_S)) {
        return false;
      }
    }
    return true;
  }

  private static RestFacts facts(List<Stretch> rests) {
    List<Stretch> quietFirst = new ArrayList<>(rests);
    quietFirst.sort(Comparator.comparingDouble(Stretch::gyroSpreadRadPerS));
    int quietest = Math.max(Math.min(ENOUGH, rests.size()), rests.size() / 10);
    List<Double> bias = new ArrayList<>();
    for (int axis = 0; axis < 3; axis++) {
      int at = axis;
      bias.add(
          quietFirst.subList(0, quietest).stream()
              .mapToDouble(s -> s.meanRate.get(at))
              .average()
              .orElse(0));
    }
    double accelNoise =
        rests.stream().mapToDouble(Stretch::accelSpreadMps2).min().orElse(Double.NaN);
    double[] norms = rests.stream().mapToDouble(s -> s.accelNormMps2).toArray();
    return new RestFacts(
        STRETCH_S * (1 + 0.5 * (rests.size() - 1)),
        quietFirst.get(0).gyroSpreadRadPerS(),
        accelNoise,
        bias,
        Averages.median(norms));
  }

  /** Mean and spread of one stretch. */
  private record Stretch(
      List<Double> meanRate,
      double gyroSpreadRadPerS,
      double accelSpreadMps2,
      double accelNormMps2) {

    static Stretch of(UnitStream unit, int from, int to) {
      List<Double> meanRate = new ArrayList<>();
      double gyroVariance = 0;
      double accelVariance = 0;
      double accelSquare = 0;
      for (int axis = 0; axis < 3; axis++) {
        double[] rate = meanAndVariance(unit.gyroColumnRadPerS(axis), from, to);
        double[] accel = meanAndVariance(unit.accelColumnMps2(axis), from, to);
        meanRate.add(rate[0]);
        gyroVariance += rate[1];
        accelVariance += accel[1];
        accelSquare += accel[0] * accel[0];
      }
      return new Stretch(
          meanRate, Math.sqrt(gyroVariance), Math.sqrt(accelVariance), Math.sqrt(accelSquare));
    }

    /** False for a stretch with a missing value: no comparison with NaN holds. */
    boolean isStill() {
      double turn = Math.sqrt(meanRate.stream().mapToDouble(r -> r * r).sum());
      return gyroSpreadRadPerS < STILL_RAD_PER_S
          && accelSpreadMps2 < STILL_MPS2
          && turn < STEADY_TURN_RAD_PER_S;
    }
  }

  private static double[] meanAndVariance(double[] values, int from, int to) {
    double first = values[from]; // near the mean, so that the squares are small
    double sum = 0;
    double squares = 0;
    for (int i = from; i < to; i++) {
      double away = values[i] - first;
      sum += away;
      squares += away * away;
    }
    int n = to - from;
    return new double[] {first + sum / n, Math.max(0, squares - sum * sum / n) / (n - 1)};
  }
}
