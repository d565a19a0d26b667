package steadyturn.fusion.orientation;

import steadyturn.fusion.rotation.MutableQuaternion;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.TimeAxis;

/**
 * The orientation of one unit over a recording, as columns of equal length, one row a sample. The
 * columns are handed over, not copied: whoever gets one reads it and never writes it.
 *
 * @param timeS instants, s
 * @param qw qEarthUnit, scalar part; {@code qx, qy, qz} its vector part
 * @param inclinationSigmaRad one sigma of the inclination, per axis, rad
 * @param headingSigmaRad one sigma of the heading gained since the first sample, rad
 */
@SuppressWarnings("ArrayRecordComponent") // bulk columns, shared on purpose
public record OrientationTrack(
    double[] timeS,
    double[] qw,
    double[] qx,
    double[] qy,
    double[] qz,
    double[] inclinationSigmaRad,
    double[] headingSigmaRad) {

  public OrientationTrack {
    for (double[] column : new double[][] {qw, qx, qy, qz, inclinationSigmaRad, headingSigmaRad}) {
      if (column.length != timeS.length) {
        throw new IllegalArgumentException(
            column.length + " values for " + timeS.length + " instants");
      }
    }
  }

  /** An empty track for these instants, to be filled row by row. */
  static OrientationTrack forInstants(double[] timeS) {
    int n = timeS.length;
    return new OrientationTrack(
        timeS,
        new double[n],
        new double[n],
        new double[n],
        new double[n],
        new double[n],
        new double[n]);
  }

  /** Number of samples. */
  public int size() {
    return timeS.length;
  }

  /** Orientation at sample k: takes unit coordinates to earth coordinates. */
  public Quaternion qEarthUnit(int k) {
    return new Quaternion(qw[k], qx[k], qy[k], qz[k]);
  }

  /**
   * The orientation at any instant: between two samples on the shortest turn from one to the other,
   * at an even rate; before the first and after the last theirs. The track must not be empty.
   */
  public Quaternion qEarthUnitAt(double instantS) {
    int after = Math.min(size() - 1, TimeAxis.indexAt(timeS, instantS));
    if (after == 0 || timeS[after] <= instantS) {
      return qEarthUnit(after);
    }
    int before = after - 1;
    double part = (instantS - timeS[before]) / (timeS[after] - timeS[before]);
    Quaternion from = qEarthUnit(before);
    Vector3 turnRad = from.conjugate().times(qEarthUnit(after)).rotationVector();
    return from.times(Quaternion.fromRotationVector(turnRad.times(part))).normalized();
  }

  /**
   * The same track at other instants, by {@link #qEarthUnitAt}; sigmas are those of the sample
   * before.
   */
  public OrientationTrack at(double[] instantsS) {
    OrientationTrack other = forInstants(instantsS);
    MutableQuaternion q = new MutableQuaternion();
    for (int k = 0; k < instantsS.length; k++) {
      int at = TimeAxis.indexAt(timeS, instantsS[k]);
      int before = at < size() && timeS[at] == instantsS[k] ? at : Math.max(0, at - 1);
      q.set(qEarthUnitAt(instantsS[k]));
      other.set(k, q, inclinationSigmaRad[before], headingSigmaRad[before]);
    }
    return other;
  }

  void set(int k, MutableQuaternion q, double inclinationSigma, double headingSigma) {
    qw[k] = q.w();
    qx[k] = q.x();
    qy[k] = q.y();
    qz[k] = q.z();
    inclinationSigmaRad[k] = inclinationSigma;
    headingSigmaRad[k] = headingSigma;
  }

  void copyTo(int k, MutableQuaternion q) {
    q.set(qw[k], qx[k], qy[k], qz[k]);
  }
}
