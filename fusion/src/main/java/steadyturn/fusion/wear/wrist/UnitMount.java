package steadyturn.fusion.wear.wrist;

import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.wear.SkinSlip;

/**
 * How a unit sits on what it measures, and how well that is known.
 *
 * @param qUnitSegment takes coordinates of the segment to those of the unit
 * @param longAxisSdRad how well the segment's x axis is known in the unit, rad (1 SD)
 * @param axialSdRad how well the turn of the unit about x is known, rad (1 SD)
 * @param slipSdRad how far the unit turns against the segment in a swing about each axis, rad (1
 *     SD)
 */
public record UnitMount(
    Quaternion qUnitSegment, double longAxisSdRad, double axialSdRad, double slipSdRad) {

  /** A strapped unit is good to 5-10 deg. */
  private static final double DRAWN_SD_RAD = Math.toRadians(5);

  /** The grip gives way a little in a swing: our assumption. */
  private static final double GRIP_SD_RAD = Math.toRadians(1.5);

  /** On skin, as drawn: x towards the fingers, z away from the skin. */
  public static UnitMount onSkin() {
    return new UnitMount(Quaternion.IDENTITY, DRAWN_SD_RAD, DRAWN_SD_RAD, SkinSlip.SD_RAD);
  }

  /**
   * On the shaft, as drawn: x towards the club head, z away from the back of the lead hand. It does
   * not slip; the shaft moves in the grip instead.
   */
  public static UnitMount onShaft() {
    return new UnitMount(Quaternion.IDENTITY, DRAWN_SD_RAD, DRAWN_SD_RAD, GRIP_SD_RAD);
  }

  UnitMount posed(Quaternion qUnitSegment, double longAxisSdRad) {
    return new UnitMount(qUnitSegment, longAxisSdRad, axialSdRad, slipSdRad);
  }

  /** Turned about its segment's x axis. */
  UnitMount turned(double aboutXRad, double axialSdRad) {
    return new UnitMount(
        qUnitSegment.times(Quaternion.aboutX(aboutXRad)), longAxisSdRad, axialSdRad, slipSdRad);
  }
}
