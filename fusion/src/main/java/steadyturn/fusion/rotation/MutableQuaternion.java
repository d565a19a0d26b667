package steadyturn.fusion.rotation;

/**
 * A rotation that is changed in place, for loops that must not allocate: one a filter, never
 * shared. Scalar first; the same sense as {@link Quaternion}: one named {@code qEarthUnit} takes
 * unit coordinates to earth coordinates.
 */
public final class MutableQuaternion {

  private double w = 1;
  private double x;
  private double y;
  private double z;

  public double w() {
    return w;
  }

  public double x() {
    return x;
  }

  public double y() {
    return y;
  }

  public double z() {
    return z;
  }

  /** Takes the four numbers as they are. */
  public MutableQuaternion set(double newW, double newX, double newY, double newZ) {
    w = newW;
    x = newX;
    y = newY;
    z = newZ;
    return this;
  }

  public MutableQuaternion set(MutableQuaternion o) {
    return set(o.w, o.x, o.y, o.z);
  }

  public MutableQuaternion set(Quaternion o) {
    return set(o.w(), o.x(), o.y(), o.z());
  }

  /** The same rotation as a value that can be kept. */
  public Quaternion toQuaternion() {
    return new Quaternion(w, x, y, z);
  }

  /** Becomes this * o (Hamilton): qAB becomes qAC when o is qBC. */
  public MutableQuaternion multiplyRight(double ow, double ox, double oy, double oz) {
    return set(
        w * ow - x * ox - y * oy - z * oz,
        w * ox + x * ow + y * oz - z * oy,
        w * oy - x * oz + y * ow + z * ox,
        w * oz + x * oy - y * ox + z * ow);
  }

  /** Becomes o * this (Hamilton): qBC becomes qAC when o is qAB. */
  public MutableQuaternion multiplyLeft(double ow, double ox, double oy, double oz) {
    return set(
        ow * w - ox * x - oy * y - oz * z,
        ow * x + ox * w + oy * z - oz * y,
        ow * y - ox * z + oy * w + oz * x,
        ow * z + ox * y - oy * x + oz * w);
  }

  /** Becomes o * this: qBC becomes qAC when o is qAB. */
  public MutableQuaternion multiplyLeft(MutableQuaternion o) {
    return multiplyLeft(o.w, o.x, o.y, o.z);
  }

  /**
   * Turns on by a small or large rotation vector given in the right frame's axes, rad: qEarthUnit
   * with rate times step of a gyroscope. Exact for a constant rate.
   */
  public MutableQuaternion turnRight(double rxRad, double ryRad, double rzRad) {
    double squared = rxRad * rxRad + ryRad * ryRad + rzRad * rzRad;
    double k = halfSinc(squared);
    return multiplyRight(halfCos(squared), k * rxRad, k * ryRad, k * rzRad);
  }

  /** Turns on by a rotation vector given in the left frame's axes, rad. */
  public MutableQuaternion turnLeft(double rxRad, double ryRad, double rzRad) {
    double squared = rxRad * rxRad + ryRad * ryRad + rzRad * rzRad;
    double k = halfSinc(squared);
    return multiplyLeft(halfCos(squared), k * rxRad, k * ryRad, k * rzRad);
  }

  // cos(a/2) by its series under 0.25 rad, where the first term left out is below 1e-16
  private static double halfCos(double angleSquared) {
    double h = 0.25 * angleSquared;
    if (h < 0.0157) {
      return 1 - h * (0.5 - h * (1.0 / 24 - h * (1.0 / 720 - h * (1.0 / 40320 - h / 3628800))));
    }
    return Math.cos(Math.sqrt(h));
  }

  // sin(a/2)/a in the same way
  private static double halfSinc(double angleSquared) {
    double h = 0.25 * angleSquared;
    if (h < 0.0157) {
      return 0.5 * (1 - h * (1.0 / 6 - h * (1.0 / 120 - h * (1.0 / 5040 - h / 362880))));
    }
    double half = Math.sqrt(h);
    return 0.5 * Math.sin(half) / half;
  }

  /** Brings the length back to 1: one Newton step when near it, else a square root. */
  public MutableQuaternion normalize() {
    double n2 = w * w + x * x + y * y + z * z;
    double s = Math.abs(n2 - 1) < 1e-7 ? 1.5 - 0.5 * n2 : 1 / Math.sqrt(n2);
    return set(s * w, s * x, s * y, s * z);
  }

  /** First coordinate, in the left frame, of a vector given in the right frame. */
  public double rotatedX(double vx, double vy, double vz) {
    return vx + 2 * (w * (y * vz - z * vy) + y * (x * vy - y * vx) - z * (z * vx - x * vz));
  }

  /** Second coordinate, in the left frame, of a vector given in the right frame. */
  public double rotatedY(double vx, double vy, double vz) {
    return vy + 2 * (w * (z * vx - x * vz) + z * (y * vz - z * vy) - x * (x * vy - y * vx));
  }

  /** Third coordinate, in the left frame, of a vector given in the right frame. */
  public double rotatedZ(double vx, double vy, double vz) {
    return vz + 2 * (w * (x * vy - y * vx) + x * (z * vx - x * vz) - y * (y * vz - z * vy));
  }

  /**
   * Becomes the shortest rotation that takes the direction v (right frame, any length) to z of the
   * left frame. Where v points straight down the half turn about x is taken.
   */
  public MutableQuaternion setShortestToZ(double vx, double vy, double vz) {
    double n = Math.sqrt(vx * vx + vy * vy + vz * vz);
    if (!(n > 0)) {
      throw new IllegalArgumentException("no direction in (" + vx + ", " + vy + ", " + vz + ")");
    }
    double c = vz / n;
    if (c < -1 + 1e-12) {
      return set(0, 1, 0, 0);
    }
    double half = Math.sqrt(0.5 * (1 + c));
    double k = 0.5 / (half * n);
    return set(half, k * vy, -k * vx, 0);
  }

  /** Writes the rotation matrix, row by row, into {@code rows}. */
  public void matrix(double[] rows) {
    rows[0] = 1 - 2 * (y * y + z * z);
    rows[1] = 2 * (x * y - w * z);
    rows[2] = 2 * (x * z + w * y);
    rows[3] = 2 * (x * y + w * z);
    rows[4] = 1 - 2 * (x * x + z * z);
    rows[5] = 2 * (y * z - w * x);
    rows[6] = 2 * (x * z - w * y);
    rows[7] = 2 * (y * z + w * x);
    rows[8] = 1 - 2 * (x * x + y * y);
  }

  /** The vertical of the left frame in the right one: the last row of {@link #matrix}. */
  public double m20() {
    return 2 * (x * z - w * y);
  }

  public double m21() {
    return 2 * (y * z + w * x);
  }

  public double m22() {
    return 1 - 2 * (x * x + y * y);
  }
}
