package steadyturn.ingest.columnmap;

/**
 * The axes of a window's first instant, carried along in the sensor's own axes while it turns. The
 * one turn this room needs (Rodrigues' formula on three vectors); everything else about rotations
 * is at home further down the stream.
 */
final class CarriedAxes {

  private final double[][] axes = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};

  /** Adds a vector in sensor axes to a sum in the axes of the first instant. */
  void add(double x, double y, double z, double[] sum) {
    for (int k = 0; k < 3; k++) {
      sum[k] += axes[k][0] * x + axes[k][1] * y + axes[k][2] * z;
    }
  }

  /** The sensor turns at a rate in its own axes, rad/s: fixed axes turn the other way in it. */
  void turn(double[] rate, double forS) {
    double size = Math.sqrt(rate[0] * rate[0] + rate[1] * rate[1] + rate[2] * rate[2]);
    if (size * forS < 1e-12) {
      return;
    }
    double nx = -rate[0] / size;
    double ny = -rate[1] / size;
    double nz = -rate[2] / size;
    double cos = Math.cos(size * forS);
    double sin = Math.sin(size * forS);
    for (double[] a : axes) {
      double along = (nx * a[0] + ny * a[1] + nz * a[2]) * (1 - cos);
      double x = a[0] * cos + (ny * a[2] - nz * a[1]) * sin + nx * along;
      double y = a[1] * cos + (nz * a[0] - nx * a[2]) * sin + ny * along;
      a[2] = a[2] * cos + (nx * a[1] - ny * a[0]) * sin + nz * along;
      a[0] = x;
      a[1] = y;
    }
  }
}
