package steadyturn.analysis.lab.body;

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
 * @param blowDelayMs spread between players of how much later than the hands the trunk feels a blow
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
    double gripDeg,
    double blowDelayMs) {

  // where each source begins, in the order of the record
  private static final int SWAY = 0;
  private static final int WOBBLE = 4;
  private static final int SKIN = 6;
  private static final int ALIGNMENT = 8;
  private static final int STANDING_TILT = 9;
  private static final int LEVER = 10;
  private static final int AIM = 12;
  private static final int GRIP = 13;
  private static final int BLOW_DELAY = 14;

  /** A body of steel: no source at all. */
  public static BodyErrors none() {
    return new BodyErrors(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);
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
        .withGrip()
        .withBlowDelay();
  }

  /** Adds sway: 4 mm/s and 0.5 deg/s at address, 12 mm/s and 2 deg/s at the finish. */
  public BodyErrors withSway() {
    return changed(SWAY, 4, 0.5, 12, 2);
  }

  /** Adds sway of sizes of one's own choice. */
  public BodyErrors withSway(
      double addressMmPerS, double addressDegPerS, double finishMmPerS, double finishDegPerS) {
    return changed(SWAY, addressMmPerS, addressDegPerS, finishMmPerS, finishDegPerS);
  }

  /** Adds the wobble in the swing: 5-8 Hz, 1-2 deg, 5-10 mm. */
  public BodyErrors withWobble() {
    return changed(WOBBLE, 2, 10);
  }

  /** Adds skin shift: 1 deg, 4 mm. */
  public BodyErrors withSkinShift() {
    return changed(SKIN, 1, 4);
  }

  /** Takes skin shift away. */
  public BodyErrors withoutSkinShift() {
    return changed(SKIN, 0, 0);
  }

  /** Lets the shaft turn in the hand: 1.5 deg. */
  public BodyErrors withGrip() {
    return grip(1.5);
  }

  /** Lets the shaft turn in the hand by a spread of one's own choice. */
  public BodyErrors grip(double deg) {
    return changed(GRIP, deg);
  }

  /** Lets the trunk feel a blow 2 +- 2 ms after the hands, from player to player. */
  public BodyErrors withBlowDelay() {
    return changed(BLOW_DELAY, 2);
  }

  /** Adds 2.5 deg of alignment error about each axis of each unit. */
  public BodyErrors withAlignment() {
    return changed(ALIGNMENT, 2.5);
  }

  /** Adds 5 deg of spread of the standing tilt. */
  public BodyErrors withStandingTilt() {
    return changed(STANDING_TILT, 5);
  }

  /** Adds 10/5/10 mm of spread of mid-hip against the regression. */
  public BodyErrors withLeverArm() {
    return changed(LEVER, 10, 5);
  }

  /** Adds 2 deg of aim error of a player, 1 deg from swing to swing. */
  public BodyErrors withAim() {
    return withAim(2);
  }

  /** Adds an aim error of so many deg of a player, half of it from swing to swing. */
  public BodyErrors withAim(double deg) {
    return changed(AIM, deg);
  }

  /** The same with the sizes from one of the record's places on replaced. */
  private BodyErrors changed(int from, double... sizes) {
    double[] all = {
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
      gripDeg,
      blowDelayMs
    };
    System.arraycopy(sizes, 0, all, from, sizes.length);
    return new BodyErrors(
        all[0], all[1], all[2], all[3], all[4], all[5], all[6], all[7], all[8], all[9], all[10],
        all[11], all[12], all[13], all[14]);
  }
}
