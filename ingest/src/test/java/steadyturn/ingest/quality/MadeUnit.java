package steadyturn.ingest.quality;

import java.util.Arrays;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * A seeded unit for the tests: still for two seconds, then a burst of movement every ten seconds.
 * Faults are planted by changing the columns before {@link #stream()}.
 */
final class MadeUnit {

  static final long SEED = 20260401;

  final UnitFacts facts;
  double[] timeS;
  double[][] accel;
  double[][] gyro;

  private MadeUnit(UnitFacts facts, int n) {
    this.facts = facts;
    timeS = new double[n];
    accel = new double[3][n];
    gyro = new double[3][n];
  }

  /** A good unit; bursts of half a second peak at peakRadPerS. */
  static MadeUnit good(BodyPoint point, double rateHz, double lengthS, double peakRadPerS) {
    return of(
        new UnitFacts(point, "T1", rateHz, 16 * 9.80665, Math.toRadians(2000), false),
        lengthS,
        peakRadPerS);
  }

  static MadeUnit of(UnitFacts facts, double lengthS, double peakRadPerS) {
    Random random = new Random(SEED + facts.point().trackedPoint().length());
    int n = (int) (lengthS * facts.nominalRateHz());
    MadeUnit unit = new MadeUnit(facts, n);
    for (int i = 0; i < n; i++) {
      double t = i / facts.nominalRateHz();
      unit.timeS[i] = t;
      double inBurst = (t % 10) - 4;
      double burst = inBurst > 0 && inBurst < 0.5 ? Math.sin(Math.PI * inBurst / 0.5) : 0;
      double[] direction = {0.48, 0.6, 0.64};
      for (int axis = 0; axis < 3; axis++) {
        unit.gyro[axis][i] =
            peakRadPerS * burst * direction[axis]
                + Math.toRadians(0.3 + 0.1 * random.nextGaussian());
        unit.accel[axis][i] =
            (axis == 2 ? 9.80665 : 0)
                + 3 * peakRadPerS * burst * direction[axis]
                + 0.03 * random.nextGaussian();
      }
    }
    return unit;
  }

  UnitStream stream() {
    return new UnitStream(facts, timeS, accel, gyro);
  }

  /** Leaves out the samples that the rule names. */
  MadeUnit without(IntPredicate isLost) {
    int[] kept = IntStream.range(0, timeS.length).filter(isLost.negate()).toArray();
    timeS = pick(timeS, kept);
    for (int axis = 0; axis < 3; axis++) {
      accel[axis] = pick(accel[axis], kept);
      gyro[axis] = pick(gyro[axis], kept);
    }
    return this;
  }

  private static double[] pick(double[] values, int[] kept) {
    return Arrays.stream(kept).mapToDouble(i -> values[i]).toArray();
  }

  /** Cuts every value of the columns to the range. */
  static void clip(double[][] columns, double range) {
    for (double[] column : columns) {
      for (int i = 0; i < column.length; i++) {
        column[i] = Math.max(-range, Math.min(range, column[i]));
      }
    }
  }
}
