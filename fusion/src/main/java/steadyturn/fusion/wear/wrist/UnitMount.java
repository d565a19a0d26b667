package steadyturn.fusion.wear.wrist;

import steadyturn.fusion.rotation.Quaternion;

/**
 * How a unit sits on what it measures, and how well that is known.
 *
 * @param qUnitSegment takes coordinates of the segment to those of the unit
 * @param longAxisSdRad how well the segment's x axis is known in the unit, rad (1 SD)
 * @param axialSdRad how well the turn of the unit about x is known, rad (1 SD)
 * @param slipSdRad how far the unit turns against the segment in a swing about y and z, rad (1 SD)
 * @param axialSlipSdRad the same about x
 */
public record UnitMount(
    Quaternion qUnitSegment,
    double longAxisSdRad,
    double axialSdRad,
    double slipSdRad,
    double axialSlipSdRad) {

  /** A strapped unit is good to 5-10 deg. */
  private static final double DRAWN_SD_RAD = Math.toRadians(5);

  private static final double SLIP_SD_RAD = Math.toRadians(1.5);

  /**
   * The skin of a forearm follows the turning of its bones about their length by a part that
   * changes from arm to arm: of 60 deg of roll, a twelfth is 5 deg (our assumption).
   */
  private static final double FOREARM_TWIST_SD_RAD = Math.toRadians(5);

  /** The grip gives way a little in a swing: our assumption. */
  private static final double GRIP_SD_RAD = Math.toRadians(1.5);

  /** One that slips alike about all axes. */
  public UnitMount(
      Quaternion qUnitSegment, double longAxisSdRad, double axialSdRad, double slipSdRad) {
    this(qUnitSegment, longAxisSdRad, axialSdRad, slipSdRad, slipSdRad);
  }

  /** On skin, as drawn: x towards the fingers, z away from the skin. */
  public static UnitMount onSkin() {
    return new UnitMount(Quaternion.IDENTITY, DRAWN_SD_RAD, DRAWN_SD_RAD, SLIP_SD_RAD);
  }

  /** On the skin of the forearm, as drawn. */
  static UnitMount onForearm() {
    return new UnitMount(
        Quaternion.IDENTITY, DRAWN_SD_RAD, DRAWN_SD_RAD, SLIP_SD_RAD, FOREARM_TWIST_SD_RAD);
  }

  /**
   * On the shaft, as drawn: x towards the club head, z away from the back of the lead hand. It does
   * not slip; the shaft moves in the grip instead.
   */
  public static UnitMount onShaft() {
    return new UnitMount(Quaternion.IDENTITY, DRAWN_SD_RAD, DRAWN_SD_RAD, GRIP_SD_RAD);
  }

  UnitMount posed(Quaternion qUnitSegment, double longAxisSdRad) {
    return new UnitMount(qUnitSegment, longAxisSdRad, axialSdRad, slipSdRad, axialSlipSdRad);
  }

  /** Turned about its segment's x axis. */
  UnitMount turned(double aboutXRad, double axialSdRad) {
    return new UnitMount(
        qUnitSegment.times(Quaternion.aboutX(aboutXRad)),
        longAxisSdRad,
        axialSdRad,
        slipSdRad,
        axialSlipSdRad);
  }
}
