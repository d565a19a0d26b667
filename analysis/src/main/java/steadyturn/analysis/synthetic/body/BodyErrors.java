package steadyturn.analysis.synthetic.body;

/**
 * What a body does to a measurement, each source to be switched alone. Sizes are standard
 * deviations unless said otherwise, and our assumptions (docs/simulator.md).
 *
 * @param swayAddressMmPerS RMS speed of the standing player along each level axis at address
 * @param swayAddressDegPerS RMS rate about each axis at address
 * @param swayFinishMmPerS as above at the finish
 * @param swayFinishDegPerS as above at the finish
 * @param wobbleDeg largest height of the 5-8 Hz wobble of the pelvis in a swing (half to whole)
 * @param wobbleMm the same in place
 * @param skinDeg turn of a unit against its segment by the moving skin
 * @param skinMm shift of a unit against its segment
 * @param alignmentDeg turn of each unit against its nominal mounting, about each axis
 * @param standingTiltDeg spread of the standing pelvis tilt about 10 deg
 * @param leverForwardMm spread of mid-hip against the regression, forward and up
 * @param leverSideMm the same to the side
 * @param aimDeg spread of the hip line at address against square, of a player; half of it from
 *     swing to swing
 * @param gripDeg turn of the club shaft in the lead hand about each axis, as the skin's
 */
public record BodyErrors(
    double swayAddressMmPerS,
    double swayAddressDegPerS,
    double swayFinishMmPerS,
    double swayFinishDegPerS,
    double wobbleDeg,
    double wobbleMm,
    double skinDeg,
    double skinMm,
    double alignmentDeg,
    double standingTiltDeg,
    double leverForwardMm,
    double leverSideMm,
    double aimDeg,
    double gripDeg) {

  /** A body of steel: no source at all. */
  public static BodyErrors none() {
    return new BodyErrors(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);
  }

  /** All sources at their usual size. */
  public static BodyErrors standard() {
    return none()
        .withSway()
        .withWobble()
        .withSkinShift()
        .withAlignment()
        .withStandingTilt()
        .withLeverArm()
        .withAim()
        .withGrip();
  }

  /** Adds sway: 4 mm/s and 0.5 deg/s at address, 12 mm/s and 2 deg/s at the finish. */
  public BodyErrors withSway() {
    return sway(4, 0.5, 12, 2);
  }

  /** Takes sway away. */
  public BodyErrors withoutSway() {
    return sway(0, 0, 0, 0);
  }

  private BodyErrors sway(double mm, double deg, double finishMm, double finishDeg) {
    return new BodyErrors(
        mm,
        deg,
        finishMm,
        finishDeg,
        wobbleDeg,
        wobbleMm,
        skinDeg,
        skinMm,
        alignmentDeg,
        standingTiltDeg,
        leverForwardMm,
        leverSideMm,
        aimDeg,
        gripDeg);
  }

  /** Adds the wobble in the swing: 5-8 Hz, 1-2 deg, 5-10 mm. */
  public BodyErrors withWobble() {
    return wobble(2, 10);
  }

  /** Takes the wobble away. */
  public BodyErrors withoutWobble() {
    return wobble(0, 0);
  }

  private BodyErrors wobble(double deg, double mm) {
    return new BodyErrors(
        swayAddressMmPerS,
        swayAddressDegPerS,
        swayFinishMmPerS,
        swayFinishDegPerS,
        deg,
        mm,
        skinDeg,
        skinMm,
        alignmentDeg,
        standingTiltDeg,
        leverForwardMm,
        leverSideMm,
        aimDeg,
        gripDeg);
  }

  /** Adds skin shift: 1 deg, 4 mm. */
  public BodyErrors withSkinShift() {
    return skin(1, 4);
  }

  /** Takes skin shift away. */
  public BodyErrors withoutSkinShift() {
    return skin(0, 0);
  }

  private BodyErrors skin(double deg, double mm) {
    return new BodyErrors(
        swayAddressMmPerS,
        swayAddressDegPerS,
        swayFinishMmPerS,
        swayFinishDegPerS,
        wobbleDeg,
        wobbleMm,
        deg,
        mm,
        alignmentDeg,
        standingTiltDeg,
        leverForwardMm,
        leverSideMm,
        aimDeg,
        gripDeg);
  }

  /** Lets the shaft turn in the hand: 1.5 deg. */
  public BodyErrors withGrip() {
    return grip(1.5);
  }

  /** Lets the shaft turn in the hand by a spread of one's own choice. */
  public BodyErrors grip(double deg) {
    return new BodyErrors(
        swayAddressMmPerS,
        swayAddressDegPerS,
        swayFinishMmPerS,
        swayFinishDegPerS,
        wobbleDeg,
        wobbleMm,
        skinDeg,
        skinMm,
        alignmentDeg,
        standingTiltDeg,
        leverForwardMm,
        leverSideMm,
        aimDeg,
        deg);
  }

  /** Adds 2.5 deg of alignment error about each axis of each unit. */
  public BodyErrors withAlignment() {
    return geometry(2.5, standingTiltDeg, leverForwardMm, leverSideMm, aimDeg);
  }

  /** Takes the alignment error away. */
  public BodyErrors withoutAlignment() {
    return geometry(0, standingTiltDeg, leverForwardMm, leverSideMm, aimDeg);
  }

  /** Adds 5 deg of spread of the standing tilt. */
  public BodyErrors withStandingTilt() {
    return geometry(alignmentDeg, 5, leverForwardMm, leverSideMm, aimDeg);
  }

  /** Stands every player at 10 deg. */
  public BodyErrors withoutStandingTilt() {
    return geometry(alignmentDeg, 0, leverForwardMm, leverSideMm, aimDeg);
  }

  /** Adds 10/5/10 mm of spread of mid-hip against the regression. */
  public BodyErrors withLeverArm() {
    return geometry(alignmentDeg, standingTiltDeg, 10, 5, aimDeg);
  }

  /** Puts mid-hip where the regression says. */
  public BodyErrors withoutLeverArm() {
    return geometry(alignmentDeg, standingTiltDeg, 0, 0, aimDeg);
  }

  /** Adds 2 deg of aim error of a player, 1 deg from swing to swing. */
  public BodyErrors withAim() {
    return geometry(alignmentDeg, standingTiltDeg, leverForwardMm, leverSideMm, 2);
  }

  /** Sets every address square. */
  public BodyErrors withoutAim() {
    return geometry(alignmentDeg, standingTiltDeg, leverForwardMm, leverSideMm, 0);
  }

  private BodyErrors geometry(
      double alignment, double tilt, double leverForward, double leverSide, double aim) {
    return new BodyErrors(
        swayAddressMmPerS,
        swayAddressDegPerS,
        swayFinishMmPerS,
        swayFinishDegPerS,
        wobbleDeg,
        wobbleMm,
        skinDeg,
        skinMm,
        alignment,
        tilt,
        leverForward,
        leverSide,
        aim,
        gripDeg);
  }
}
