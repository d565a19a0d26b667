package steadyturn.analysis.lab;

import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.analysis.lab.body.BodyErrors;
import steadyturn.analysis.lab.body.BodySizes;
import steadyturn.analysis.lab.family.Pelvis;
import steadyturn.fusion.rotation.Vector3;

/**
 * One player's pelvis: sizes, standing tilt, and mid-hip from the unit in anatomical pelvis axes,
 * by the regression in {@link BodySizes} and a spread about it.
 */
record DrawnPelvis(BodySizes sizes, double standingTiltRad, Vector3 midHipFromUnitM) {

  private static final double MEAN_TILT_DEG = 10;

  static DrawnPelvis draw(BodyErrors errors, RandomGenerator random) {
    double widthMm = Math.rint(240 + 14 * clipped(random));
    double depthMm = Math.rint(150 + 12 * clipped(random));
    double statureMm = Math.rint(1760 + 75 * clipped(random));
    double tiltDeg = MEAN_TILT_DEG + errors.standingTiltDeg() * random.nextGaussian();
    BodySizes sizes = BodySizes.of(widthMm, depthMm, statureMm);
    double forward = sizes.midHipAheadMm() + errors.leverForwardMm() * random.nextGaussian();
    double left = errors.leverSideMm() * random.nextGaussian();
    double up = -sizes.midHipBelowMm() + errors.leverForwardMm() * random.nextGaussian();
    return new DrawnPelvis(
        sizes, Math.toRadians(tiltDeg), new Vector3(forward / 1000, left / 1000, up / 1000));
  }

  /** The pelvis of a family's player. */
  static DrawnPelvis of(Pelvis.Drawn drawn) {
    BodySizes sizes =
        BodySizes.of(drawn.shownWidthMm(), drawn.shownDepthMm(), Math.rint(drawn.statureMm()));
    return new DrawnPelvis(sizes, drawn.tiltRad(), drawn.midHipFromUnitM());
  }

  private static double clipped(RandomGenerator random) {
    return Math.max(-2.5, Math.min(2.5, random.nextGaussian()));
  }
}
