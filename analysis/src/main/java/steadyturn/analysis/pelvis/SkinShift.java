package steadyturn.analysis.pelvis;

/**
 * How far skin and belt let the unit wander against the bone once the pelvis has left the address;
 * one standard deviation each. Sizes are assumptions, named in docs/accuracy.md.
 *
 * @param angleRad about each axis, rad
 * @param placeM along each axis, m
 */
public record SkinShift(double angleRad, double placeM) {

  /** The shift is full once the pelvis has turned this far, as at the top of a full swing. */
  private static final double FULL_AT_TURN_RAD = Math.toRadians(45);

  public static SkinShift assumed() {
    return new SkinShift(Math.toRadians(1), 0.004);
  }

  /**
   * The shift a swing has reached: nothing at address, growing with the largest turn so far. Skin
   * that has been dragged along does not lie as before when the pelvis comes by its address again.
   */
  SkinShift after(double largestTurnRad) {
    return times(largestTurnRad / FULL_AT_TURN_RAD);
  }

  /** The same where it is full by a key position: a farther turn drags it farther. */
  SkinShift beyond(double largestTurnRad) {
    return times(Math.max(1, largestTurnRad / FULL_AT_TURN_RAD));
  }

  /** A part of this shift. */
  SkinShift times(double part) {
    return new SkinShift(angleRad * part, placeM * part);
  }

  /** With another, independent spread of the same kind. */
  SkinShift and(double otherAngleRad, double otherPlaceM) {
    return new SkinShift(Math.hypot(angleRad, otherAngleRad), Math.hypot(placeM, otherPlaceM));
  }
}
