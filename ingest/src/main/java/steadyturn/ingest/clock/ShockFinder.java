package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import steadyturn.ingest.sample.UnitStream;

/**
 * Finds the onsets of shocks in one unit's acceleration: a change within 4 ms (one sample where
 * they come slower) that is large and stands out from its surroundings. The ball's impact gives
 * more than 8 g at forearm and hand, less at the pelvis; a knock of the units gives a few g. The
 * smaller ones count here too: a shock that only one unit feels finds no partner and does no harm.
 */
final class ShockFinder {

  private static final double STEP_S = 0.004;

  /** The least change, 1 g: a knock felt through the body. */
  private static final double LEAST_STEP_MPS2 = 9.80665;

  /** How many times larger than the usual change nearby. */
  private static final double STANDS_OUT = 6;

  private static final double NEARBY_S = 0.15;

  /** One shock rings; the next begins no sooner, s. */
  private static final double REFRACTORY_S = 0.12;

  private ShockFinder() {}

  static List<Shock> find(UnitStream unit) {
    List<Shock> shocks = new ArrayList<>();
    if (unit.size() < 20) {
      return shocks;
    }
    double periodS = (unit.timeS(unit.size() - 1) - unit.timeS(0)) / (unit.size() - 1);
    int lag = Math.max(1, (int) Math.round(STEP_S / periodS));
    double lastS = Double.NEGATIVE_INFINITY;
    for (int i = lag; i < unit.size(); i++) {
      double step = change(unit, i - lag, i);
      boolean isCandidate = step > LEAST_STEP_MPS2 && unit.timeS(i) > lastS + REFRACTORY_S;
      if (isCandidate && standsOut(unit, i, lag, step, periodS)) {
        lastS = unit.timeS(i);
        shocks.add(new Shock(onsetS(unit, i, lag), step));
      }
    }
    return shocks;
  }

  private static boolean standsOut(UnitStream unit, int i, int lag, double step, double periodS) {
    boolean isUnbroken = unit.timeS(i) - unit.timeS(i - lag) < (lag + 1) * periodS;
    if (!isUnbroken) {
      return false;
    }
    int reach = Math.max(5, (int) (NEARBY_S / periodS));
    int from = Math.max(lag, i - reach);
    int to = Math.min(unit.size(), i + reach);
    double[] usual = new double[to - from];
    for (int k = from; k < to; k++) {
      usual[k - from] = change(unit, k - lag, k);
    }
    Arrays.sort(usual);
    return step > STANDS_OUT * usual[usual.length / 2];
  }

  /**
   * Where the change from the last calm sample passes half of what it becomes, s; a straight line
   * between samples. A shock rises faster than samples come, so this is right to half a sample
   * either way.
   */
  private static double onsetS(UnitStream unit, int i, int lag) {
    int base = i - lag;
    double half = 0.5 * change(unit, base, i);
    int k = base + 1;
    while (change(unit, base, k) < half) {
      k++;
    }
    double before = change(unit, base, k - 1);
    double part = (half - before) / (change(unit, base, k) - before);
    return unit.timeS(k - 1) + part * (unit.timeS(k) - unit.timeS(k - 1));
  }

  private static double change(UnitStream unit, int a, int b) {
    double sum = 0;
    for (int axis = 0; axis < 3; axis++) {
      double step = unit.accelMps2(axis, b) - unit.accelMps2(axis, a);
      sum += step * step;
    }
    return Math.sqrt(sum);
  }
}
