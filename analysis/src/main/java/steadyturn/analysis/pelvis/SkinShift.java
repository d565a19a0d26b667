package steadyturn.analysis.pelvis;

/**
 * How far skin and belt let the unit wander against the bone once the pelvis has left the address;
 * one standard deviation each. Sizes are assumptions, named in docs/accuracy.md.
 *
 * @param angleRad about each axis, rad
 * @param placeM along each axis, m
 */
public record SkinShift(double angleRad, double placeM) {

  /** The shift is full once the pelvis has turned this far. */
  private static final double FULL_AT_TURN_RAD = Math.toRadians(20);

  public static SkinShift assumed() {
    return new SkinShift(Math.toRadians(1), 0.004);
  }

  /** Spread of each pose component at a pose: nothing at address, growing with the turn. */
  double[] at(PelvisPose pose) {
    double part = Math.min(1, Math.abs(pose.turnRad()) / FULL_AT_TURN_RAD);
    double angle = angleRad * part;
    double place = placeM * part;
    return new double[] {angle, place, place, place, angle, angle};
  }
}
