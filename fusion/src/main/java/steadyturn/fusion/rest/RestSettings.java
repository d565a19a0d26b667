package steadyturn.fusion.rest;

/**
 * How still is still. A person sways, so both limits leave room for it.
 *
 * @param windowS length of the sliding window in which stillness is judged, s
 * @param rateRmsRadPerS largest RMS of the rate about the bias inside a window, rad/s
 * @param accelSdMps2 largest standard deviation of the acceleration inside a window, m/s^2
 * @param minimumS shortest stretch that counts, s
 * @param longestS longest stretch used, s
 */
public record RestSettings(
    double windowS, double rateRmsRadPerS, double accelSdMps2, double minimumS, double longestS) {

  /**
   * Still address: rate under 3 deg/s for at least 0.7 s; accelerations above 0.6 m/s^2 are no
   * sway.
   */
  public static RestSettings address() {
    return new RestSettings(0.15, Math.toRadians(3), 0.6, 0.7, 2.5);
  }

  /**
   * Held finish: in 0.15 s the rate under 9 deg/s and the acceleration steady within 0.6 m/s^2, for
   * 0.25 s.
   */
  public static RestSettings finish() {
    return new RestSettings(0.15, Math.toRadians(9), 0.6, 0.25, 1.5);
  }

  /** The same limits for a stretch of another shortest length. */
  public RestSettings atLeast(double shortestS) {
    return new RestSettings(windowS, rateRmsRadPerS, accelSdMps2, shortestS, longestS);
  }
}
