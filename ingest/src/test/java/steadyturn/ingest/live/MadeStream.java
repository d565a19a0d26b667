package steadyturn.ingest.live;

import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** A stream whose every sample tells its own number, so that what is missing can be counted. */
public final class MadeStream {

  private static final double G = 9.80665;
  private static final int BASE = 200;

  private MadeStream() {}

  /** Samples 0..n-1 at a rate; numbers below eight million can be told. */
  public static UnitStream numbered(BodyPoint point, double rateHz, int samples) {
    double[] timeS = new double[samples];
    double[][] accel = new double[3][samples];
    double[][] gyro = new double[3][samples];
    for (int i = 0; i < samples; i++) {
      timeS[i] = i / rateHz;
      accel[0][i] = 0.1 * (i % BASE);
      accel[1][i] = 0.1 * (i / BASE % BASE);
      accel[2][i] = 0.1 * (i / BASE / BASE % BASE);
      gyro[0][i] = 0.01 * (i % 7);
    }
    UnitFacts facts = new UnitFacts(point, "V-7", rateHz, 16 * G, Math.toRadians(2000), false);
    return new UnitStream(facts, timeS, accel, gyro);
  }

  /** The number that sample i of a stream read back tells. */
  public static int numberOf(UnitStream unit, int i) {
    return digit(unit, 0, i) + BASE * (digit(unit, 1, i) + BASE * digit(unit, 2, i));
  }

  private static int digit(UnitStream unit, int axis, int i) {
    return (int) Math.round(unit.accelMps2(axis, i) / 0.1);
  }
}
