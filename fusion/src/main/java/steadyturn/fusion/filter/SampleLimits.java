package steadyturn.fusion.filter;

import steadyturn.ingest.sample.UnitFacts;

/**
 * What a unit can show, and how far a lost or clipped rate is bridged. All of it holds for any
 * sample rate.
 *
 * @param accelFullScaleMps2 largest acceleration the unit can show, m/s^2; may be infinite
 * @param gyroFullScaleRadPerS largest rate the unit can show, rad/s; may be infinite
 * @param bridgeS longest loss over which the last rate is held, s; beyond it the unit is taken to
 *     stand, and the sigma grows
 * @param angularAccelRadPerS2 usual change of rate in a loss, rad/s^2: sets how fast sigma grows
 */
public record SampleLimits(
    double accelFullScaleMps2,
    double gyroFullScaleRadPerS,
    double bridgeS,
    double angularAccelRadPerS2) {

  /** Values from 99.9 % of the full scale on count as clipped. */
  private static final double CLIPPED_FROM = 0.999;

  public SampleLimits {
    Setting.above0("full scales, m/s^2 and rad/s,", accelFullScaleMps2, gyroFullScaleRadPerS);
    Setting.atLeast0("bridge s and angular acceleration rad/s^2", bridgeS, angularAccelRadPerS2);
  }

  /** Nothing is clipped; 0.1 s bridged; 50 rad/s^2 (our choice: brisk arm movement). */
  public static SampleLimits unlimited() {
    return new SampleLimits(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, 0.1, 50);
  }

  /** The limits that the unit states, else none. */
  public static SampleLimits of(UnitFacts facts) {
    SampleLimits plain = unlimited();
    return new SampleLimits(
        facts.accelFullScaleMps2(),
        facts.gyroFullScaleRadPerS(),
        plain.bridgeS,
        plain.angularAccelRadPerS2);
  }

  boolean accelClipped(double x, double y, double z) {
    return reaches(CLIPPED_FROM * accelFullScaleMps2, x, y, z);
  }

  boolean gyroClipped(double x, double y, double z) {
    return reaches(CLIPPED_FROM * gyroFullScaleRadPerS, x, y, z);
  }

  private static boolean reaches(double limit, double x, double y, double z) {
    return Math.abs(x) >= limit || Math.abs(y) >= limit || Math.abs(z) >= limit;
  }
}
