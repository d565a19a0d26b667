package steadyturn.fusion.rotation;

/**
 * A frame that moves over a ground frame: its attitude, and rate, place, velocity and acceleration
 * in ground coordinates, for one instant. A chain of rigid links is walked from its root outward:
 * {@code set...}, then turns and offsets in the frame's own axes, each with its first two time
 * derivatives, so that what a unit at the end of the chain feels is exact (composition of rotating
 * frames: Euler, Coriolis and centripetal terms; any textbook of mechanics). One object is walked
 * again for every instant: it holds state and belongs to one thread.
 */
public final class MovingFrame {

  /** Three numbers in ground coordinates that change from instant to instant. */
  private static final class Triple {
    private double x;
    private double y;
    private double z;

    private void set(double newX, double newY, double newZ) {
      x = newX;
      y = newY;
      z = newZ;
    }

    private void set(Triple o) {
      set(o.x, o.y, o.z);
    }

    private void add(double dx, double dy, double dz) {
      x += dx;
      y += dy;
      z += dz;
    }

    private double dot(double ox, double oy, double oz) {
      return x * ox + y * oy + z * oz;
    }

    private Vector3 vector() {
      return new Vector3(x, y, z);
    }
  }

  /** A turn that does not change with time: the axes of the new frame in those of the old. */
  public record FixedTurn(Vector3 x, Vector3 y, Vector3 z) {

    public static FixedTurn of(Quaternion qOldNew) {
      return new FixedTurn(
          qOldNew.rotate(Vector3.X), qOldNew.rotate(Vector3.Y), qOldNew.rotate(Vector3.Z));
    }
  }

  // the frame's own axes in ground coordinates
  private final Triple xAxis = new Triple();
  private final Triple yAxis = new Triple();
  private final Triple zAxis = new Triple();
  private final Triple turning = new Triple();
  private final Triple quickening = new Triple();
  private final Triple place = new Triple();
  private final Triple speed = new Triple();
  private final Triple pull = new Triple();

  /** Starts at rest in the ground frame, unturned. */
  public void setGround() {
    xAxis.set(1, 0, 0);
    yAxis.set(0, 1, 0);
    zAxis.set(0, 0, 1);
    turning.set(0, 0, 0);
    quickening.set(0, 0, 0);
    place.set(0, 0, 0);
    speed.set(0, 0, 0);
    pull.set(0, 0, 0);
  }

  /** Takes over place, velocity and acceleration of another frame and keeps the attitude. */
  public void setPlace(MovingFrame o) {
    place.set(o.place);
    speed.set(o.speed);
    pull.set(o.pull);
  }

  /** Turns about the frame's own x axis: angle rad, its rate and its acceleration. */
  public void turnX(double angleRad, double rateRadPerS, double accelRadPerS2) {
    turn(xAxis, yAxis, zAxis, angleRad, rateRadPerS, accelRadPerS2);
  }

  /** Turns about the frame's own y axis. */
  public void turnY(double angleRad, double rateRadPerS, double accelRadPerS2) {
    turn(yAxis, zAxis, xAxis, angleRad, rateRadPerS, accelRadPerS2);
  }

  /** Turns about the frame's own z axis. */
  public void turnZ(double angleRad, double rateRadPerS, double accelRadPerS2) {
    turn(zAxis, xAxis, yAxis, angleRad, rateRadPerS, accelRadPerS2);
  }

  private void turn(
      Triple about,
      Triple second,
      Triple third,
      double angleRad,
      double rateRadPerS,
      double accelRadPerS2) {
    Triple w = turning;
    // a turning axis carries its own turn along: alpha gains w x (axis * rate)
    quickening.add(
        about.x * accelRadPerS2 + (w.y * about.z - w.z * about.y) * rateRadPerS,
        about.y * accelRadPerS2 + (w.z * about.x - w.x * about.z) * rateRadPerS,
        about.z * accelRadPerS2 + (w.x * about.y - w.y * about.x) * rateRadPerS);
    w.add(about.x * rateRadPerS, about.y * rateRadPerS, about.z * rateRadPerS);
    double cos = Math.cos(angleRad);
    double sin = Math.sin(angleRad);
    double beforeX = second.x;
    double beforeY = second.y;
    double beforeZ = second.z;
    second.set(
        cos * beforeX + sin * third.x,
        cos * beforeY + sin * third.y,
        cos * beforeZ + sin * third.z);
    third.set(
        cos * third.x - sin * beforeX,
        cos * third.y - sin * beforeY,
        cos * third.z - sin * beforeZ);
  }

