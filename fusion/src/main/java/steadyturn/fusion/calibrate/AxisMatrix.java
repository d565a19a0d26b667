package steadyturn.fusion.calibrate;

import java.util.List;
import steadyturn.fusion.rotation.Vector3;

/**
 * Scale, cross-talk and misalignment of three axes as a 3 x 3 matrix, row by row.
 *
 * @param x first row: what the three inputs give on the first output; likewise y, z
 */
public record AxisMatrix(Vector3 x, Vector3 y, Vector3 z) {

  public static final AxisMatrix IDENTITY = new AxisMatrix(Vector3.X, Vector3.Y, Vector3.Z);

  /** Numbers in rows. */
  public static AxisMatrix ofRows(double[][] rows) {
    return new AxisMatrix(Vector3.of(rows[0], 0), Vector3.of(rows[1], 0), Vector3.of(rows[2], 0));
  }

  /** This matrix times a column of three. */
  public Vector3 times(Vector3 v) {
    return new Vector3(x.dot(v), y.dot(v), z.dot(v));
  }

  /** Row 0, 1 or 2. */
  public Vector3 row(int index) {
    return List.of(x, y, z).get(index);
  }

  private Vector3 column(int index) {
    return new Vector3(x.get(index), y.get(index), z.get(index));
  }

  /** The matrix that undoes this one (by cross products: Cramer's rule). */
  public AxisMatrix inverse() {
    Vector3 a = column(0);
    Vector3 b = column(1);
    Vector3 c = column(2);
    double determinant = a.dot(b.cross(c));
    if (!(Math.abs(determinant) > 1e-6)) {
      throw CalibrationException.of(
          "two axes of the unit show the same: its matrix cannot be undone (determinant %s)",
          determinant);
    }
    double s = 1 / determinant;
    return new AxisMatrix(b.cross(c).times(s), c.cross(a).times(s), a.cross(b).times(s));
  }

  /**
   * The same errors without the turn that all axes share, to first order: the symmetric part. For a
   * unit of which only the accelerometer was calibrated, so that its axes stay those of the
   * gyroscope.
   */
  public AxisMatrix withoutTurn() {
    double xy = 0.5 * (x.y() + y.x());
    double xz = 0.5 * (x.z() + z.x());
    double yz = 0.5 * (y.z() + z.y());
    return new AxisMatrix(
        new Vector3(x.x(), xy, xz), new Vector3(xy, y.y(), yz), new Vector3(xz, yz, z.z()));
  }

  /** Largest difference of any diagonal entry from 1. */
  public double largestScaleError() {
    return Math.max(Math.abs(x.x() - 1), Math.max(Math.abs(y.y() - 1), Math.abs(z.z() - 1)));
  }

  /** Largest of the six other entries, rad for small ones: how far axes are off square. */
  public double largestCrossTalk() {
    double worst = 0;
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        worst = i == j ? worst : Math.max(worst, Math.abs(row(i).get(j)));
      }
    }
    return worst;
  }
}
