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

  private Attitudes(int n) {
    w = new double[n];
    x = new double[n];
    y = new double[n];
    z = new double[n];
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
    Attitudes out = new Attitudes(timeS.length);
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
    Attitudes out = new Attitudes(size());
    for (int i = 0; i < size(); i++) {
      out.w[i] = w[i];
      out.x[i] = x[i];
      out.y[i] = y[i];
      out.z[i] = z[i];
    }
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
    for (int i = 0; i < size(); i++) {
      double vx = unit[0][i];
      double vy = unit[1][i];
      double vz = unit[2][i];
      double tx = 2 * (y[i] * vz - z[i] * vy);
      double ty = 2 * (z[i] * vx - x[i] * vz);
      double tz = 2 * (x[i] * vy - y[i] * vx);
      level[0][i] = vx + w[i] * tx + y[i] * tz - z[i] * ty;
      level[1][i] = vy + w[i] * ty + z[i] * tx - x[i] * tz;
      level[2][i] = vz + w[i] * tz + x[i] * ty - y[i] * tx;
    }
  }

  /** What columns of unit coordinates are along one direction of the level frame. */
  public double[] along(Vector3 level, double[][] unit) {
    double[] out = new double[size()];
    for (int i = 0; i < out.length; i++) {
      double vx = unit[0][i];
      double vy = unit[1][i];
      double vz = unit[2][i];
      double tx = 2 * (y[i] * vz - z[i] * vy);
      double ty = 2 * (z[i] * vx - x[i] * vz);
      double tz = 2 * (x[i] * vy - y[i] * vx);
      out[i] =
          level.x() * (vx + w[i] * tx + y[i] * tz - z[i] * ty)
              + level.y() * (vy + w[i] * ty + z[i] * tx - x[i] * tz)
              + level.z() * (vz + w[i] * tz + x[i] * ty - y[i] * tx);
    }
    return out;
  }

  /** Writes the axes of the unit in level coordinates: entry 3 * row + column of the matrix. */
  public void matrix(int i, double[] rows) {
    rows[0] = 1 - 2 * (y[i] * y[i] + z[i] * z[i]);
    rows[1] = 2 * (x[i] * y[i] - w[i] * z[i]);
    rows[2] = 2 * (x[i] * z[i] + w[i] * y[i]);
    rows[3] = 2 * (x[i] * y[i] + w[i] * z[i]);
    rows[4] = 1 - 2 * (x[i] * x[i] + z[i] * z[i]);
    rows[5] = 2 * (y[i] * z[i] - w[i] * x[i]);
    rows[6] = 2 * (x[i] * z[i] - w[i] * y[i]);
    rows[7] = 2 * (y[i] * z[i] + w[i] * x[i]);
    rows[8] = 1 - 2 * (x[i] * x[i] + y[i] * y[i]);
  }
}