  /** Turns once and for all. */
  public void turnFixed(FixedTurn turn) {
    Vector3 x = toGround(turn.x);
    Vector3 y = toGround(turn.y);
    Vector3 z = toGround(turn.z);
    xAxis.set(x.x(), x.y(), x.z());
    yAxis.set(y.x(), y.y(), y.z());
    zAxis.set(z.x(), z.y(), z.z());
  }

  private Vector3 toGround(Vector3 own) {
    return new Vector3(
        xAxis.x * own.x() + yAxis.x * own.y() + zAxis.x * own.z(),
        xAxis.y * own.x() + yAxis.y * own.y() + zAxis.y * own.z(),
        xAxis.z * own.x() + yAxis.z * own.y() + zAxis.z * own.z());
  }

  /** Moves the origin by a fixed offset, m, in the frame's own axes. */
  public void shift(double dx, double dy, double dz) {
    Vector3 arm = toGround(new Vector3(dx, dy, dz));
    carry(arm.x(), arm.y(), arm.z());
  }

  /** Moves the origin by an arm in ground coordinates that turns along. */
  private void carry(double armX, double armY, double armZ) {
    Triple w = turning;
    Triple a = quickening;
    double carriedX = w.y * armZ - w.z * armY;
    double carriedY = w.z * armX - w.x * armZ;
    double carriedZ = w.x * armY - w.y * armX;
    place.add(armX, armY, armZ);
    speed.add(carriedX, carriedY, carriedZ);
    pull.add(
        a.y * armZ - a.z * armY + (w.y * carriedZ - w.z * carriedY),
        a.z * armX - a.x * armZ + (w.z * carriedX - w.x * carriedZ),
        a.x * armY - a.y * armX + (w.x * carriedY - w.y * carriedX));
  }

  /** Moves the origin along the frame's own axis 0, 1 or 2 by an offset, m, that itself changes. */
  public void slide(int axis, double offsetM, double rateMps, double accelMps2) {
    Triple along = axis == 0 ? xAxis : axis == 1 ? yAxis : zAxis;
    Triple w = turning;
    carry(along.x * offsetM, along.y * offsetM, along.z * offsetM);
    // relative velocity, Coriolis and relative acceleration
    speed.add(along.x * rateMps, along.y * rateMps, along.z * rateMps);
    double twice = 2 * rateMps;
    pull.add(
        along.x * accelMps2 + twice * (w.y * along.z - w.z * along.y),
        along.y * accelMps2 + twice * (w.z * along.x - w.x * along.z),
        along.z * accelMps2 + twice * (w.x * along.y - w.y * along.x));
  }

  /** Writes the rate about the frame's own axes, rad/s, into {@code out}. */
  public void rateRadPerS(double[] out) {
    out[0] = xAxis.dot(turning.x, turning.y, turning.z);
    out[1] = yAxis.dot(turning.x, turning.y, turning.z);
    out[2] = zAxis.dot(turning.x, turning.y, turning.z);
  }

  /**
   * Writes the specific force along the frame's own axes, m/s^2, into {@code out}: acceleration of
   * its origin plus gravity pulling along -z of the ground.
   */
  public void specificForceMps2(double gravityMps2, double[] out) {
    double up = pull.z + gravityMps2;
    out[0] = xAxis.dot(pull.x, pull.y, up);
    out[1] = yAxis.dot(pull.x, pull.y, up);
    out[2] = zAxis.dot(pull.x, pull.y, up);
  }

  /** Attitude: turns this frame's coordinates into ground coordinates. */
  public Quaternion qGroundFrame() {
    return Quaternion.fromAxes(xAxis(), yAxis.vector(), zAxis.vector());
  }

  /** The frame's own x axis in ground coordinates. */
  public Vector3 xAxis() {
    return xAxis.vector();
  }

  /** Place of the origin in ground coordinates, m. */
  public Vector3 placeM() {
    return place.vector();
  }

  /** Velocity of the origin in ground coordinates, m/s. */
  public Vector3 velocityMps() {
    return speed.vector();
  }
}
