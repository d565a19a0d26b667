package steadyturn.fusion.filter;

/**
 * When a unit is taken to be at rest, and how well its mean rate is then its bias. Rest begins when
 * rate and acceleration have kept close to their own running means for {@code holdS}.
 *
 * @param smoothS time constant of the running means, s
 * @param gyroRadPerS largest distance of the rate from its running mean, rad/s
 * @param accelMps2 the same for the acceleration, m/s^2
 * @param largestRateRadPerS largest size of the running mean after the bias is taken off, rad/s
 * @param holdS how long all of that must hold, s
 * @param velocitySigmaMps one sigma of the unit's velocity at rest, m/s
 * @param rateSigmaRadPerSqrtS one sigma of the mean rate over one second at rest, rad/s
 */
public record RestDetectorSettings(
    double smoothS,
    double gyroRadPerS,
    double accelMps2,
    double largestRateRadPerS,
    double holdS,
    double velocitySigmaMps,
    double rateSigmaRadPerSqrtS) {

  public RestDetectorSettings {
    Setting.sizes(
        "smoothing s, thresholds rad/s and m/s^2, largest rate rad/s",
        smoothS,
        gyroRadPerS,
        accelMps2,
        largestRateRadPerS);
    Setting.atLeast0("hold, s,", holdS);
    Setting.sizes("sigmas, m/s and rad/s,", velocitySigmaMps, rateSigmaRadPerSqrtS);
  }

  /**
   * Units laid down or held still between movements. Our choice: thresholds an order above the
   * noise of the units of 2020, an order below slow movement.
   */
  public static RestDetectorSettings laidDown() {
    return new RestDetectorSettings(
        0.5, Math.toRadians(2), 0.5, Math.toRadians(2), 0.7, 0.01, Math.toRadians(0.1));
  }

  /**
   * Units on a person who stands: sways slowly and breathes, so thresholds are wider, and the mean
   * rate is trusted less because swaying (about 0.5 deg/s, over a second or so) is not bias.
   */
  public static RestDetectorSettings worn() {
    return new RestDetectorSettings(
        0.5, Math.toRadians(4), 0.7, Math.toRadians(4), 0.7, 0.015, Math.toRadians(0.5));
  }
}
