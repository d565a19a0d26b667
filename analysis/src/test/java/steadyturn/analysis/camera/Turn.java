package steadyturn.analysis.camera;

/**
 * Quaternions (w, x, y, z) and vectors as plain arrays: the lab of the camera swings shares no
 * algebra with the program that it judges.
 */
final class Turn {

  static final double[] NONE = {1, 0, 0, 0};

  private Turn() {}

  static double[] times(double[] a, double[] b) {
    return new double[] {
      a[0] * b[0] - a[1] * b[1] - a[2] * b[2] - a[3] * b[3],
      a[0] * b[1] + a[1] * b[0] + a[2] * b[3] - a[3] * b[2],
      a[0] * b[2] - a[1] * b[3] + a[2] * b[0] + a[3] * b[1],
      a[0] * b[3] + a[1] * b[2] - a[2] * b[1] + a[3] * b[0]
    };
  }

  static double[] back(double[] q) {
    return new double[] {q[0], -q[1], -q[2], -q[3]};
  }

  static double[] apply(double[] q, double[] v) {
    double[] r = times(times(q, new double[] {0, v[0], v[1], v[2]}), back(q));
    return new double[] {r[1], r[2], r[3]};
  }

  /** The turn by a rotation vector, rad. */
  static double[] by(double x, double y, double z) {
    double angle = Math.sqrt(x * x + y * y + z * z);
    double s = angle < 1e-12 ? 0.5 : Math.sin(angle / 2) / angle;
    return new double[] {Math.cos(angle / 2), s * x, s * y, s * z};
  }

  /** The rotation vector of a turn, the shorter way, rad. */
  static double[] vector(double[] q) {
    double sine = Math.sqrt(q[1] * q[1] + q[2] * q[2] + q[3] * q[3]);
    double angle = 2 * Math.atan2(sine, Math.abs(q[0]));
    double s = sine < 1e-12 ? 2 : Math.signum(q[0]) * angle / sine;
    return new double[] {s * q[1], s * q[2], s * q[3]};
  }

  /** From its columns, the images of x, y, z, of which two are given. */
  static double[] ofAxes(double[] x, double[] y) {
    double[] z = {x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]};
    double[] best = NONE;
    double most = -1;
    // the largest of the four numbers first, as the others are divided by it
    double[][] four = {
      {1 + x[0] + y[1] + z[2], y[2] - z[1], z[0] - x[2], x[1] - y[0]},
      {y[2] - z[1], 1 + x[0] - y[1] - z[2], y[0] + x[1], z[0] + x[2]},
      {z[0] - x[2], y[0] + x[1], 1 - x[0] + y[1] - z[2], z[1] + y[2]},
      {x[1] - y[0], z[0] + x[2], z[1] + y[2], 1 - x[0] - y[1] + z[2]}
    };
    for (int i = 0; i < 4; i++) {
      if (four[i][i] > most) {
        most = four[i][i];
        best = four[i];
      }
    }
    return unit(best);
  }

  static double[] unit(double[] q) {
    double n = Math.sqrt(q[0] * q[0] + q[1] * q[1] + q[2] * q[2] + q[3] * q[3]);
    return new double[] {q[0] / n, q[1] / n, q[2] / n, q[3] / n};
  }
}
