package steadyturn.analysis.pelvis;

import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * From attitude and place of the pelvis in the level frame to its pose, as a pure function. The
 * angles are taken in the order turn, side tilt, tilt (rotation-obliquity-tilt, Baker 2001, Hum Mov
 * Sci 20:787-807, from memory), so that the turn is exactly the azimuth of the hip line.
 */
final class PoseMath {

  private PoseMath() {}

  /** Azimuth of the hip line (pelvis y) in the level frame, rad in (-pi, pi]. */
  static double azimuthRad(Quaternion qLevelPelvis) {
    return qLevelPelvis.azimuthOfYRad();
  }

  static double wrap(double angleRad) {
    return Math.abs(angleRad) <= Math.PI ? angleRad : Math.IEEEremainder(angleRad, 2 * Math.PI);
  }

  /**
   * Pose of one sample.
   *
   * @param h +1 right-handed, -1 left-handed
   * @param qLevelPelvis attitude now
   * @param moved place of mid-hip now minus its place at address, level axes, m
   * @param addressAzimuthRad azimuth of the hip line at address
   * @param aimRad turn of the target line against the address hip line, about z
   */
  static double[] pose(
      int h, Quaternion qLevelPelvis, Vector3 moved, double addressAzimuthRad, double aimRad) {
    Vector3 left = qLevelPelvis.rotate(Vector3.Y);
    Vector3 forward = qLevelPelvis.rotate(Vector3.X);
    Vector3 up = qLevelPelvis.rotate(Vector3.Z);
    double along = addressAzimuthRad + aimRad;
    double cos = Math.cos(along);
    double sin = Math.sin(along);
    // at address the ball lies forward (cos, sin) and the target to the lead side: h * (-sin, cos)
    return new double[] {
      h * wrap(azimuthRad(qLevelPelvis) - addressAzimuthRad),
      h * (-sin * moved.x() + cos * moved.y()),
      cos * moved.x() + sin * moved.y(),
      moved.z(),
      Math.atan2(-forward.z(), up.z()),
      Math.asin(Math.max(-1, Math.min(1, h * left.z())))
    };
  }
}
