package steadyturn.ingest.quality;

import steadyturn.ingest.sample.StandardGravity;

/**
 * Where a figure begins to matter. All are our choice; the reasons stand beside the defaults.
 *
 * @param shortestS a stream shorter than this cannot hold a swing with its rest, s
 * @param slowRateHz below this the intervals widen
 * @param slowestRateHz below this a swing cannot be followed
 * @param rateOffPct effective against stated rate, percent
 * @param lostWiderPct lost samples that widen the intervals, percent
 * @param lostTooManyPct lost samples that make a stream useless, percent
 * @param gapS a longer gap is worth a sentence, s
 * @param saturatedTooManyPct rate samples at the end of the range that make a stream useless
 * @param narrowRadPerS a range of rates below this ends within every full swing
 * @param narrowMps2 the same of accelerations
 * @param shockS an acceleration at the end of the range for no longer than this is an impact, s
 * @param gyroNoiseRadPerS rest noise of the rates that widens the intervals
 * @param accelNoiseMps2 rest noise of the accelerations that widens the intervals
 * @param gyroBiasRadPerS bias that widens the intervals
 * @param gravityWiderPct size of the specific force at rest away from 9.81 m/s^2, percent
 * @param gravityTooFarPct the same, where the unit, an axis or the calibration must be wrong
 */
public record QualityLimits(
    double shortestS,
    double slowRateHz,
    double slowestRateHz,
    double rateOffPct,
    double lostWiderPct,
    double lostTooManyPct,
    double gapS,
    double saturatedTooManyPct,
    double narrowRadPerS,
    double narrowMps2,
    double shockS,
    double gyroNoiseRadPerS,
    double accelNoiseMps2,
    double gyroBiasRadPerS,
    double gravityWiderPct,
    double gravityTooFarPct) {

  /**
   * Our choices. 2 s: one second of address and one swing. 95 and 45 Hz: units set to 100 and 50 Hz
   * run up to 5 % slow. 1 % lost: an impact lasts 10-20 ms. 0.1 s gap: half a downswing. 10 %
   * saturated: no swing is left whole; what less costs, each swing pays for. 300 deg/s, 3 g: even a
   * pelvis turns and is shaken by more, and the settings below are 250 deg/s and 2 g. 30 ms: an
   * impact rings 10-20 ms. 2 deg/s and 0.4 m/s^2: a tenfold of common small units, and below the
   * rest gate, so that a noisy unit still finds its rests. 5 deg/s bias: more than the 3 deg/s a
   * raw unit shows. 3 %: bias (27 mg) and scale (0.6 %) of a raw unit. 8 %: three spreads of that;
   * families of poor units reach 5.2 %.
   */
  public static QualityLimits defaults() {
    return new QualityLimits(
        2,
        95,
        45,
        3,
        1,
        10,
        0.1,
        10,
        Math.toRadians(300),
        3 * StandardGravity.MPS2,
        0.03,
        Math.toRadians(2),
        0.4,
        Math.toRadians(5),
        3,
        8);
  }
}
