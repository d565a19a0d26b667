package steadyturn.fusion.wear.wrist;

import steadyturn.fusion.attitude.AttitudeTrack;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;

/**
 * What a unit's accelerometer bias did to its long axis in the neutral pose. The same bias tilts
 * the level at address, where the arm hangs nearly as it did in the pose: there the two take each
 * other away, and only turned arms show them.
 *
 * @param byTilt turn of the mounting, segment axes, by each of the track's two tilt parameters
 * @param ownSdRad what else is not known of the long axis, rad (1 SD)
 */
record PosedAxis(Vector3[] byTilt, double ownSdRad) {

  /**
   * Splits what is not known of a long axis.
   *
   * @param sharedSdRad how the arm hung in the pose of both units, rad; 0 where there was none
   * @param addressS an instant at address, s
   */
  static PosedAxis of(UnitMount mount, double sharedSdRad, AttitudeTrack track, double addressS) {
    double all = mount.longAxisSdRad() * mount.longAxisSdRad();
    if (sharedSdRad == 0) {
      return new PosedAxis(new Vector3[] {Vector3.ZERO, Vector3.ZERO}, mount.longAxisSdRad());
    }
    int k = 0;
    while (k < track.size() - 1 && track.timeS(k) < addressS) {
      k++;
    }
    Quaternion qLevelSegment = track.qLevelUnit(k).times(mount.qUnitSegment());
    double[] one = new double[track.parameters() + 1];
    one[1] = 1;
    Vector3[] tilts = {track.turnRad(k, one, 1), track.turnRad(k, one, 0)};
    Vector3[] byTilt = new Vector3[2];
    for (int i = 0; i < 2; i++) {
      Vector3 tilt = new Vector3(tilts[i].x(), tilts[i].y(), 0);
      // a bias b (in g) tilts the level by z x b and the axis of the pose by x x b
      Vector3 bias = tilt.cross(Vector3.Z);
      byTilt[i] = Vector3.X.cross(qLevelSegment.conjugate().rotate(bias));
    }
    // the part of the bias along the vertical at address shows in no tilt: it stays with the axis
    double upright = qLevelSegment.rotate(Vector3.X).z();
    double tiltRad = tilts[0].x() * upright;
    double own = all - sharedSdRad * sharedSdRad - tiltRad * tiltRad;
    return new PosedAxis(byTilt, Math.sqrt(Math.max(0, own)));
  }

  /** Turn of the mounting by the track's parameters, which begin at a place of all. */
  Vector3 turn(double[] z, int offset) {
    return byTilt[0].times(z[offset]).plus(byTilt[1].times(z[offset + 1]));
  }

  /** Adds the derivative of a turn of the mounting along a direction by those parameters. */
  void addTo(double[] row, int offset, Vector3 direction) {
    row[offset] += byTilt[0].dot(direction);
    row[offset + 1] += byTilt[1].dot(direction);
  }
}
