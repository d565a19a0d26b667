package steadyturn.fusion.filter;

import steadyturn.fusion.rotation.MutableQuaternion;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * Follows the orientation of one unit, sample by sample. The earth frame has z up; its heading is
 * free: at the first sample the rotation is the shortest one that levels the unit, and from there
 * heading drifts as the gyroscope does. Implementations allocate nothing in {@link #update}; they
 * hold for one unit and one thread.
 */
public interface OrientationFilter {

  /**
   * Takes the next sample. A NaN in a triple marks it as lost: a lost rate is bridged, a lost
   * acceleration is left out. Never throws for a bad sample.
   *
   * @param gyroX rate about the unit's x axis, rad/s; likewise y and z
   * @param accelX specific force along the unit's x axis, m/s^2 (+9.81 up at rest); likewise y, z
   * @param dtS time since the sample before, s; the first sample's is ignored
   */
  void update(
      double gyroX,
      double gyroY,
      double gyroZ,
      double accelX,
      double accelY,
      double accelZ,
      double dtS);

  /** Writes the orientation after the last sample into {@code out}, without allocating. */
  void copyQEarthUnit(MutableQuaternion out);

  /** One sigma of the inclination (angle between true and shown vertical, per axis), rad. */
  double inclinationSigmaRad();

  /** One sigma of the heading gained since the start, rad. */
  double headingSigmaRad();

  /** The gyroscope bias taken off the rates, unit axes, rad/s. */
  Vector3 gyroBiasRadPerS();

  /** Whether the unit is taken to be at rest at the last sample. */
  boolean atRest();

  /** The orientation after the last sample: takes unit coordinates to earth coordinates. */
  default Quaternion qEarthUnit() {
    MutableQuaternion q = new MutableQuaternion();
    copyQEarthUnit(q);
    return q.toQuaternion();
  }
}
