package steadyturn.fusion.rotation;

import java.util.Arrays;

/**
 * A frame that moves over a ground frame: its attitude, and rate, place, velocity and acceleration
 * in ground coordinates, for one instant. A chain of rigid links is walked from its root outward:
 * {@code set...}, then turns and offsets in the frame's own axes, each with its first two time
 * derivatives, so that what a unit at the end of the chain feels is exact (composition of rotating
 * frames: Euler, Coriolis and centripetal terms; any textbook of mechanics). One object is walked
 * again for every instant: it holds state and belongs to one thread.
 */
public final class MovingFrame {

  private final double[][] axes = new double[3][3]; // the frame's own x, y, z in ground coordinates
  private final double[] turning = new double[3];
  private final double[] quickening = new double[3];
  private final double[] place = new double[3];
  private final double[] speed = new double[3];
  private final double[] pull = new double[3];

  /** Starts at rest in the ground frame, unturned. */
  public void setGround() {
    for (int i = 0; i < 3; i++) {
      Arrays.fill(axes[i], 0);
      axes[i][i] = 1;
      turning[i] = quickening[i] = place[i] = speed[i] = pull[i] = 0;
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
    turn(0, angleRad, rateRadPerS, accelRadPerS2);
  }

  /** Turns about the frame's own y axis. */
  public void turnY(double angleRad, double rateRadPerS, double accelRadPerS2) {
    turn(1, angleRad, rateRadPerS, accelRadPerS2);
  }

  /** Turns about the frame's own z axis. */
  public void turnZ(double angleRad, double rateRadPerS, double accelRadPerS2) {
    turn(2, angleRad, rateRadPerS, accelRadPerS2);
  }

  private void turn(int axis, double angleRad, double rateRadPerS, double accelRadPerS2) {
    double[] about = axes[axis];
    for (int i = 0; i < 3; i++) {
      // a turning axis carries its own turn along: alpha gains w x (axis * rate)
      quickening[i] += about[i] * accelRadPerS2 + cross(turning, about, i) * rateRadPerS;
    }
    double cos = Math.cos(angleRad);
    double sin = Math.sin(angleRad);
    double[] second = axes[(axis + 1) % 3];
    double[] third = axes[(axis + 2) % 3];
    for (int i = 0; i < 3; i++) {
      turning[i] += about[i] * rateRadPerS;
      double before = second[i];
      second[i] = cos * before + sin * third[i];
      third[i] = cos * third[i] - sin * before;
    }
  }

  private static double cross(double[] a, double[] b, int i) {
    int j = (i + 1) % 3;
    int k = (i + 2) % 3;
    return a[j] * b[k] - a[k] * b[j];
  }

  /** Turns once and for all: the new axes are those of {@code qThisNew}, which does not change. */
  public void turnFixed(Quaternion qThisNew) {
    double[][] before = {axes[0].clone(), axes[1].clone(), axes[2].clone()};
    for (int axis = 0; axis < 3; axis++) {
      toGround(before, qThisNew.rotate(Vector3.axis(axis)), axes[axis]);
    }
  }

  /** Moves the origin by a fixed offset, m, in the frame's own axes. */
  public void shift(double dx, double dy, double dz) {
    double[] arm = new double[3];
    toGround(axes, new Vector3(dx, dy, dz), arm);
    double[] carried = new double[3];
    for (int i = 0; i < 3; i++) {
      carried[i] = cross(turning, arm, i);
    }
    for (int i = 0; i < 3; i++) {
      place[i] += arm[i];
      speed[i] += carried[i];
      pull[i] += cross(quickening, arm, i) + cross(turning, carried, i);
    }
  }

  /** Moves the origin along the frame's own axis 0, 1 or 2 by an offset, m, that itself changes. */
  public void slide(int axis, double offsetM, double rateMps, double accelMps2) {
    double[] along = axes[axis];
    shift(axis == 0 ? offsetM : 0, axis == 1 ? offsetM : 0, axis == 2 ? offsetM : 0);
    for (int i = 0; i < 3; i++) {
      // relative velocity, Coriolis and relative acceleration
      speed[i] += along[i] * rateMps;
      pull[i] += along[i] * accelMps2 + 2 * rateMps * cross(turning, along, i);
    }
  }

  private static void toGround(double[][] axes, Vector3 own, double[] out) {
    for (int i = 0; i < 3; i++) {
      out[i] = axes[0][i] * own.x() + axes[1][i] * own.y() + axes[2][i] * own.z();
    }
  }

  /** Writes the rate about the frame's own axes, rad/s, into {@code out}. */
  public void rateRadPerS(double[] out) {
    for (int axis = 0; axis < 3; axis++) {
      double[] a = axes[axis];
      out[axis] = a[0] * turning[0] + a[1] * turning[1] + a[2] * turning[2];
    }
  }

  /**
   * Writes the specific force along the frame's own axes, m/s^2, into {@code out}: acceleration of
   * its origin plus gravity pulling along -z of the ground.
   */
  public void specificForceMps2(double gravityMps2, double[] out) {
    double up = pull[2] + gravityMps2;
    for (int axis = 0; axis < 3; axis++) {
      double[] a = axes[axis];
      out[axis] = a[0] * pull[0] + a[1] * pull[1] + a[2] * up;
    }
  }

  /** Attitude: turns this frame's coordinates into ground coordinates. */
  public Quaternion qGroundFrame() {
    return Quaternion.fromAxes(xAxis(), Vector3.of(axes[1], 0), Vector3.of(axes[2], 0));
  }

  /** The frame's own x axis in ground coordinates. */
  public Vector3 xAxis() {
    return Vector3.of(axes[0], 0);
  }

  /** Place of the origin in ground coordinates, m. */
  public Vector3 placeM() {
    return Vector3.of(place, 0);
  }

  /** Velocity of the origin in ground coordinates, m/s. */
  public Vector3 velocityMps() {
    return Vector3.of(speed, 0);
  }
}
