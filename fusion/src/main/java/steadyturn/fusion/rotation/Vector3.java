package steadyturn.fusion.rotation;

import java.util.function.IntToDoubleFunction;

/**
 * Three numbers along x, y, z of one frame; the name of the variable says which frame and which
 * unit.
 */
public record Vector3(double x, double y, double z) {

  public static final Vector3 ZERO = new Vector3(0, 0, 0);
  public static final Vector3 X = new Vector3(1, 0, 0);
  public static final Vector3 Y = new Vector3(0, 1, 0);
  public static final Vector3 Z = new Vector3(0, 0, 1);

  /** The unit vector along axis 0, 1 or 2. */
  public static Vector3 axis(int axis) {
    return axis == 0 ? X : axis == 1 ? Y : Z;
  }

  /** Three numbers of an array, from {@code first} on. */
  public static Vector3 of(double[] numbers, int first) {
    return new Vector3(numbers[first], numbers[first + 1], numbers[first + 2]);
  }

  /** Row {@code k} of three columns. */
  public static Vector3 of(double[][] columns, int k) {
    return new Vector3(columns[0][k], columns[1][k], columns[2][k]);
  }

  /** One number for each axis. */
  public static Vector3 each(IntToDoubleFunction ofAxis) {
    return new Vector3(ofAxis.applyAsDouble(0), ofAxis.applyAsDouble(1), ofAxis.applyAsDouble(2));
  }

  public Vector3 plus(Vector3 o) {
    return new Vector3(x + o.x, y + o.y, z + o.z);
  }

  public Vector3 minus(Vector3 o) {
    return new Vector3(x - o.x, y - o.y, z - o.z);
  }

  public Vector3 times(double s) {
    return new Vector3(s * x, s * y, s * z);
  }

  public double dot(Vector3 o) {
    return x * o.x + y * o.y + z * o.z;
  }

  public Vector3 cross(Vector3 o) {
    return new Vector3(y * o.z - z * o.y, z * o.x - x * o.z, x * o.y - y * o.x);
  }

  public double norm() {
    return Math.sqrt(dot(this));
  }

  /** The same direction with length 1. A zero vector has no direction and is refused. */
  public Vector3 unit() {
    double n = norm();
    if (!(n > 0)) {
      throw new IllegalArgumentException("no direction in (" + x + ", " + y + ", " + z + ")");
    }
    return times(1 / n);
  }

  /** Component 0, 1 or 2. */
  public double get(int axis) {
    return switch (axis) {
      case 0 -> x;
      case 1 -> y;
      case 2 -> z;
      default -> throw new IllegalArgumentException("a vector has no component " + axis);
    };
  }
}
