package steadyturn.ingest.columnmap.check;

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

  /**
   * The sensor turns about the unit vector (x, y, z) of its own axes by an angle; axes that stay
   * where they are turn the other way in it.
   */
  void turn(double x, double y, double z, double sin, double cos) {
    for (double[] a : axes) {
      double along = (x * a[0] + y * a[1] + z * a[2]) * (1 - cos);
      double ax = a[0] * cos - (y * a[2] - z * a[1]) * sin + x * along;
      double ay = a[1] * cos - (z * a[0] - x * a[2]) * sin + y * along;
      a[2] = a[2] * cos - (x * a[1] - y * a[0]) * sin + z * along;
      a[0] = ax;
      a[1] = ay;
    }
  }
}
