package steadyturn.fusion.filter;

import steadyturn.fusion.rotation.MutableQuaternion;
import steadyturn.fusion.rotation.Quaternion;

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
