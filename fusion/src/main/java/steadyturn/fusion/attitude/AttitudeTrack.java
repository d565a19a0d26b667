package steadyturn.fusion.attitude;

import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * Attitude of one unit over one swing in a level frame (z up, own heading zero), with what is not
 * known of it: every sample may be turned by a few parameters of unit variance.
 */
public interface AttitudeTrack {

  /** Number of samples. */
  int size();

  /** Instant of sample k, s. */
  double timeS(int k);

  /** Attitude of the unit at sample k. */
  Quaternion qLevelUnit(int k);

  /** Whether the unit showed what it did at an instant, or it is bridged. */
  boolean isSeen(double instantS);

  /** Rate at sample k, unit axes, rad/s. */
  Vector3 rateUnitRadPerS(int k);

  /**
   * Number P of parameters, scaled to unit variance and independent of each other beforehand; the
   * first two are the tilt by the accelerometer at the level moment, the same for all samples.
   */
  int parameters();

  /** Small rotation of sample k in the level frame by the parameters z[from..from+P-1], rad. */
  Vector3 turnRad(int k, double[] z, int from);

  /** Puts the derivative of that rotation along a direction into row[from..from+P-1]. */
  void putTurn(int k, Vector3 alongLevel, double[] row, int from);
}
