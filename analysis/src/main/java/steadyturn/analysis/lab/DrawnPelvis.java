package steadyturn.analysis.lab;

import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.analysis.lab.body.BodyErrors;
import steadyturn.analysis.lab.body.BodySizes;
import steadyturn.fusion.rotation.Vector3;

/**
 * One player's pelvis: sizes, standing tilt, and mid-hip from the unit in anatomical pelvis axes.
 * The regression is that of Harrington et al. 2007, J Biomech 40:595-602 (hip centre 0.24 PD + 9.9
 * behind and 0.30 PW + 10.9 below the middle of the front points); the unit lies 15 mm of skin and
 * case behind the back points (our assumption).
 */
record DrawnPelvis(BodySizes sizes, double standingTiltRad, Vector3 midHipFromUnitM) {

  private static final double MEAN_TILT_DEG = 10;

  static DrawnPelvis draw(BodyErrors errors, RandomGenerator random) {
    double widthMm = Math.rint(240 + 14 * clipped(random));
    double depthMm = Math.rint(150 + 12 * clipped(random));
    double statureMm = Math.rint(1760 + 75 * clipped(random));
    double tiltDeg = MEAN_TILT_DEG + errors.standingTiltDeg() * random.nextGaussian();
    double forward = 0.76 * depthMm - 9.9 + 15 + errors.leverForwardMm() * random.nextGaussian();
    double left = errors.leverSideMm() * random.nextGaussian();
    double up = -(0.30 * widthMm + 10.9) + errors.leverForwardMm() * random.nextGaussian();
    return new DrawnPelvis(
        BodySizes.of(widthMm, depthMm, statureMm),
        Math.toRadians(tiltDeg),
        new Vector3(forward / 1000, left / 1000, up / 1000));
  }

  private static double clipped(RandomGenerator random) {
    return Math.max(-2.5, Math.min(2.5, random.nextGaussian()));
  }
}
