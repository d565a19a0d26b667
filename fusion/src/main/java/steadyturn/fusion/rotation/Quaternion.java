package steadyturn.fusion.rotation;

/**
 * A rotation as a quaternion, scalar first. {@code qAB.rotate(v)} takes the coordinates of a vector
 * in B and gives those of the same vector in A. Example: {@code fromRotationVector(0, 0, pi/2)}
 * takes x to y.
 */
public record Quaternion(double w, double x, double y, double z) {

  public static final Quaternion IDENTITY = new Quaternion(1, 0, 0, 0);

  /** Hamilton product: {@code qAC = qAB.times(qBC)}. Defined for any lengths. */
  public Quaternion times(Quaternion o) {
    return new Quaternion(
        w * o.w - x * o.x - y * o.y - z * o.z,
        w * o.x + x * o.w + y * o.z - z * o.y,
        w * o.y - x * o.z + y * o.w + z * o.x,
        w * o.z + x * o.y - y * o.x + z * o.w);
  }

  /** The inverse of a unit quaternion: {@code qBA = qAB.conjugate()}. */
  public Quaternion conjugate() {
    return new Quaternion(w, -x, -y, -z);
  }

  /**
   * The same motion seen in a mirror that stands in the x-z plane of both frames: y axes swap sign,
   * so a right-handed player's pose becomes a left-handed player's.
   */
  public Quaternion mirroredInXz() {
    return new Quaternion(w, -x, y, -z);
  }

  public double norm() {
    return Math.sqrt(w * w + x * x + y * y + z * z);
  }

  /** The same rotation with length 1. */
  public Quaternion normalized() {
    double n = norm();
    if (!(n > 0)) {
      throw new IllegalArgumentException("a zero quaternion is no rotation");
    }
    return new Quaternion(w / n, x / n, y / n, z / n);
  }

  /**
   * Turns the coordinates of v from the right frame of the name into the left one. Needs unit
   * length.
   */
  public Vector3 rotate(Vector3 v) {
    double tx = 2 * (y * v.z() - z * v.y());
    double ty = 2 * (z * v.x() - x * v.z());
    double tz = 2 * (x * v.y() - y * v.x());
    return new Vector3(
        v.x() + w * tx + y * tz - z * ty,
        v.y() + w * ty + z * tx - x * tz,
        v.z() + w * tz + x * ty - y * tx);
  }

  /** Rotation by |v| rad about v (right-hand rule). */
  public static Quaternion fromRotationVector(Vector3 rotationRad) {
    double angle = rotationRad.norm();
    double half = 0.5 * angle;
    // sin(a/2)/a is 1/2 to the last digit near zero, where the quotient is 0/0
    double k = angle < 1e-8 ? 0.5 : Math.sin(half) / angle;
    return new Quaternion(
        Math.cos(half), k * rotationRad.x(), k * rotationRad.y(), k * rotationRad.z());
  }

  /** Rotation by an angle, rad, about z of the left frame: for small poses and headings. */
  public static Quaternion aboutZ(double angleRad) {
    return new Quaternion(Math.cos(angleRad / 2), 0, 0, Math.sin(angleRad / 2));
  }

  /** Rotation by an angle, rad, about y. */
  public static Quaternion aboutY(double angleRad) {
    return new Quaternion(Math.cos(angleRad / 2), 0, Math.sin(angleRad / 2), 0);
  }

  /** Rotation by an angle, rad, about x. */
  public static Quaternion aboutX(double angleRad) {
    return new Quaternion(Math.cos(angleRad / 2), Math.sin(angleRad / 2), 0, 0);
  }

  /** The rotation vector, rad, of length in [0, pi]. */
  public Vector3 rotationVector() {
    double s = Math.sqrt(x * x + y * y + z * z);
    double k = s < 1e-12 ? 2 : 2 * Math.atan2(s, Math.abs(w)) / s;
    return new Vector3(x, y, z).times(w < 0 ? -k : k);
  }

  /** Azimuth of y of the right frame in the left one, whose z is up; rad in (-pi, pi], y is 0. */
  public double azimuthOfYRad() {
    Vector3 turned = rotate(Vector3.Y);
    return Math.atan2(-turned.x(), turned.y());
  }

  /**
   * The part of the rotation that is about z of the left frame, rad in (-pi, pi]: swing-twist
   * split, Dobrowolski 2015, "Swing-twist decomposition in Clifford algebra" (from memory).
   * Undefined (0) when the rotation takes z to -z.
   */
  public double twistAboutZRad() {
    double angle = 2 * Math.atan2(z, w);
    if (angle > Math.PI) {
      return angle - 2 * Math.PI;
    }
    return angle <= -Math.PI ? angle + 2 * Math.PI : angle;
  }

  /**
   * Turns a frame in which {@code up} was seen into one with z up, whose heading zero is the
   * frame's x axis (its y axis where x is within 30 deg of the vertical).
   */
  public static Quaternion levelling(Vector3 up) {
    Vector3 z = up.unit();
    Vector3 ahead = Math.abs(z.x()) < Math.cos(Math.PI / 6) ? Vector3.X : Vector3.Y;
    Vector3 x = ahead.minus(z.times(ahead.dot(z))).unit();
    return fromAxes(x, z.cross(x), z).conjugate();
  }

  /**
   * The rotation whose columns are the axes x, y, z of the right frame, given in the left frame
   * (orthonormal, right-handed). Shepperd 1978, J Guidance Control 1:223-224 (from memory): the
   * largest of four divisors is used.
   */
  public static Quaternion fromAxes(Vector3 xAxis, Vector3 yAxis, Vector3 zAxis) {
    double trace = xAxis.x() + yAxis.y() + zAxis.z();
    double ww = 1 + trace;
    double xx = 1 + 2 * xAxis.x() - trace;
    double yy = 1 + 2 * yAxis.y() - trace;
    double zz = 1 + 2 * zAxis.z() - trace;
    double wx = yAxis.z() - zAxis.y();
    double wy = zAxis.x() - xAxis.z();
    double wz = xAxis.y() - yAxis.x();
    double xy = yAxis.x() + xAxis.y();
    double xz = zAxis.x() + xAxis.z();
    double yz = zAxis.y() + yAxis.z();
    double largest = Math.max(Math.max(ww, xx), Math.max(yy, zz));
    Quaternion q;
    if (largest == ww) {
      q = new Quaternion(ww, wx, wy, wz);
    } else if (largest == xx) {
      q = new Quaternion(wx, xx, xy, xz);
    } else if (largest == yy) {
      q = new Quaternion(wy, xy, yy, yz);
    } else {
      q = new Quaternion(wz, xz, yz, zz);
    }
    return q.normalized();
  }
}
