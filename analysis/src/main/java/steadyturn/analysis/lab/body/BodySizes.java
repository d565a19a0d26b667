package steadyturn.analysis.lab.body;

/**
 * Lengths of a simulated player. Hip-joint centres by the regression of Harrington et al. 2007, J
 * Biomech 40:595-602, in mm from the middle of the front hip-bone points: 0.24 depth + 9.9 behind,
 * 0.30 width + 10.9 below, 0.33 width + 7.3 to each side. These are the lab's own constants: what
 * it judges keeps its own, and a slip in either shows.
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

  /** Mid-hip ahead of a unit on the back points, under 15 mm of skin and case (our assumption). */
  public double midHipAheadMm() {
    return 0.76 * pelvisDepthMm - 9.9 + 15;
  }

  /** Mid-hip below the front hip-bone points, at whose height the unit sits. */
  public double midHipBelowMm() {
    return 0.30 * pelvisWidthMm + 10.9;
  }

  /** Half the distance between the hip-joint centres. */
  public double hipHalfDistanceMm() {
    return 0.33 * pelvisWidthMm + 7.3;
  }
}
