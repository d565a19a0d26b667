package steadyturn.ingest.shock;

import java.util.ArrayList;
import java.util.List;
import steadyturn.ingest.sample.Averages;
import steadyturn.ingest.sample.UnitStream;

/**
 * Finds the onsets of shocks in one unit's acceleration. What is looked at is the second difference
 * over steps of some 2 ms (one sample where they come slower): a swing, however fast, changes its
 * acceleration smoothly, a shock does not. The ball's impact gives more than 8 g at forearm and
 * hand and a fraction of one g at the pelvis; a tap of the club or a knock of the units lies
 * between. A shock that only one unit feels finds no partner and does no harm.
 */
public final class ShockFinder {

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
   * about half its period, a smaller surprise is looked for that stands out from the calm, s.
   */
  private static final double NEAR_ZERO_S = 0.0055;

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

  public static List<Shock> find(UnitStream unit) {
    return unit.size() < 20 ? List.of() : new ShockFinder(unit).all();
  }

  private List<Shock> all() {
    List<Shock> shocks = new ArrayList<>();
    int ring = samples(RING_S);
    int i = 2 * lag;
    while (i < unit.size()) {
      double changeMps2 = change(i);
      double leastMps2 = changeMps2 > LEAST_MPS2 ? threshold(i) : Double.POSITIVE_INFINITY;
      if (changeMps2 > leastMps2) {
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
    return Math.max(LEAST_MPS2, STANDS_OUT * Averages.median(usual));
  }

  /** The onset lies between the first sample that shows the shock and the one before. */
  private Shock shock(int largest, double clarity) {
    int earliest = Math.max(2 * lag, largest - samples(RISE_S));
    double size = change(largest);
    int clear = largest;
    for (int i = largest; i > earliest; i--) {
      clear = change(i) > Math.max(size / clarity, ONSET_PART * size) ? i : clear;
    }
    int first = firstSurprise(clear, Math.max(earliest, clear - (int) (NEAR_ZERO_S / periodS) - 1));
    double onsetS = 0.5 * (unit.timeS(first) + unit.timeS(first - 1));
    return new Shock(onsetS, size, clarity);
  }

  /** The first sample after earliest that the calm before did not announce; clear if none is. */
  private int firstSurprise(int clear, int earliest) {
    double calm = 0;
    for (int i = Math.max(3 * lag, earliest - samples(CALM_S)); i <= earliest; i++) {
      calm = Math.max(calm, surprise(i));
    }
    int first = clear;
    for (int i = clear; i > earliest; i--) {
      first = surprise(i) > ABOVE_CALM * calm ? i : first;
    }
    return first;
  }

  /** How far sample i lies off the parabola through the three steps before it; 0 across a gap. */
  private double surprise(int i) {
    if (i < 3 * lag || isGap(i, 3)) {
      return 0;
    }
    double sum = 0;
    for (int axis = 0; axis < 3; axis++) {
      double off =
          unit.accelMps2(axis, i)
              - 3 * unit.accelMps2(axis, i - lag)
              + 3 * unit.accelMps2(axis, i - 2 * lag)
              - unit.accelMps2(axis, i - 3 * lag);
      sum += off * off;
    }
    return Double.isNaN(sum) ? 0 : Math.sqrt(sum);
  }

  private boolean isGap(int i, int steps) {
    return unit.timeS(i) - unit.timeS(i - steps * lag) > (steps * lag + 0.5) * periodS;
  }

  /** Size of the second difference that ends at sample i; 0 across a gap. */
  private double change(int i) {
    double x = bend(unit.accelColumnMps2(0), i);
    double y = bend(unit.accelColumnMps2(1), i);
    double z = bend(unit.accelColumnMps2(2), i);
    double square = x * x + y * y + z * z;
    return Double.isNaN(square) || isGap(i, 2) ? 0 : Math.sqrt(square);
  }

  private double bend(double[] column, int i) {
    return column[i] - 2 * column[i - lag] + column[i - 2 * lag];
  }
}
