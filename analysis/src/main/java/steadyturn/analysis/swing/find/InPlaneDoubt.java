package steadyturn.analysis.swing.find;

import steadyturn.fusion.rotation.Vector3;

/**
 * How far the rate in the plane of a swing may be off where its first and its last moment are read
 * from it (1 SD): the plane is not one plane, the bone's other turns leak into it, the unit has a
 * bias and sits on skin.
 */
record InPlaneDoubt(WornUnit unit, BoneTurn turn, Vector3 normal, StrokeShape shape) {

  // sway about other axes and skin that begins to slip; the arm's own trembling belongs to the
  // movement that is timed. Our assumptions
  private static final double LEAK_AT_ADDRESS_RAD_PER_S = Math.toRadians(0.9);
  private static final double LEAK_AT_TOP_RAD_PER_S = Math.toRadians(0.6);
  // our choice: two fair ways of laying a plane through one downswing differ by this at least
  private static final double PLANE_SD_RAD = Math.toRadians(3);

  /** Doubt of the rate back at the takeaway, which is {@code slow} there. */
  double atTakeawayRadPerS(double slowRadPerS, double turnedSdRad) {
    int at = shape.takeaway();
    int soon = at + (shape.half() - at) / 3;
    double off = angleRad(turn.axis(at, Math.max(at + 1, soon)), normal.times(-1));
    double plane = Math.hypot(planeSdRad(), turnedSdRad);
    double leans =
        slowRadPerS * (1 - Math.cos(off) + Math.sin(off) * plane / Math.max(0.2, Math.cos(off)));
    double rolls = turn.rollRadPerS(at) * unit.longAxisSdRad();
    return Math.hypot(
        Math.hypot(LEAK_AT_ADDRESS_RAD_PER_S, unit.biasSdRadPerS()), Math.hypot(leans, rolls));
  }

  /** Doubt of the rate where it changes from back to forward. */
  double atTopRadPerS(double turnedSdRad) {
    double plane = Math.hypot(planeSdRad(), turnedSdRad);
    double leans = turn.astrayRadPerS(normal, shape.top()) * plane;
    double rolls = turn.rollRadPerS(shape.top()) * unit.longAxisSdRad();
    return Math.hypot(
        Math.hypot(LEAK_AT_TOP_RAD_PER_S, unit.biasSdRadPerS()), Math.hypot(leans, rolls));
  }

  /** Half the angle between the planes of the first and the second half of the way down. */
  private double planeSdRad() {
    int middle = (shape.top() + shape.peak()) / 2;
    double apart = angleRad(turn.axis(shape.top(), middle), turn.axis(middle, shape.peak()));
    return Math.hypot(PLANE_SD_RAD, apart / 2);
  }

  private static double angleRad(Vector3 a, Vector3 b) {
    return Math.atan2(a.cross(b).norm(), a.dot(b));
  }
}
