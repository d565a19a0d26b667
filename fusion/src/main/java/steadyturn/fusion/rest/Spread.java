package steadyturn.fusion.rest;

import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

/**
 * How much a unit moved inside one window: RMS of the rate about the bias, SD of the acceleration
 * vector, and how long it was not seen at a stretch, the ends counted.
 */
record Spread(int samples, double rateRmsRadPerS, double accelSdMps2, double unseenS) {

  /** What is not seen for longer need not have been still (our choice), s. */
  private static final double UNSEEN_S = 0.05;

  /** A slow unit is unseen for a few steps only. */
  private static final double UNSEEN_STEPS = 3.5;

  static Spread of(UnitStream unit, Vector3 biasRadPerS, double fromS, double toS) {
    double[] gx = unit.gyroColumnRadPerS(0);
    double[] gy = unit.gyroColumnRadPerS(1);
    double[] gz = unit.gyroColumnRadPerS(2);
    double[] ax = unit.accelColumnMps2(0);
    double[] ay = unit.accelColumnMps2(1);
    double[] az = unit.accelColumnMps2(2);
    double bx = biasRadPerS.x();
    double by = biasRadPerS.y();
    double bz = biasRadPerS.z();
    double rate2 = 0;
    double sumX = 0;
    double sumY = 0;
    double sumZ = 0;
    double square = 0;
    int n = 0;
    double lastS = fromS;
    double unseenS = 0;
    for (int i = unit.indexAt(fromS), to = unit.indexAt(toS); i < to; i++) {
      double x = gx[i] - bx;
      double y = gy[i] - by;
      double z = gz[i] - bz;
      double rateSample2 = x * x + y * y + z * z;
      double sample2 = ax[i] * ax[i] + ay[i] * ay[i] + az[i] * az[i];
      if (Double.isNaN(rateSample2 + sample2)) {
        continue;
      }
      sumX += ax[i];
      sumY += ay[i];
      sumZ += az[i];
      rate2 += rateSample2;
      square += sample2;
      n++;
      unseenS = Math.max(unseenS, unit.timeS(i) - lastS);
      lastS = unit.timeS(i);
    }
    if (n == 0) {
      return new Spread(
          0, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }
    double mean2 = (sumX * sumX + sumY * sumY + sumZ * sumZ) / ((double) n * n);
    return new Spread(
        n,
        Math.sqrt(rate2 / n),
        Math.sqrt(Math.max(0, square / n - mean2)),
        Math.max(unseenS, toS - lastS));
  }

  /** Whether enough was seen to judge stillness by. */
  boolean isSeen(UnitStream unit) {
    double stepS = 1 / unit.facts().nominalRateHz();
    return samples >= 3 && unseenS <= Math.max(UNSEEN_S, UNSEEN_STEPS * stepS);
  }
}
