package steadyturn.fusion.wear;

import steadyturn.fusion.rotation.Quaternion;

/**
 * How the two wrist units sit on their segments. Segment axes of forearm and hand: x along the bone
 * towards the fingers, z out of the back of the hand (of the forearm when the palm faces down), y =
 * z cross x; on a left arm y points to the little finger, on a right arm to the thumb.
 *
 * @param qForearmUnitForearm takes forearm coordinates to those of the forearm unit
 * @param qHandUnitHand takes hand coordinates to those of the hand unit
 * @param source what it rests on
 * @param longAxisSdRad how well each unit's x axis is known, rad (1 SD)
 * @param forearmAxialSdRad how well the turn of the forearm unit about x is known, rad (1 SD)
 * @param handAxialSdRad the same of the hand unit
 */
public record WristAlignment(
    Quaternion qForearmUnitForearm,
    Quaternion qHandUnitHand,
    Source source,
    double longAxisSdRad,
    double forearmAxialSdRad,
    double handAxialSdRad) {

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
    return new WristAlignment(
        Quaternion.IDENTITY,
        Quaternion.IDENTITY,
        Source.NOMINAL,
        Math.toRadians(5),
        Math.toRadians(5),
        Math.toRadians(5));
  }

  /** Whether a neutral pose was taken, so that angles from the straight wrist have a meaning. */
  public boolean posed() {
    return longAxisSdRad < nominal().longAxisSdRad;
  }
}
