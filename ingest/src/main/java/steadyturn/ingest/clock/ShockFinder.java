package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import steadyturn.ingest.sample.UnitStream;

/**
 * Finds the onsets of shocks in one unit's acceleration. What is looked at is the second difference
 * over steps of some 2 ms (one sample where they come slower): a swing, however fast, changes its
 * acceleration smoothly, a shock does not. The ball's impact gives more than 8 g at forearm and
 * hand and a fraction of one g at the pelvis; a tap of the club or a knock of the units lies
 * between. A shock that only one unit feels finds no partner and does no harm.
 */
final class ShockFinder {

  private static final double STEP_S = 0.002;

  /** The least change that counts: above the noise of common small units. */
  private static final double LEAST_MPS2 = 2;

  /** How many times larger than the usual change nearby. */
  private static final double STANDS_OUT = 6;

  private static final double NEARBY_S = 0.15;

  /** One shock rings; what follows within this is part of it, s. */
  private static final double RING_S = 0.1;

  /** The onset is looked for so long before the largest change, s. */
  private static final double RISE_S = 0.012;

  /** The onset is where the change first reaches this part of the largest. */
  private static final double ONSET_PART = 0.1;

  /**
   * A ring passes near its zero now and then just when its first sample is taken. So long before,
   * less than half its period, a smaller change is looked for that stands out from the calm, s.
   */
  private static final double NEAR_ZERO_S = 0.003;

  private static final double ABOVE_CALM = 3;
  private static final double CALM_S = 0.04;

  private final UnitStream unit;
  private final double periodS;
  private final int lag;

  private ShockFinder(UnitStream unit) {
    this.unit = unit;
    periodS = (unit.timeS(unit.size() - 1) - unit.timeS(0)) / (unit.size() - 1);
    lag = Math.max(1, (int) Math.round(STEP_S / periodS));
  }

  static List<Shock> find(UnitStream unit) {
    return unit.size() < 20 ? List.of() : new ShockFinder(unit).all();
  }

  private List<Shock> all() {
    List<Shock> shocks = new ArrayList<>();
    int ring = samples(RING_S);
    int i = 2 * lag;
    while (i < unit.size()) {
      double leastMps2 = change(i) > LEAST_MPS2 ? threshold(i) : Double.POSITIVE_INFINITY;
      if (change(i) > leastMps2) {
        int end = Math.min(unit.size(), i + ring);
        int largest = largest(i, end);
        shocks.add(shock(largest, change(largest) / leastMps2));
        i = end;
      } else {
        i++;
      }
    }
    return shocks;
  }

  private int samples(double lengthS) {
    return Math.max(3, (int) (lengthS / periodS));
  }

  private int largest(int from, int end) {
    int largest = from;
    for (int i = from; i < end; i++) {
      largest = change(i) > change(largest) ? i : largest;
    }
    return largest;
  }

  /** What a change must exceed here: six times the median of those around. */
  private double threshold(int i) {
    int reach = samples(NEARBY_S);
    int from = Math.max(2 * lag, i - reach);
    double[] usual = new double[Math.min(unit.size(), i + reach) - from];
    for (int k = 0; k < usual.length; k++) {
      usual[k] = change(from + k);
    }
    Arrays.sort(usual);
    return Math.max(LEAST_MPS2, STANDS_OUT * usual[usual.length / 2]);
  }

  /** The onset lies between the first sample that shows the shock and the one before. */
  private Shock shock(int largest, double clarity) {
    int earliest = Math.max(2 * lag, largest - samples(RISE_S));
    double size = change(largest);
    int clear = firstAbove(Math.max(size / clarity, ONSET_PART * size), earliest, largest);
    int nearZero = (int) (NEAR_ZERO_S / periodS);
    int first =
        firstAbove(ABOVE_CALM * calm(earliest), Math.max(earliest, clear - nearZero - 1), clear);
    double onsetS = 0.5 * (unit.timeS(first) + unit.timeS(first - 1));
    return new Shock(onsetS, size, clarity);
  }

  /** The first sample after earliest and up to last whose change is larger; last where none is. */
  private int firstAbove(double limitMps2, int earliest, int last) {
    int first = last;
    for (int i = last; i > earliest; i--) {
      first = change(i) > limitMps2 ? i : first;
    }
    return first;
  }

  /** The largest change in the stretch before a sample. */
  private double calm(int before) {
    double most = 0;
    for (int i = Math.max(2 * lag, before - samples(CALM_S)); i <= before; i++) {
      most = Math.max(most, change(i));
    }
    return most;
  }

  /** Size of the second difference that ends at sample i; 0 across a gap. */
  private double change(int i) {
    double spanS = unit.timeS(i) - unit.timeS(i - 2 * lag);
    if (spanS > (2 * lag + 0.5) * periodS) {
      return 0;
    }
    double sum = 0;
    for (int axis = 0; axis < 3; axis++) {
      double bend =
          unit.accelMps2(axis, i)
              - 2 * unit.accelMps2(axis, i - lag)
              + unit.accelMps2(axis, i - 2 * lag);
      sum += bend * bend;
    }
    return Double.isNaN(sum) ? 0 : Math.sqrt(sum);
  }
}
