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

  // columns are the axes of this frame in ground coordinates
  private double xx;
  private double xy;
  private double xz;
  private double yx;
  private double yy;
  private double yz;
  private double zx;
  private double zy;
  private double zz;
  private double wx;
  private double wy;
  private double wz;
  private double dwx;
  private double dwy;
  private double dwz;
  private final double[] place = new double[3];
  private final double[] speed = new double[3];
  private final double[] pull = new double[3];

  /** Starts at rest in the ground frame, unturned. */
  public void setGround() {
    xx = 1;
    yy = 1;
    zz = 1;
    xy = xz = yx = yz = zx = zy = 0;
    wx = wy = wz = dwx = dwy = dwz = 0;
    for (int i = 0; i < 3; i++) {
      place[i] = speed[i] = pull[i] = 0;
    }
  }

  /** Takes over place, velocity and acceleration of another frame and keeps the attitude. */
  public void setPlace(MovingFrame o) {
    for (int i = 0; i < 3; i++) {
      place[i] = o.place[i];
      speed[i] = o.speed[i];
      pull[i] = o.pull[i];
    }
  }

  /** Turns about the frame's own x axis: angle rad, its rate and its acceleration. */
  public void turnX(double angleRad, double rateRadPerS, double accelRadPerS2) {
    addTurn(xx, xy, xz, rateRadPerS, accelRadPerS2);
    double c = Math.cos(angleRad);
    double s = Math.sin(angleRad);
    double ax = yx;
    double ay = yy;
    double az = yz;
    yx = c * ax + s * zx;
    yy = c * ay + s * zy;
    yz = c * az + s * zz;
    zx = c * zx - s * ax;
    zy = c * zy - s * ay;
    zz = c * zz - s * az;
  }

  /** Turns about the frame's own y axis. */
  public void turnY(double angleRad, double rateRadPerS, double accelRadPerS2) {
    addTurn(yx, yy, yz, rateRadPerS, accelRadPerS2);
    double c = Math.cos(angleRad);
    double s = Math.sin(angleRad);
    double ax = zx;
    double ay = zy;
    double az = zz;
    zx = c * ax + s * xx;
    zy = c * ay + s * xy;
    zz = c * az + s * xz;
    xx = c * xx - s * ax;
    xy = c * xy - s * ay;
    xz = c * xz - s * az;
  }

  /** Turns about the frame's own z axis. */
  public void turnZ(double angleRad, double rateRadPerS, double accelRadPerS2) {
    addTurn(zx, zy, zz, rateRadPerS, accelRadPerS2);
    double c = Math.cos(angleRad);
    double s = Math.sin(angleRad);
    double ax = xx;
    double ay = xy;
    double az = xz;
    xx = c * ax + s * yx;
    xy = c * ay + s * yy;
    xz = c * az + s * yz;
    yx = c * yx - s * ax;
    yy = c * yy - s * ay;
    yz = c * yz - s * az;
  }

  private void addTurn(double ax, double ay, double az, double rate, double accel) {
    // a turning axis carries its own turn along: alpha gains w x (axis * rate)
    dwx += ax * accel + (wy * az - wz * ay) * rate;
    dwy += ay * accel + (wz * ax - wx * az) * rate;
    dwz += az * accel + (wx * ay - wy * ax) * rate;
    wx += ax * rate;
    wy += ay * rate;
    wz += az * rate;
  }

  /** Turns once and for all: the new axes are those of {@code qThisNew}, which does not change. */
  public void turnFixed(Quaternion qThisNew) {
    Vector3 a = toGround(qThisNew.rotate(Vector3.X));
    Vector3 b = toGround(qThisNew.rotate(Vector3.Y));
    Vector3 c = toGround(qThisNew.rotate(Vector3.Z));
    xx = a.x();
    xy = a.y();
    xz = a.z();
    yx = b.x();
    yy = b.y();
    yz = b.z();
    zx = c.x();
    zy = c.y();
    zz = c.z();
  }

  /** Moves the origin by a fixed offset, m, in the frame's own axes. */
  public void shift(double dx, double dy, double dz) {
    double rx = xx * dx + yx * dy + zx * dz;
    double ry = xy * dx + yy * dy + zy * dz;
    double rz = xz * dx + yz * dy + zz * dz;
    double vx = wy * rz - wz * ry;
    double vy = wz * rx - wx * rz;
    double vz = wx * ry - wy * rx;
    place[0] += rx;
    place[1] += ry;
    place[2] += rz;
    speed[0] += vx;
    speed[1] += vy;
    speed[2] += vz;
    pull[0] += dwy * rz - dwz * ry + wy * vz - wz * vy;
    pull[1] += dwz * rx - dwx * rz + wz * vx - wx * vz;
    pull[2] += dwx * ry - dwy * rx + wx * vy - wy * vx;
  }

  /** Moves the origin along the frame's own axis 0, 1 or 2 by an offset, m, that itself changes. */
  public void slide(int axis, double offsetM, double rateMps, double accelMps2) {
    double ax = axis == 0 ? xx : axis == 1 ? yx : zx;
    double ay = axis == 0 ? xy : axis == 1 ? yy : zy;
    double az = axis == 0 ? xz : axis == 1 ? yz : zz;
    shift(axis == 0 ? offsetM : 0, axis == 1 ? offsetM : 0, axis == 2 ? offsetM : 0);
    // relative velocity, Coriolis and relative acceleration
    speed[0] += ax * rateMps;
    speed[1] += ay * rateMps;
    speed[2] += az * rateMps;
    pull[0] += ax * accelMps2 + 2 * rateMps * (wy * az - wz * ay);
    pull[1] += ay * accelMps2 + 2 * rateMps * (wz * ax - wx * az);
    pull[2] += az * accelMps2 + 2 * rateMps * (wx * ay - wy * ax);
  }

  private Vector3 toGround(Vector3 own) {
    return new Vector3(
        xx * own.x() + yx * own.y() + zx * own.z(),
        xy * own.x() + yy * own.y() + zy * own.z(),
        xz * own.x() + yz * own.y() + zz * own.z());
  }

  /** Writes the rate about the frame's own axes, rad/s, into {@code out}. */
  public void rateRadPerS(double[] out) {
    out[0] = xx * wx + xy * wy + xz * wz;
    out[1] = yx * wx + yy * wy + yz * wz;
    out[2] = zx * wx + zy * wy + zz * wz;
  }

  /**
   * Writes the specific force along the frame's own axes, m/s^2, into {@code out}: acceleration of
   * its origin plus gravity pulling along -z of the ground.
   */
  public void specificForceMps2(double gravityMps2, double[] out) {
    double up = pull[2] + gravityMps2;
    out[0] = xx * pull[0] + xy * pull[1] + xz * up;
    out[1] = yx * pull[0] + yy * pull[1] + yz * up;
    out[2] = zx * pull[0] + zy * pull[1] + zz * up;
  }

  /** Attitude: turns this frame's coordinates into ground coordinates. */
  public Quaternion qGroundFrame() {
    return Quaternion.fromAxes(xAxis(), new Vector3(yx, yy, yz), new Vector3(zx, zy, zz));
  }

  /** The frame's own x axis in ground coordinates. */
  public Vector3 xAxis() {
    return new Vector3(xx, xy, xz);
  }

  /** Place of the origin in ground coordinates, m. */
  public Vector3 placeM() {
    return new Vector3(place[0], place[1], place[2]);
  }

  /** Velocity of the origin in ground coordinates, m/s. */
  public Vector3 velocityMps() {
    return new Vector3(speed[0], speed[1], speed[2]);
  }
}
