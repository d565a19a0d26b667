package steadyturn.fusion.wear.wrist;

import steadyturn.fusion.rotation.Quaternion;

/**
 * How the two units of a wrist sit. Segment axes of forearm and hand: x along the bone towards the
 * fingers, z out of the back of the hand (of the forearm when the palm faces down), y = z cross x;
 * on a left arm y points to the little finger, on a right arm to the thumb. A unit on the club
 * shaft can stand in for the hand, as the grip holds it: its x then points to the club head.
 *
 * @param forearm the forearm unit
 * @param hand the hand unit, or the shaft unit in its place
 * @param hangSdRad how far the arm hung off the vertical in the pose that showed both long axes,
 *     rad (1 SD): both are wrong by it together; 0 where no pose was taken of both
 * @param source what it rests on
 */
public record WristAlignment(UnitMount forearm, UnitMount hand, double hangSdRad, Source source) {

  public WristAlignment {
    double least = Math.min(forearm.longAxisSdRad(), hand.longAxisSdRad());
    if (!(hangSdRad >= 0 && hangSdRad <= least)) {
      throw new IllegalArgumentException(
          "what both long axes share must lie from 0 to " + least + " rad, was " + hangSdRad);
    }
  }

  /** What an alignment rests on, from the weakest to the strongest. */
  public enum Source {
    /** The units sit as the strapping page draws them. */
    NOMINAL,
    /** The long axes from a still pose with hanging arm and straight wrist; the rest as drawn. */
    POSE,
    /** The pose, and the common turn about the long axes from a movement of pure cocking. */
    COCKING
  }

  /** The units as drawn: x towards the fingers, z away from the skin; good to 5-10 deg. */
  public static WristAlignment nominal() {
    return new WristAlignment(UnitMount.onForearm(), UnitMount.onSkin(), 0, Source.NOMINAL);
  }

  /** Forearm and shaft unit as drawn. */
  public static WristAlignment nominalShaft() {
    return new WristAlignment(UnitMount.onForearm(), UnitMount.onShaft(), 0, Source.NOMINAL);
  }

  /** Takes forearm coordinates to those of the forearm unit. */
  public Quaternion qForearmUnitForearm() {
    return forearm.qUnitSegment();
  }

  /** Takes hand coordinates to those of the hand unit. */
  public Quaternion qHandUnitHand() {
    return hand.qUnitSegment();
  }

  /** How well the forearm unit's x axis is known, rad (1 SD). */
  public double longAxisSdRad() {
    return forearm.longAxisSdRad();
  }

  /**
   * Whether a neutral pose was taken of both units, so that angles from the straight wrist have a
   * meaning. A club held in the pose does not hang straight, so the shaft is never posed.
   */
  public boolean posed() {
    double drawn = UnitMount.onSkin().longAxisSdRad();
    return forearm.longAxisSdRad() < drawn && hand.longAxisSdRad() < drawn;
  }
}
