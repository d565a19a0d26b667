package steadyturn.fusion.calibrate;

import java.util.Arrays;
import java.util.Optional;
import steadyturn.fusion.rotation.Vector3;

/** A position on one of the six faces, named by the unit axis that points up. */
public enum Pose {
  X_UP("+x up", 0, 1),
  X_DOWN("-x up", 0, -1),
  Y_UP("+y up", 1, 1),
  Y_DOWN("-y up", 1, -1),
  Z_UP("+z up", 2, 1),
  Z_DOWN("-z up", 2, -1);

  /** A face counts when its axis is within 25 deg of the vertical. */
  private static final double LEAST_COSINE = Math.cos(Math.toRadians(25));

  private final String words;
  private final int axis;
  private final int sign;

  Pose(String words, int axis, int sign) {
    this.words = words;
    this.axis = axis;
    this.sign = sign;
  }

  public String words() {
    return words;
  }

  /** The vertical in this position, unit axes. */
  public Vector3 up() {
    return Vector3.axis(axis).times(sign);
  }

  /** The face that lies down where this is the mean specific force; none when on an edge. */
  static Optional<Pose> of(Vector3 accelMps2) {
    double n = accelMps2.norm();
    return Arrays.stream(values())
        .filter(p -> n > 0 && p.up().dot(accelMps2) >= LEAST_COSINE * n)
        .findFirst();
  }
}
