package steadyturn.analysis.lab.body;

/**
 * Lengths of a simulated player.
 *
 * @param pelvisWidthMm distance between the front hip-bone points
 * @param pelvisDepthMm from their middle to the middle of the back points
 * @param armM lead shoulder to wrist
 * @param forearmUnitM lead shoulder to the forearm unit
 * @param shoulderUpM height of the lead shoulder over mid-hip
 * @param shoulderOutM lead shoulder from the spine
 */
public record BodySizes(
    double pelvisWidthMm,
    double pelvisDepthMm,
    double statureMm,
    double armM,
    double forearmUnitM,
    double shoulderUpM,
    double shoulderOutM) {

  /** Upper arm 0.186 and forearm 0.146 of stature: Drillis and Contini 1966 (from memory). */
  public static BodySizes of(double pelvisWidthMm, double pelvisDepthMm, double statureMm) {
    double armM = (0.186 + 0.146) * statureMm / 1000;
    return new BodySizes(
        pelvisWidthMm,
        pelvisDepthMm,
        statureMm,
        armM,
        armM - 0.05,
        0.30 * statureMm / 1000,
        0.11 * statureMm / 1000);
  }
}
