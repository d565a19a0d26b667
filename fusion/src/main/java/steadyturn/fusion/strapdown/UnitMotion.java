package steadyturn.fusion.strapdown;

import java.util.List;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * The motion of one unit over one swing, in its level frame: z up, heading and place zero at the
 * first sample (the unit's x axis, or its y axis where x is within 30 deg of the vertical, points
 * along the level frame's own heading zero). Every sample k carries its sensitivity to the
 * estimated parameters, so that the spread of anything computed from it follows by covariance.
 */
public interface UnitMotion {

  /** Number of samples. */
  int size();

  /** Instant of sample k, s, on the recording's common axis. */
  double timeS(int k);

  /** Attitude of the unit at sample k. */
  Quaternion qLevelUnit(int k);

  /** Place of the unit at sample k since the first sample, m. */
  Vector3 positionM(int k);

  /** Number P of estimated parameters. */
  default int parameters() {
    return covariance().length;
  }

  /** Covariance of the parameters, P x P, row by row. */
  double[][] covariance();

  /**
   * Derivative of the state of sample k by the parameters: rows 0..2 small rotation of the unit in
   * the level frame (rad), 3..5 velocity (m/s), 6..8 place (m); P columns.
   */
  double[][] sensitivity(int k);

  /** Where samples are missing in between, and what that may cost; nowhere unless said. */
  default List<Bridge> bridges() {
    return List.of();
  }
}
