package steadyturn.fusion.rotation;

/**
 * The attitudes of one body at many instants, as four columns: one {@code qLevelUnit} a sample,
 * without an object a sample. The only place where rates are summed up to turns.
 */
public final class Attitudes {

  private final double[] w;
  private final double[] x;
  private final double[] y;
  private final double[] z;

  private Attitudes(double[] w, double[] x, double[] y, double[] z) {
    this.w = w;
    this.x = x;
    this.y = y;
    this.z = z;
  }

  /**
   * Integrates a rate that changes in straight lines between the samples: trapezoid and coning
   * term, (w0 + w1) dt / 2 + w0 x w1 dt^2 / 12 (Savage 1998, J Guidance Control Dynamics 21:19-28,
   * from memory).
   *
   * @param qLevelUnit attitude at the first sample
   * @param timeS instants, growing, s
   * @param rateRadPerS three columns, unit axes, without a lost value, rad/s
   */
  public static Attitudes ofRates(Quaternion qLevelUnit, double[] timeS, double[][] rateRadPerS) {
    int n = timeS.length;
    Attitudes out = new Attitudes(new double[n], new double[n], new double[n], new double[n]);
    MutableQuaternion q = new MutableQuaternion().set(qLevelUnit);
    out.put(0, q);
    double[] rx = rateRadPerS[0];
    double[] ry = rateRadPerS[1];
    double[] rz = rateRadPerS[2];
    for (int i = 1; i < timeS.length; i++) {
      double dt = timeS[i] - timeS[i - 1];
      double half = dt / 2;
      double coning = dt * dt / 12;
      q.turnRight(
          half * (rx[i - 1] + rx[i]) + coning * (ry[i - 1] * rz[i] - rz[i - 1] * ry[i]),
          half * (ry[i - 1] + ry[i]) + coning * (rz[i - 1] * rx[i] - rx[i - 1] * rz[i]),
          half * (rz[i - 1] + rz[i]) + coning * (rx[i - 1] * ry[i] - ry[i - 1] * rx[i]));
      out.put(i, q.normalize());
    }
    return out;
  }

  private void put(int i, MutableQuaternion q) {
    w[i] = q.w();
    x[i] = q.x();
    y[i] = q.y();
    z[i] = q.z();
  }

  public int size() {
    return w.length;
  }

  /** The attitude of sample i. */
  public Quaternion at(int i) {
    return new Quaternion(w[i], x[i], y[i], z[i]);
  }

  /** The same motion in another frame: sample i becomes {@code qOtherLevel * qLevelUnit}. */
  public Attitudes seenFrom(Quaternion qOtherLevel) {
    Attitudes out = new Attitudes(w.clone(), x.clone(), y.clone(), z.clone());
    out.turnFrom(0, qOtherLevel);
    return out;
  }

  /** Turns sample {@code from} and all that follow about axes of the left frame, in place. */
  public void turnFrom(int from, Quaternion qTurn) {
    MutableQuaternion q = new MutableQuaternion();
    for (int i = from; i < size(); i++) {
      q.set(w[i], x[i], y[i], z[i]);
      q.multiplyLeft(qTurn.w(), qTurn.x(), qTurn.y(), qTurn.z());
      put(i, q.normalize());
    }
  }

  /** Turns columns of unit coordinates into columns of level coordinates. */
  public void toLevel(double[][] unit, double[][] level) {
    double[] unitX = unit[0];
    double[] unitY = unit[1];
    double[] unitZ = unit[2];
    double[] levelX = level[0];
    double[] levelY = level[1];
    double[] levelZ = level[2];
    for (int i = 0; i < w.length; i++) {
      double qw = w[i];
      double qx = x[i];
      double qy = y[i];
      double qz = z[i];
      double vx = unitX[i];
      double vy = unitY[i];
      double vz = unitZ[i];
      double tx = 2 * (qy * vz - qz * vy);
      double ty = 2 * (qz * vx - qx * vz);
      double tz = 2 * (qx * vy - qy * vx);
      levelX[i] = vx + qw * tx + qy * tz - qz * ty;
      levelY[i] = vy + qw * ty + qz * tx - qx * tz;
      levelZ[i] = vz + qw * tz + qx * ty - qy * tx;
    }
  }

  /** Writes the axes of the unit in level coordinates: entry 3 * row + column of the matrix. */
  public void matrix(int i, double[] rows) {
    new MutableQuaternion().set(w[i], x[i], y[i], z[i]).matrix(rows);
  }
}
